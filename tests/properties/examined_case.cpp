#include "examined_case.hpp"

#include "facts/exam_standing.hpp"

#include <algorithm>
#include <cstdlib>

namespace beadbook::test {

int ExaminedCase::finds_of(Exam method) const {
    return static_cast<int>(std::count_if(c.indications.begin(), c.indications.end(),
                                          [&](const Indication &i) { return i.exam == method; }));
}

void ExaminedCase::settle() {
    c.exams.clear();
    for (auto &exam : exams) {
        settle_exam(exam, record, finds_of(exam.method));
        c.exams.push_back(exam.done());
    }
}

ExaminedCase examined_case(std::mt19937 &random, const CriteriaSet &set) {
    ExaminedCase out{random_case(random, set), {}, {}};
    out.record.id = "T";
    out.record.set("welded", "2026-11-20");
    for (std::size_t x = 0; x < exam_count; ++x) {
        ExamRecord exam;
        exam.number = static_cast<int>(x) + 1;
        exam.method = static_cast<Exam>(x);
        exam.date = parse_day("2026-11-21");
        exam.examiner = "A. Field";
        exam.level = "II";
        exam.finished = ExamFinished{out.finds_of(exam.method), exam.date, "A. Field"};
        out.exams.push_back(std::move(exam));
        if (random() % 8 == 0) out.c.coupon.called_for.set(x);
    }
    out.settle();
    return out;
}

} // namespace beadbook::test
