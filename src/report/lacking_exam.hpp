#pragma once

#include "report/sentence.hpp"

namespace beadbook {

/// That no exam of those asked counts, and what of each keeps it from counting.
std::string lacking_exam_words(const Case &c, const Finding &f);

/// Why what an exam found is not all on record, and what mends it.
std::string pending_exam_words(const Case &c, Exam method);

/// Of what only exams measured that do not count: " by an exam that counts; #1 is of the VT (exam 1), which
/// does not: ...".
std::string measured_in_vain_words(const Case &c, const Finding &finding);

} // namespace beadbook
