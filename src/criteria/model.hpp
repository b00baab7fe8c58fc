#pragma once

#include "criteria/environment.hpp"
#include "criteria/vocabulary.hpp"
#include "language/condition.hpp"

#include <bitset>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// Where a number comes from, and how sure that is.
struct Standing {
    enum class Kind : std::uint8_t {
        read,
        second_hand,
        memory,
        house,
        common_practice,
        blank, ///< nobody filled it: there is no number. Never written in a file
        filled ///< from the shop's own copy (criteria/owners_copy.hpp); `source` names who. Never in a file
    };
    Kind kind = Kind::read;
    std::string source;
    /// "confirmed by A. Field (page 12, edition ...)": a shop held it against its own copy. Never in a file.
    std::string confirmed = {};
};
std::string_view name_of(Standing::Kind kind);
/// Whether a number of the standard must be checked against the owner's copy before use.
constexpr bool needs_checking(Standing::Kind kind) {
    return kind == Standing::Kind::second_hand || kind == Standing::Kind::memory;
}
inline bool needs_checking(const Standing &standing) {
    return standing.confirmed.empty() && needs_checking(standing.kind);
}
/// "memory"; "filled by A. Field and B. Reed (page 21 of ...)"; "memory, confirmed by A. Field (page 12 of
/// ...)".
std::string print(const Standing &standing);
/// The same with the source: "memory: tables of a colleague, confirmed by A. Field (page 12 of ...)".
std::string print_in_full(const Standing &standing);
/// "QW-452.3, read"; "5.7, memory".
std::string authority(const std::string &clause, const Standing &standing);

/// What a class allows for one rule.
struct Limit {
    enum class Kind : std::uint8_t {
        value,    ///< the formula
        none,     ///< any occurrence rejects
        free,     ///< permitted, no limit
        ask,      ///< a person decides: cannot say
        not_said, ///< the standard is silent here, or it was not read: cannot say, whatever else accepts
        other,    ///< `does not apply`: this rule is not for the class, so another one must speak
    };
    Kind kind = Kind::not_said;
    Formula formula;
    std::string text;
};

using TypeSet = std::bitset<128>;
using ExamSet = std::bitset<exam_count>;

/// Which indications a rule, relevance clause or merge clause speaks of.
struct Subject {
    TypeSet types; ///< with all their kinds
    ExamSet exams;
    bool covers(TypeId type, Exam exam) const { return types[type] && exams[static_cast<std::size_t>(exam)]; }
};

/// The stretch in which something is summed or counted, placed where it is worst.
struct Window {
    enum class Kind : std::uint8_t { length, whole_weld, area };
    Kind kind = Kind::whole_weld;
    Formula length;     ///< Kind::length
    Exact area;         ///< Kind::area: of the rectangle, nm2
    Exact longest_side; ///< Kind::area
    std::string text;
};

struct Rule {
    enum class Kind : std::uint8_t {
        presence, ///< no measure: an occurrence meets `none`, `no limit`, ...
        each,     ///< a measure of one indication
        gap,      ///< distance between neighbours
        sum,      ///< sum of a measure in a window or a group
        count,    ///< number in a window or a group
        combine,  ///< number of other rules that are at the borderline
        coupon,   ///< no find: what `when` says of the coupon itself is not allowed
    };
    std::string id, title, clause, reading, says;
    std::vector<Standing> standings; ///< one a class
    Where where_from;
    Kind kind = Kind::presence;
    Subject subject;
    Shape shape = Shape::unknown; ///< only indications of this shape
    std::vector<Condition> when;  ///< on the coupon
    std::vector<Condition> where; ///< on each indication
    Formula measure;              ///< Kind::each
    Quantity summed = Quantity::length;
    bool as_rectangles = false;      ///< of summed areas: length times width of each, whatever its shape
    std::vector<Window> windows;     ///< one a class; empty: none
    bool window_by_class = false;    ///< they differ
    std::optional<Condition> linked; ///< neighbours that satisfy it form a group in line
    std::size_t least_group = 1;     ///< smaller groups in line are none
    bool prorated = false;           ///< on a weld shorter than the window the limit shrinks in proportion
    bool must_be_measured = false;   ///< without an entry the class cannot be accepted
    Compare compare = Compare::at_most;
    std::vector<Limit> limits;         ///< one a class
    std::vector<std::size_t> combined; ///< Kind::combine: rules by index
    Exact borderline = 1;              ///< share of the limit from which a rule is at the borderline
    /// The rule by index without which this one does not reject, nor that one without this: only where one
    /// exam finds both over.
    std::optional<std::size_t> only_with;

