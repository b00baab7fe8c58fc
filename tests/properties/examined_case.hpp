#pragma once

#include "facts/exam_record.hpp"
#include "random_case.hpp"

namespace beadbook::test {

/// A random coupon with exams as people record them, so that what they lack is settled as in a record.
struct ExaminedCase {
    RandomCase c;
    CouponRecord record;
    std::vector<ExamRecord> exams;

    int finds_of(Exam method) const;
    /// Tells the judge of the exams as they are recorded now.
    void settle();
};

/// Every exam finished on the day after the weld by an examiner of level II; some are called for.
ExaminedCase examined_case(std::mt19937 &random, const CriteriaSet &set);

/// Hands on random coupons of all sets until so many were accepted in a class: `accept` gets the set, which
/// it may alter for a while, the coupon, one accepted class and its proof.
template <class Accept>
void for_accepts(std::size_t wanted, unsigned seed, Accept accept) {
    std::mt19937 random(seed);
    std::vector<CriteriaSet> sets;
    for (const auto &set : all_sets()) sets.push_back(*set);
    std::size_t accepted = 0;
    for (std::size_t n = 0; accepted < wanted && n < wanted * 200; ++n) {
        CriteriaSet &set = sets[n % sets.size()];
        const ExaminedCase one = examined_case(random, set);
        Judgement judgement = judge(set, one.c.coupon, one.c.exams, one.c.indications);
        std::vector<std::size_t> classes;
        for (std::size_t k = 0; k < judgement.classes.size(); ++k) {
            const ClassJudgement &judged = judgement.classes[k];
            if ((judged.verdict == Verdict::accept) != judged.proof.has_value())
                throw std::logic_error("an accept without a proof, or a proof without an accept");
            if (judged.proof) classes.push_back(k);
        }
        if (classes.empty()) continue;
        ++accepted;
        const std::size_t k = classes[random() % classes.size()];
        accept(set, one, k, *judgement.classes[k].proof, random);
    }
    if (accepted < wanted) throw std::logic_error("too few random coupons are accepted");
}

} // namespace beadbook::test
