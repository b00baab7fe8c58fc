#pragma once

#include "facts/plausibility.hpp"
#include "operations/judging.hpp"

namespace beadbook {

/// Operations, one after the other, or of which one will do.
struct Mends {
    std::vector<Remedy> operations;
    bool one_will_do = false;
};

/// An exam that is to be made, which counts with its examiner.
Remedy exam_to_make(const std::string &mark, Exam method);

/// What would make an exam count that is on record and does not. Empty: it counts, or nobody can say here
/// what would.
Mends mends_of_exam(Office &office, const CouponState &coupon, const ExamRecord &exam);

/// What the first thing asks for that keeps the class from being said: the exam that nobody made, or that is
/// to be finished or mended; what the coupon does not say. Empty where no entry would do it.
Mends mends_of_verdict(Office &office, const CouponState &coupon, const ClassJudgement &judged);

/// set_aside_by of an exam that is entered: where the record knows the examiner and no certificate by which
/// he may judge, the question says how that is mended, too.
std::vector<std::string> set_aside_of_exam(Office &office, const ExamRecord &exam,
                                           const std::vector<Unlikely> &found, bool sure);
/// Of an examiner whom the record knows, and entitles not: what puts the certificate on record.
Remedy mend_of_certificate(const std::string &examiner);

/// "'Q. Nobody' is not on record as a person, ...": that nothing tells whether who says what another's exam
/// found may judge by its method. Empty: it is the examiner, or the record tells, or it has no people at all.
std::string unknown_finisher(Office &office, const ExamRecord &exam, const std::string &who);

} // namespace beadbook