    Dimension dimension() const;
    const Window *window(std::size_t class_index) const {
        return windows.empty() ? nullptr : &windows[class_index];
    }
};

/// `side is root` and the like: where a measurement is to be taken.
bool asks_for_side(const Condition &condition);

struct Relevance {
    std::string id, clause;
    Standing standing;
    Subject subject;
    std::vector<bool> classes;     ///< for which it speaks
    std::vector<Condition> ignore; ///< all hold: the indication does not count
    /// Groups that it speaks of without naming them: it looks at single finds, and does not reach them.
    TypeSet groups;
    std::string text;
    Where where_from; ///< of it in its file
};

struct Merge {
    std::string id, clause, reading;
    Standing standing;
    Subject subject;
    Condition when;   ///< on a pair: gap against sizes
    Where where_from; ///< of it in its file
};

struct RequiredExam {
    std::string id, clause;
    Standing standing;
    std::vector<Exam> one_of;
    std::vector<bool> classes;
    std::vector<Condition> when;
    Where where_from; ///< of it in its file
};

/// A part of what the set covers: of a coupon outside it the set says nothing.
struct ScopePart {
    std::string id, title, clause;
    Standing standing;
    std::vector<Condition> only_if; ///< asked only of coupons for which all hold
    std::vector<Condition> when;    ///< all must hold
    std::string text;               ///< `when`, as written
};

/// A part of the standard that this set does not hold.
struct Gap {
    std::string text;
    std::optional<Subject> subject; ///< indications that only it could judge
    /// With any condition, what meets all of them needs the missing part beside the rules that speak of it:
    /// it stays open. Without, the gap tells why no rule speaks.
    std::vector<Condition> when;  ///< on the coupon
    std::vector<Condition> where; ///< on each indication
    Shape shape = Shape::unknown; ///< only indications of this shape
    std::vector<bool> classes;    ///< for which it is one
    bool beside_rules = false;    ///< it has a condition, or names classes
    Where where_from;             ///< of it in its file
};

/// A number of the standard that the file may not or cannot print. A shop fills it from its own copy, a class
/// at a time; until then whatever hangs on it is cannot say.
struct Blank {
    enum class Kind : std::uint8_t { length, area, angle, count, number };
    std::string id, clause;
    std::string limits; ///< what it limits, in words
    Kind kind = Kind::length;
    std::vector<Table::Edge> plausible; ///< what lies outside is a slip of the pen
    std::string plausible_text;
    std::vector<bool> classes; ///< whose limits hang on it
    /// SHA-256 of what makes the number a limit: the rules that speak of it, with unit, formulas and tables.
    std::string use;
    Where where;
    Dimension dimension() const;
    /// Why the value cannot be meant; empty if it can.
    std::string fault_of(const Exact &value, Unit unit) const;
};
std::string_view name_of(Blank::Kind kind);

/// One blank as it was filled for one class.
struct Filling {
    std::string blank, class_id;
    Exact value;       ///< in base units
    std::string entry; ///< hash of the entry that filled it; empty: of no record (a worked case)
    std::string by;    ///< "A. Field and B. Reed (page 21 of AWS D17.1:2017)"; not kept with a verdict
    friend bool operator==(const Filling &a, const Filling &b) {
        return a.blank == b.blank && a.class_id == b.class_id && a.value == b.value && a.entry == b.entry;
    }
};

