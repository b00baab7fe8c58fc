#pragma once

#include "facts/coupon_record.hpp"
#include "facts/stamp.hpp"
#include "records/changed_values.hpp"

#include <vector>

namespace beadbook {

/// A find that was logged, or an exam that was recorded, and is no more, or no more so.
struct TakenBack {
    int number = 0;
    enum class Kind : std::uint8_t { find, exam, description, called_for, welder, weld };
    /// description: what the coupon was said to be, when it was rejected; called_for: exams that were asked
    /// of it beyond its criteria; welder: who was said to have welded it when it was examined, or nobody;
    /// weld: how it was said to be welded then
    Kind kind = Kind::find;
    std::string was;
    std::string now; ///< empty: withdrawn, or moved to another coupon
    std::string why;
    Stamp stamp;                 ///< of the change
    std::int64_t entry = 0;      ///< of the change; 0: of several
    std::optional<MovedTo> to{}; ///< of a find that was moved to another coupon
    bool planar = false; ///< a find that was a crack, incomplete fusion or penetration, or may be: a linear
                         ///< indication
    std::string there{}; ///< what became of it there; empty: it stands
    std::vector<int> finds{};  ///< of an exam: what was ever on record under it before the change
    bool opened_again = false; ///< an exam that was finished, and nothing else of it was changed
    bool made_count = false;   ///< an exam that counts, and did not, or by another method, until then
    int never_logged = 0; ///< of the finds that an exam was finished with: those that never came on record
    bool made_accept = false; ///< of a find or the weld: it is accepted only since
    std::string field{};      ///< of the weld: what of it
    int unheld = 0; ///< of an exam that was withdrawn and not valid by its practice: one that counts in its
                    ///< place and is held against none; 0: not so
    bool other_text = false; ///< that one is held against another text of the same practice
};
/// What was said and what is said now, by names: "method PT" and "method RT".
void tell_values(const std::vector<ChangedValue> &values, TakenBack &out);
/// What was said of the weld: "of position 6G", "welded 2026-11-20".
std::string said_of_weld(const std::string &field, const std::string &said);
/// In the order in which it was done; a find that went to another exam of the coupon stands with that exam.
std::vector<TakenBack> taken_back_in(const std::vector<Entry> &history, const CouponRecord &coupon);

} // namespace beadbook
