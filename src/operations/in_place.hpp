#pragma once

#include "operations/examining.hpp"
#include "operations/office.hpp"

#include <memory>
#include <string>

namespace beadbook {

/// What an exam that is entered in place of another leaves unsaid, and takes over from it.
struct InPlace {
    std::shared_ptr<const Practice>
        practice;     ///< of the other one, where it is taken; null: none, or not here
    std::string note; ///< what was taken over, and what was not; empty: nothing was
};

/// Who examined and when, before anything else is filled in.
void take_over_who(const ExamRecord &old, const ExamRequest &request, ExamRecord &exam);
/// The rest. What hangs on the method, the examiner or the equipment is left out where these are others now.
/// Of a request that says all that a page shows, nothing but what it does not show.
InPlace take_over(Office &office, const ExamRecord &old, const ExamRequest &request, ExamRecord &exam,
                  bool has_practice);
/// Asks what a finished exam found where the entry in its place makes it count and does not say it again.
/// Throws Unsure.
void check_counted_before(const ExamRecord &old, const ExamRecord &now);

} // namespace beadbook
