#include "report/sentence.hpp"

#include "judge/item.hpp"
#include "measure/text.hpp"
#include "report/finding_place.hpp"
#include "report/lacking_exam.hpp"
#include "report/left_to_a_person.hpp"
#include "report/missing_words.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// "lesser of T/3 and 0.060 in, T = 0.15 in": the formula with the coupon's numbers beside it; a fraction as
/// it stands in the set.
std::string limit_formula(const Case &c, const Rule &rule, const Limit &limit) {
    const Formula &f = limit.formula;
    if (f.is_constant()) return f.text.find('/') == std::string::npos ? "" : " (" + f.text + ")";
    const auto unit = c.coupon.values.measured_in();
    const std::string printed_twice = !f.has_twins() ? ""
                                      : !unit        ? "either counts"
                                                     : std::string(name_of(*unit)) + " counts";
    const auto quantities = quantities_of(f);
    // A lone symbol says nothing that "T = 0.125 in" does not say.
    std::string out = f.symbols == std::vector<std::string>{f.text} ? "" : f.text;
    for (std::size_t i = 0; i < quantities.size(); ++i) {
        if (index_of(quantities[i]) >= coupon_quantities || !c.coupon.values.has(quantities[i])) continue;
        out += (out.empty() ? "" : ", ") + f.symbols[i] + " = " +
               print(c.coupon.values[quantities[i]], info(quantities[i]).dimension, c.unit);
    }
    if (!printed_twice.empty()) out += (out.empty() ? "" : ", ") + printed_twice;
    if (rule.prorated) out += ", in proportion to the weld's length";
    return " (" + out + ")";
}

std::string window_words(const Rule &rule, std::size_t class_index) {
    const std::string least =
        rule.least_group > 1 ? " of " + std::to_string(rule.least_group) + " or more" : "";
    const Window *window = rule.window(class_index);
    if (rule.linked && !window) return " in one line" + least + " (" + rule.linked->text + ")";
    if (!window) return "";
    const std::string group = rule.linked ? " of a group in line" + least : "";
    if (window->kind == Window::Kind::whole_weld) return group + " over the whole weld";
    return group + " in any " + window->text;
}

std::string measured_words(const Rule &rule, std::size_t class_index) {
    switch (rule.kind) {
    case Rule::Kind::each: return rule.measure.text;
    case Rule::Kind::gap: return "free distance";
    case Rule::Kind::sum:
        return "sum of " + std::string(info(rule.summed).name) + window_words(rule, class_index) + " is";
    case Rule::Kind::count: return "number" + window_words(rule, class_index) + " is";
    case Rule::Kind::combine: return "number of types at the borderline is";
    case Rule::Kind::presence:
    case Rule::Kind::coupon: break;
    }
    return "";
}

/// How areas that nobody measured were taken: "; area of #1 as an ellipse, of #2 as a rectangle".
std::string area_words(const Case &c, const Rule &rule, const Finding &f) {
    const bool sum = rule.kind == Rule::Kind::sum && rule.summed == Quantity::area;
    if (!sum && !(rule.kind == Rule::Kind::each && rule.measure.uses(slot_of(Quantity::area)))) return "";
    std::string out;
    const bool all = rule.as_rectangles;
    for (const auto &[how, words] :
         {std::pair{AreaFrom::ellipse, all ? "as rectangles" : "as circles and ellipses"},
          {AreaFrom::rectangle, all ? "as rectangles" : "longer than 3 x its width: as rectangles"}}) {
        if (all && !out.empty()) break;
        const bool any = std::any_of(f.indications.begin(), f.indications.end(), [&, sought = how](int n) {
            const Indication *i = c.find(n);
            return i && i->area_from == sought;
        });
        if (any) out += (out.empty() ? "; areas by length and width, " : ", what is ") + std::string(words);
    }
    return out;
}

bool slides(const Rule &rule, std::size_t class_index) {
    const Window *window = rule.window(class_index);
    return window && window->kind == Window::Kind::length;
}

/// ", counted from 2 in to 4 in": where the window lay, never beyond the end of the weld.
std::string counted_words(const Case &c, const Rule &rule, std::size_t class_index, const Finding &f) {
    const auto window = laid_place(c, class_index, f);
    return slides(rule, class_index) && window ? ", counted " + print_stretch(*window, c.coupon.line, c.unit)
                                               : "";
}