/// A number that was filled into a blank and bears on it no more.
struct FallenFilling {
    std::string blank, class_id;
    std::string why; ///< "0.060 in, by A. Field and B. Reed (page 21 of ...), fills it no more: ..."
    friend bool operator==(const FallenFilling &, const FallenFilling &) = default;
};

/// A check of the set that its author answers once, with a reason.
struct Silence {
    std::string check, of, reason; ///< of: the id of a rule or clause, or the name of a table
    Where where;
};

struct ClassInfo {
    std::string id, title;
};

/// A symbol of `quantities`.
struct DeclaredQuantity {
    std::string name;
    Slot slot = 0;
    Where where;
};

/// A name of the file for a formula, as written; limits may say the name only.
struct NamedFormula {
    std::string name, text;
};

/// A formula or table that nothing speaks of.
struct UnusedName {
    std::string name, path;
    Where where;
};

/// One standard edition, or a shop's own rules: immutable once loaded.
/// Something doubtful in a set: the id of the check, and of what it doubts.
struct Doubted {
    std::string check, of;
};

struct CriteriaSet {
    std::string name, title, edition, source, notes;
    Unit unit = Unit::inch;
    std::vector<ClassInfo> classes; ///< strictest first, if `ordered`
    Where classes_where;            ///< of their list in its file
    bool ordered = true;
    std::vector<DeclaredQuantity> declared;
    std::vector<NamedFormula> formulas;
    std::vector<std::shared_ptr<const Table>> tables;
    std::vector<UnusedName> unused;
    std::vector<ScopePart> scope;
    bool scope_said = false; ///< the file speaks of its scope, if only to say that it was not read
    /// Nobody read what lies outside.
    bool scope_not_read() const { return scope_said && scope.empty(); }
    std::optional<Condition> linear; ///< when a measured indication is linear
    Where linear_where;              ///< of it in its file
    std::string linear_clause;
    Standing linear_standing;
    std::vector<Relevance> relevance;
    std::vector<Merge> merges;
    std::vector<RequiredExam> required;
    std::vector<Rule> rules;
    std::vector<Gap> gaps;
    std::vector<Blank> blanks;
    std::vector<Filling> fillings;     ///< that are put in already; none in a set as it was loaded
    std::vector<FallenFilling> fallen; ///< of blanks that are open again; none in a set as it was loaded
    std::vector<Silence> silences;
    /// What the doubts of criteria/lint.hpp are about, as far as the file does not answer them; none in a set
    /// that was not looked through.
    std::vector<Doubted> doubted;
    /// Each part of the file but its rules, as it is written, without spaces, clauses and standings: to be
    /// held against another set's.
    std::map<std::string, std::string> parts;
    std::string extends;         ///< the set that it changes; empty: it stands alone
    std::string extends_edition; ///< of that one
    Where extends_where;         ///< in the file: where what is inherited stands
    std::string inherited;       ///< how sure is at most what is taken from there, in words; may be empty
    std::string text;            ///< the file, byte for byte; below it the texts of the sets that it extends
    std::string hash;            ///< SHA-256 of `text`, hex

    /// Rules that speak of a type found by an exam, by index. Filled at loading.
    const std::vector<std::uint16_t> &rules_for(TypeId type, Exam exam) const;
    std::optional<std::size_t> class_index(std::string_view id) const;
    /// Null if there is none.
    const Blank *blank(std::string_view id) const;
    /// What a limit of a class (or its window) still lacks, by index.
    std::vector<Slot> blanks_of(const Rule &rule, std::size_t class_index) const;
    std::vector<std::string> class_names() const;

    std::vector<std::vector<std::uint16_t>> by_type_and_exam;
    bool needs_nearest_gap = false;      ///< some rule speaks of it
    bool needs_nearest_like_gap = false; ///< the same
    /// A relevance clause speaks for some classes only, so what counts differs between them.
    bool counts_by_class = false;
};

} // namespace beadbook
