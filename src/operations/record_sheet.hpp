#pragma once

#include "operations/judging.hpp"
#include "operations/photos.hpp"
#include "operations/standing.hpp"
#include "operations/taken_back.hpp"

namespace beadbook {

/// Everything that the record of one welder and test shows; all of it outlives the sheet.
struct RecordSheet {
    WelderRecord welder;
    HeldQualification held;
    std::vector<WelderEvent> events;            ///< that bear on it
    std::map<std::int64_t, std::string> undone; ///< those that count no more, by entry, and why
    Stamp granted;
    std::string hash;                                ///< of its entry in the chain
    std::string head;                                ///< of the newest entry
    Day on;                                          ///< the day that it speaks of
    std::vector<TakenBack> taken_back = {};          ///< of the coupon
    std::vector<WelderStanding::Gone> gone = {};     ///< of the others that it rests on
    std::vector<StruckOut> struck = {};              ///< of the welder, and what bore on it
    std::vector<WelderStanding::Failed> failed = {}; ///< tests in its process that failed
    /// What the coupon says in other words than those of the rules, by its fields: {"backing", "steel
    /// strip"}.
    std::vector<std::pair<std::string, std::string>> own_words = {};
    /// Its test coupons as they are on record now, judged by the criteria and for the class that the grade
    /// was given for; without those that cannot be judged so.
    std::vector<Judged> tests = {};
    std::vector<PhotoList> photos = {}; ///< of its test coupons, those that have any
};
/// Throws DataError: no such welder or qualification.
RecordSheet record_sheet(Office &office, const std::string &mark, int number, std::optional<Day> on = {});

/// The paper that a qualification was carried in with. Throws DataError if there is none.
Ledger::Document paper_of(Office &office, const std::string &mark, int number);

} // namespace beadbook