/// "; #2 and #3 count as one [4.2]": several by a rule on each are one by a merging clause.
std::string merged_words(const Case &c, const Rule &rule, const Finding &f) {
    if (rule.kind != Rule::Kind::each || f.indications.size() < 2) return "";
    const Indication *first = c.find(f.indications.front());
    for (const auto &merge : c.set.merges)
        if (first && merge.subject.covers(first->type, first->exam))
            return "; they count as one, " + merge.when.text + " (" + merge.clause + ")";
    return "";
}

std::string compared(const Case &c, std::size_t class_index, const Rule &rule, const Finding &f) {
    const PrintedPair p = print_against(rule, f.measured, f.limit, c.unit);
    const bool lower = !is_maximum(rule.compare);
    std::string out = measured_words(rule, class_index) + " " + p.first +
                      (lower ? ", at least " : ", limit ") + p.second +
                      limit_formula(c, rule, rule.limits[class_index]);
    const bool kept = holds(f.measured, rule.compare, f.limit);
    if (p.difference.empty())
        out += kept ? ": within" : ": out";
    else if (kept)
        out += f.measured == f.limit ? ": exactly at the limit" : ": within by " + p.difference;
    else if (f.measured == f.limit)
        out += ": at the limit, which is itself out";
    else
        out += (lower ? ": short by " : ": over by ") + p.difference;
    if (rule.only_with && !kept)
        out += ", together with " + c.set.rules[*rule.only_with].id + ", which is over too";
    return out + counted_words(c, rule, class_index, f) + merged_words(c, rule, f) + area_words(c, rule, f);
}

std::string scope_title(const ScopePart &part) { return part.title.empty() ? "" : part.title + ": "; }

/// "t at least 0.5 mm; t is 0.4 mm": what the part asks, and what of it does not hold of the coupon.
std::string outside_words(const Case &c, const ScopePart &part) {
    std::vector<std::string> is;
    for (const auto &condition : part.when) {
        Missing lacks;
        if (holds_for({condition}, c.coupon, {}, {}, lacks) != Truth::no) continue;
        if (condition.kind == Condition::Kind::word) {
            const FactInfo &fact = info(static_cast<Fact>(condition.slot));
            std::vector<std::string> said;
            for (std::size_t w = 0; w < fact.words.size(); ++w)
                if ((c.coupon.said(condition.slot) >> (w + 1)) & 1u) said.push_back(fact.words[w]);
            is.push_back(std::string(fact.name) + " is " + listed(said));
            continue;
        }
        const auto quantities = quantities_of(condition.left);
        for (std::size_t q = 0; q < quantities.size(); ++q)
            if (c.coupon.values.has(quantities[q]))
                is.push_back(condition.left.symbols[q] + " is " +
                             print(c.coupon.values[quantities[q]], info(quantities[q]).dimension, c.unit));
    }
    return part.text + "; " + listed(is);
}

std::string of_coupon(const Rule &rule) {
    std::string out;
    for (const auto &one : rule.when) out += (out.empty() ? "" : " and ") + one.text;
    return out;
}

/// "blank largest-pore of class A (Table V: the largest dimension of one pore), which is to be filled from
/// the owner's copy".
std::string blank_words(const Case &c, std::size_t class_index, const Finding &f) {
    std::vector<std::string> open;
    std::string fallen;
    for (const Slot slot : c.set.blanks_of(c.set.rules[static_cast<std::size_t>(f.rule)], class_index)) {
        const Blank &blank = c.set.blanks[slot];
        open.push_back("blank " + blank.id + " of class " + c.set.classes[class_index].id + " (" +
                       blank.clause + ": " + blank.limits + ")");
        for (const auto &one : c.set.fallen)
            if (one.blank == blank.id && one.class_id == c.set.classes[class_index].id)
                fallen += " (" + one.why + ")";
    }
    return open.empty() ? ""
                        : listed(open) + ", to be filled " + (fallen.empty() ? "" : "anew ") +
                              "by two people from the owner's copy" + fallen;
}

bool any_without_place(const Case &c, const std::vector<int> &numbers) {
    return std::any_of(c.indications.begin(), c.indications.end(), [&](const Indication &i) {
        return !i.place && std::find(numbers.begin(), numbers.end(), i.number) != numbers.end();
    });
}

/// How the record might be read, and what would say that it is not meant so.
struct Reading {
    const char *why, *mend;
};
constexpr Reading end_to_end_reading{
    "nobody said where each of them is, and end to end they are one imperfection (common "
    "practice); as one",
    "say where each is, or log them as one"};
constexpr Reading touching_reading{
    "pieces that touch or overlap along the weld are one imperfection (common practice), and "
    "nothing here says that they are one or apart; as one",
    "log them as one, or where they lie apart"};
