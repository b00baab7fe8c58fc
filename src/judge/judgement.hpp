#pragma once

#include "judge/coupon.hpp"
#include "judge/few.hpp"
#include "judge/proof.hpp"

#include <string>
#include <vector>

namespace beadbook {

class BoundSet;

/// Three values, because missing is not zero. A reject beats a cannot-say, which beats an accept.
enum class Verdict : std::uint8_t { accept, cannot_say, reject };
std::string_view name_of(Verdict v);

/// One reason for a verdict.
struct Finding {
    enum class Kind : std::uint8_t {
        over_limit,     ///< measured against limit (also "under" a minimum)
        not_allowed,    ///< any occurrence rejects
        missing_data,   ///< `missing` would decide it
        person_decides, ///< the standard leaves it to a person
        not_said,       ///< a rule speaks of it, but not for the class, or that was not read
        not_covered,    ///< no rule of the set speaks of the indication
        exam_missing,   ///< none of `exams` is on record, or none that counts
        not_measured,   ///< the set wants a dimension that nobody logged, or none but exams that do not count
        exam_pending,   ///< an exam was begun, and what it found is not all on record
        contradiction,  ///< two things on record cannot both be true: the quantities stand in `missing`
        unproven,       ///< nothing speaks against it, but `part` of the proof is not there
        outside_scope,  ///< the set does not cover the coupon, so it says nothing of it
        scope_unknown,  ///< whether the set covers the coupon hangs on `missing`
        within,         ///< the nearest miss of an accepted class
    };
    Kind kind = Kind::within;
    Verdict effect = Verdict::accept;
    int rule = -1;                ///< index in the set's rules, or -1
    int clause = -1;              ///< index of the required exam, gap or part of the scope that speaks, or -1
    std::vector<int> indications; ///< numbers, ascending
    std::optional<Span> place;    ///< where on the weld; of a window, its from and to
    bool has_numbers = false;
    Exact measured, limit;
    double ratio = 0; ///< measured / limit (limit / measured for a minimum); over 1 is out
    Missing missing;
    std::vector<Exam> exams;
    ProofPart part = ProofPart::none;
};
/// "out of limit", "missing data": as records keep it and tables and JSON say it, so it is never another.
std::string_view id_of(Finding::Kind kind);

struct ClassJudgement {
    Verdict verdict = Verdict::accept;
    std::vector<Finding> findings;  ///< what keeps it from being accepted; rejects first
    std::optional<Finding> nearest; ///< the nearest miss, if anything was measured against a limit
    std::optional<Proof> proof;     ///< of an accept, and of nothing else
    Few<std::uint16_t> scope;       ///< parts of the set's scope that were asked of the coupon and hold
};

/// One entry a class, in the set's order.
struct Judgement {
    std::vector<ClassJudgement> classes;
};

/// Of this evaluator: counted up when a verdict may come out otherwise, and kept with each verdict.
constexpr int engine_number = 18;
static_assert(engine_number == proof_engine);

/// The first engine that closes rings, asks what is allowed at least of every part of a joined one, and
/// leaves what does not count out of nearest gaps.
constexpr int first_with_rings = 4;

/// The first engine for which `not said` stays open beside a rule that accepts, the size of a dimension is
/// not its length along the weld, and a lone find without a place has no neighbour.
constexpr int first_with_open_silence = 5;

/// The first engine that accepts no weld whose joint and metal nobody told, where the scope was not read.
constexpr int first_that_asks_what_weld = 6;

/// The first engine for which what is known of one part of a joined find bounds the whole: no wider than its
/// narrowest can be, and at least as deep as the deepest that was measured; and for which a find of unknown
/// length may reach as far as it likes.
constexpr int first_with_bounds = 7;

/// The first engine for which a relevance clause on single finds does not leave out a group (a cluster, say)
/// that it does not name: the size of a group says nothing of what is in it.
constexpr int first_that_counts_groups = 8;

/// The first engine that accepts nothing by exams of which the set has no rule, where no exam is asked for.
constexpr int first_that_asks_what_is_judged = 8;

/// The first engine that accepts no finds beside each other on a tube of which nobody said how its seam runs.
constexpr int first_that_asks_the_seam = 10;

/// The first engine that holds what is said of a coupon's magnetism against its metal, and names what an exam
/// that may count hangs on. Which exams count was asked by fewer questions before (operations/exam_means).
constexpr int first_to_mind_magnetism = 10;

/// The first engine for which a round find of which only the length is known may be linear, for which pieces
/// that touch are linear where the narrowest makes them so, and for which no area is more than its length and
/// width, or the square of its size, can hold.
constexpr int first_to_doubt_widths = 11;

/// The first engine for which finds that nobody said the place of may lie end to end and be one, and for
/// which what is called by its shape alone (linear, rounded indication) may be one where it touches; and that
/// believes nobody that a carbon steel is not magnetic; for which a pore is as large as it is deep; and that
/// goes by the unit that all sizes of a coupon are written in, where a limit is printed in two.
constexpr int first_to_ask_where = 12;

/// The first engine for which pieces of unlike types that touch may be one, where one rule limits how long or
/// large each of them may be; and that accepts nothing by sums, counts and distances that hold only while
/// what one method found is not looked at beside what another did.
constexpr int first_to_take_together = 13;

/// The first engine that goes by the unit that a coupon's walls are written in, or else all its sizes, where
/// a limit is printed in two, whatever `units` says of bare numbers.
constexpr int first_to_hold_by_sizes = 14;

/// The first engine that accepts nothing that lies at the root by its type and is said to be on the face.
constexpr int first_to_hold_sides = 15;

/// The first engine for which a dimension that the set wants is given by an exam that counts, and by no
/// other.
constexpr int first_to_measure_by_what_counts = 17;

/// The first engine for which the width of a cap or a root lies across the weld, and contradicts no length.
constexpr int first_to_lay_widths_across = 18;

/// Pure: the same input gives the same output, in any order of the indications. Throws nothing on data. A
/// class is accepted only with a proof that lack_in finds whole. An older `engine` judges as that one did, to
/// replay what it said, without a proof.
Judgement judge(const CriteriaSet &set, const Coupon &coupon, const std::vector<ExamDone> &exams,
                const std::vector<Indication> &indications,
                const Vocabulary &vocabulary = Vocabulary::shipped(), int engine = engine_number);

/// The same where the set was bound to the coupon's facts before: once for all coupons that share them.
Judgement judge(const BoundSet &bound, const std::vector<ExamDone> &exams,
                const std::vector<Indication> &indications);

} // namespace beadbook
