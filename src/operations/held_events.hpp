#pragma once

#include "operations/standing.hpp"

#include <limits>

namespace beadbook {

/// Whether what was written about a welder bears on how long one qualification holds.
bool is_about(const WelderEvent &event, const HeldQualification &held);

inline constexpr std::int64_t whole_record = std::numeric_limits<std::int64_t>::max();
/// What bears on the validity of one qualification.
struct Bearing {
    std::vector<QualificationEvent> events;
    /// Test welds that count for no use: they came on record when it was over by the days that they tell.
    std::vector<const HeldQualification *> late_welds;
    /// Uses and extensions of earlier days that were entered when it was over without what counts no more,
    /// and that no reason lets revive it.
    std::vector<const WelderEvent *> late_uses;
};
/// By entries before `before`, without those that count no more. Welding another accepted test with the
/// process is using it, as long as that test proves it, and one that is in doubt only `with_doubtful`.
/// Pointers into `all`.
Bearing bearing_on(const WelderState &welder, const std::vector<HeldQualification> &all,
                   const HeldQualification &held, const std::map<std::int64_t, std::string> &undone,
                   std::int64_t before = whole_record, bool with_doubtful = true);
/// The same for what it holds on a day: what is in doubt bears on it only where it would hold no more
/// without, as it is in doubt itself then (kept_by_doubtful).
Bearing bearing_for(const WelderState &welder, const std::vector<HeldQualification> &all,
                    const HeldQualification &held, const std::map<std::int64_t, std::string> &undone, Day on);
/// "; longer, through 2027-05-20, by the weld of #2 GTAW by asme-ix, which is in doubt"; empty if it is not.
std::string longer_by_doubtful(const WelderState &welder, const std::vector<HeldQualification> &all,
                               const HeldQualification &held,
                               const std::map<std::int64_t, std::string> &undone, Day on);
/// "; what was welded since came on record only when it was over ...", and the same of uses, where it would
/// hold by them; empty if there is none.
std::string words_of_late(const Bearing &bearing, const HeldQualification &held, Day on);
/// Lapsed or expired; or out of use, so that it only goes on till its period ends.
bool is_over(const Validity &validity);
/// That without the weld of a test that is in doubt it would not hold; empty if it would.
std::string kept_by_doubtful(const WelderState &welder, const std::vector<HeldQualification> &all,
                             const HeldQualification &held, const std::map<std::int64_t, std::string> &undone,
                             Day on);

/// A use or an extension of an earlier day that was entered when the record said that it was over.
struct LateEntry {
    const WelderEvent *event = nullptr;
    Day entered;
    std::string then;            ///< how it stood without it on the day on which it was entered: "lapsed"
    bool before_carried = false; ///< of a day before it was carried in, so that no reason is asked
};
/// Those without which the qualification would be over on that day, each entered when it was over without
/// those before it; none where it would not.
std::vector<LateEntry> late_entries(const WelderState &welder, const std::vector<HeldQualification> &all,
                                    const HeldQualification &held,
                                    const std::map<std::int64_t, std::string> &undone, Day on);
/// "used as of 2026-04-01 by an entry of 2026-11-25, when it was lapsed"; those alike are told together, with
/// whose reason stands for those that have none.
std::vector<std::string> words_of(const std::vector<LateEntry> &all);

/// That an event, which is about to be entered today for an earlier day, would revive what is over: only a
/// reason on record lets it (common practice, no source). Nothing of a day before a qualification was carried
/// in, when nobody here could have entered it in time. One reason stands for all that revive it together: it
/// names the days of those before it that have none.
std::optional<Shortcoming> reviving(const WelderStanding &standing, const HeldQualification &held,
                                    const WelderEvent &event, Day today);
/// Whether an event of a day before it was carried in would revive it: no reason is asked for that.
bool revives_of_before_carried(const WelderStanding &standing, const HeldQualification &held,
                               const WelderEvent &event, Day today);

} // namespace beadbook