constexpr Reading by_name_reading{
    "its name says that it is linear, and it was measured as wide as long; by its name",
    "put right the one that is not so"};

constexpr Reading together_reading{
    "found by methods of which each is counted by itself; taken together, as they lie apart and may be "
    "different ones (common practice)",
    "log what is one imperfection at one place by each method"};

const Reading &reading_of(const Case &c, const Finding &f) {
    if (!f.exams.empty()) return together_reading;
    if (f.missing != Missing::place()) return by_name_reading;
    return any_without_place(c, f.indications) ? end_to_end_reading : touching_reading;
}

/// What would speak against it if the record were read as it might be meant: as one, by its name, or
/// together.
std::string other_reading_words(const Case &c, std::size_t k, const Finding &f) {
    const Reading &reading = reading_of(c, f);
    std::string out = reading.why;
    if (f.rule >= 0) {
        const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
        out += ": " + (rule.title.empty() ? "" : rule.title + ", ") +
               (f.has_numbers ? compared(c, k, rule, f) : std::string("it would not be accepted"));
    } else {
        out += " it would not be accepted";
    }
    return out + "; " + reading.mend;
}

std::string contradiction_words(const Case &c, std::size_t k, const Finding &f) {
    const bool read_otherwise =
        f.missing == Missing::place() ? f.indications.size() > 1 : f.missing.has(Missing::shape());
    if (read_otherwise || (!f.exams.empty() && !f.indications.empty()))
        return print_indications(c, f.indications) + ": " + other_reading_words(c, k, f);
    if (!f.exams.empty())
        return "The " + std::string(name_of(f.exams.front())) +
               " was finished with fewer finds than are on record under it";
    if (f.missing == (lack_of(Fact::magnetic) | lack_of(Fact::material))) {
        const bool is = c.coupon.facts[static_cast<std::size_t>(Fact::magnetic)] ==
                        word_index(info(Fact::magnetic), "yes");
        return std::string("It is said ") + (is ? "" : "not ") +
               "to be magnetic, and its material names a metal that is" + (is ? " not" : "") +
               " (common practice)";
    }
    if (f.missing == lack_of(Attribute::side))
        return print_indications(c, f.indications) +
               ": its type lies at the root, its side is the face (common practice); correct the wrong one";
    return (f.indications.empty() ? "The coupon" : print_indications(c, f.indications)) + ": " +
           listed(names_of(f.missing)) + " contradict each other, so one of them is not true";
}

/// No reason speaks against the class, but a part of its proof is not there.
std::string unproven_words(const Case &c, const Finding &f) {
    const std::string before = "It cannot be shown that ";
    const std::string rule = f.rule < 0 ? "" : c.set.rules[static_cast<std::size_t>(f.rule)].id;
    switch (f.part) {
    case ProofPart::scope:
        return f.clause < 0 ? before + "the set covers this coupon"
                            : before + "the set covers this coupon: " +
                                  c.set.scope[static_cast<std::size_t>(f.clause)].text;
    case ProofPart::exam:
        return before +
               (f.exams.empty() ? std::string("an exam") : "the " + std::string(name_of(f.exams.front()))) +
               " that is asked was carried through";
    case ProofPart::entry:
        return before + (f.indications.empty() ? "the coupon" : print_indications(c, f.indications)) +
               " was judged" + (rule.empty() ? "" : " by rule " + rule);
    case ProofPart::dimension: return before + "the dimension of rule " + rule + " was measured";
    case ProofPart::agreement: return before + "nothing on record contradicts anything else";
    case ProofPart::gap: return before + "no known gap of the set bears on it";
    case ProofPart::none: break;
    }
    return before + "every part of the proof is there";
}

} // namespace

const Indication *Case::find(int number) const {
    const auto found = std::find_if(indications.begin(), indications.end(),
                                    [&](const Indication &i) { return i.number == number; });
    return found == indications.end() ? nullptr : &*found;
}

