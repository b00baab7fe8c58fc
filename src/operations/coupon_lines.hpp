#pragma once

#include "facts/coupon_line.hpp"
#include "operations/grade_standing.hpp"

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

std::vector<ExamAtAGlance> exams_at_a_glance(const CouponState &coupon);

/// What lists say of a coupon, from what was judged.
CouponLine line_of(const CouponState &coupon, const JudgedOrNot &judged, const GradeStanding &grading);

/// Reads kept lines: those that this program worked out by the criteria as they are today and by the shop's
/// copies as they are on record. All others are to be worked out again. For one look at a record.
class KeptLines {
public:
    explicit KeptLines(Office &office);
    std::optional<CouponLine> read(const Ledger::Line &line) const;
    /// What a line rests on beside the entries about its coupon; empty where that cannot be told: a criteria
    /// file that is not there today.
    std::string basis(const std::string &criteria) const;
    /// Whether a list of all has to judge many coupons afresh, those by files of one's own aside: seen by the
    /// first ones, because another version of the program did not keep one of them.
    bool miss_many() const { return office_.ledger().lines_without(of_all_, 1000) > 500; }
    /// Whether it has to judge any.
    bool miss_any() const {
        return office_.ledger().lines_without(of_all_, std::numeric_limits<std::int64_t>::max()) > 0;
    }

private:
    Office &office_;
    std::string of_all_; ///< how every basis begins
};

/// Commits, and keeps the lines of all coupons that were written about: of the first 1,000 together with what
/// was entered, of more in short transactions after it, so that nobody waits long. A line that cannot be
/// worked out is left out. The one way in which shells commit.
void commit(Writing &writing);
/// Runs what a shell was asked for. Where that is refused nothing of it is stored, but what is kept all the
/// same (Writing::keep_if_refused).
template <class Work>
auto carry_out(Writing &writing, Work work) {
    try {
        return work(writing);
    } catch (const Refusal &e) {
        if (e.kind() != Refusal::Kind::record && writing.refuse()) commit(writing);
        throw;
    }
}

/// What it may mean where lists say what does not follow, and what to do: behind "entries about it".
inline constexpr std::string_view perhaps_cut_off =
    " may have been cut off. Hold the record against a backup, a seal or a head noted elsewhere";
/// "what lists say of coupon T-7 does not follow from what is on record: ...", and what to do.
std::string line_does_not_follow(const std::string &coupon);
/// Coupons of which something else is kept than follows from the record: entries about them were cut off, or
/// their lines were written by something else.
std::vector<std::string> false_lines(Office &office);

/// Whether its line knows of the exams, finds and grade that are on record, and of no others; true without
/// one.
bool line_follows(Office &office, const CouponState &coupon);
/// Before anything is written about a coupon, which makes its line go. Throws StoreError where that does not
/// follow.
void check_line_follows(Office &office, const CouponState &coupon);

/// Works all lines out again, in short transactions: after another version of the program was installed say,
/// by which none is read.
struct Refreshed {
    std::size_t coupons = 0;
    std::vector<std::string> were_false; ///< what false_lines said before, which nobody finds afterwards
};
Refreshed refresh_lines(Office &office);

} // namespace beadbook
