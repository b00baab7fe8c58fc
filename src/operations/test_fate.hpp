#pragma once

#include "operations/fates.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// Coupons that a qualification rests on by its own test.
std::vector<std::string> test_coupons(const QualificationRecord &record);

/// Unless it is revoked: then nothing is left to doubt. Without a reason nothing is doubted.
void put_in_doubt(const std::string &why, Validity &validity);

/// What became of the test that a qualification was granted by, whatever the time: valid if nothing did, in
/// doubt, or no longer proved, with the reason.
Validity fate_of_test(Book &book, const WelderState &welder, const HeldQualification &held, Fates &fates);

/// That it runs from another day than its coupon was said to be welded on when it was examined, or from one
/// that was told only after an exam of it.
void tell_day_moved(Book &book, HeldQualification &held);

/// The day on which its coupon came on record, if that was after the day of its weld; none of a paper.
std::optional<Day> registered_later(Book &book, const WelderState &welder, const HeldQualification &held);

} // namespace beadbook