std::string sentence(const Case &c, std::size_t class_index, const Finding &f) {
    const Rule *rule = f.rule >= 0 ? &c.set.rules[static_cast<std::size_t>(f.rule)] : nullptr;
    const std::string who = f.indications.empty() ? "" : print_indications(c, f.indications);
    const auto place = laid_place(c, class_index, f);
    const std::string where =
        !place || f.indications.size() < 2
            ? ""
            : " " + print_place(rule && slides(*rule, class_index) ? extent_of(c, f.indications, *place)
                                                                   : *place,
                                c.coupon.line, c.unit);
    const std::string title = !rule || rule->title.empty() ? "" : rule->title + ", ";
    switch (f.kind) {
    case Finding::Kind::over_limit:
    case Finding::Kind::within: return who + where + ": " + title + compared(c, class_index, *rule, f) + ".";
    case Finding::Kind::not_allowed:
        if (rule->kind == Rule::Kind::coupon)
            return "The coupon: " + title + "not allowed where " + of_coupon(*rule) + ".";
        return who + ": " + title + "none is allowed.";
    case Finding::Kind::not_said:
        return (rule->kind == Rule::Kind::coupon ? "The coupon" : who) + ": " + title +
               "this set does not say what class " + c.set.classes[class_index].id + " allows.";
    case Finding::Kind::person_decides: {
        const std::string left = " the standard " + left_to_a_person(*rule);
        if (rule->kind == Rule::Kind::coupon)
            return "The coupon: " + title + "where " + of_coupon(*rule) + left;
        if (rule->linked && f.indications.size() > 1)
            return who + where + ": in one line (" + rule->linked->text + "), and" + left;
        const std::string open =
            f.missing.any() ? " whether it is asked at all hangs on " + missing_words(c, f) + "; if so," : "";
        return who + ":" + open + left;
    }
    case Finding::Kind::missing_data:
        if (!rule && f.clause >= 0 && c.set.gaps[static_cast<std::size_t>(f.clause)].beside_rules)
            return who + ": whether a known gap bears on it hangs on " + missing_words(c, f) + ": " +
                   c.set.gaps[static_cast<std::size_t>(f.clause)].text + ".";
        if (!rule) return who + ": which rule speaks of it hangs on " + missing_words(c, f) + ".";
        if (f.has_numbers)
            return who + where + ": " + title + compared(c, class_index, *rule, f) +
                   ", if it counts at all: that hangs on " + missing_words(c, f) + ".";
        return (who.empty() ? "" : who + ": ") + (rule->title.empty() ? rule->id : rule->title) +
               " cannot be decided without " +
               (f.missing == Missing::blank() ? blank_words(c, class_index, f)
                : f.missing.has(Missing::blank())
                    ? missing_words(c, f) + "; " + blank_words(c, class_index, f)
                    : missing_words(c, f)) +
               ".";
    case Finding::Kind::not_covered:
        if (f.clause >= 0 && c.set.gaps[static_cast<std::size_t>(f.clause)].beside_rules)
            return who + ": the rules of this set are not all that speaks of it, a known gap: " +
                   c.set.gaps[static_cast<std::size_t>(f.clause)].text + ".";
        return who + ": " +
               (f.clause >= 0
                    ? "only this part could judge it, and it is a known gap: " + nearest_gap(c, f).text
                    : "no rule of this set speaks of it as found by this method") +
               ".";
    case Finding::Kind::exam_missing: return lacking_exam_words(c, f) + ".";
    case Finding::Kind::exam_pending: return pending_exam_words(c, f.exams.front()) + ".";
    case Finding::Kind::contradiction: return contradiction_words(c, class_index, f) + ".";
    case Finding::Kind::unproven: return unproven_words(c, f) + ".";
    case Finding::Kind::outside_scope:
        return "The set does not cover this coupon, so it says nothing of it: " +
               scope_title(c.set.scope[static_cast<std::size_t>(f.clause)]) +
               outside_words(c, c.set.scope[static_cast<std::size_t>(f.clause)]) + ".";
    case Finding::Kind::scope_unknown:
        if (f.clause < 0)
            return "What the set covers was not read, and nothing is accepted of a weld of which one does "
                   "not know " +
                   missing_words(c, f) + ".";
        return "Whether the set covers this coupon (" +
               scope_title(c.set.scope[static_cast<std::size_t>(f.clause)]) +
               c.set.scope[static_cast<std::size_t>(f.clause)].text + ") hangs on " + missing_words(c, f) +
               ".";
    case Finding::Kind::not_measured: break;
    }
    std::string side;
    for (const auto &condition : rule->where)
        if (asks_for_side(condition)) side += " where " + condition.text;
    return (rule->title.empty() ? rule->id : rule->title) + ": it was not measured" + side +
           (f.indications.empty() ? "" : measured_in_vain_words(c, f)) + ".";
}

PrintedPair print_against(const Rule &rule, const Exact &measured, const Exact &limit, Unit unit) {
    PrintedPair out = print_pair(measured, limit, rule.dimension(), unit);
    if (rule.kind == Rule::Kind::each && is_way_to_nearest(rule.measure.lone_quantity()) &&
        measured == Exact(longest_length.nm)) {
        out.first = "none";
        out.difference.clear();
    }
    return out;
}

} // namespace beadbook
