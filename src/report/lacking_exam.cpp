#include "report/lacking_exam.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {

std::string lacking_exam_words(const Case &c, const Finding &f) {
    std::vector<std::string> names;
    for (const Exam e : f.exams) names.emplace_back(name_of(e));
    std::string out = names.empty() ? "No examination is on record"
                                    : "No " + listed(names, "or") + " that counts is on record";
    Missing needed = f.missing;
    for (const auto &exam : c.exams)
        if (!exam.counts &&
            (f.exams.empty() || std::find(f.exams.begin(), f.exams.end(), exam.method) != f.exams.end())) {
            out += "; the " + std::string(name_of(exam.method)) + " does not count: " + exam.why_not;
            needed = needed.without(exam.hangs_on);
        }
    if (needed.any()) out += "; whether it is needed hangs on " + listed(names_of(needed));
    if (!names.empty() && f.clause < 0 && !c.coupon.called_for[static_cast<std::size_t>(f.exams.front())])
        out += ", and the set judges what other methods find by no rule";
    return out;
}

std::string pending_exam_words(const Case &c, Exam method) {
    const std::string the = "The " + std::string(name_of(method));
    std::vector<std::string> out;
    for (const auto &exam : c.exams) {
        if (exam.method != method || !exam.pending) continue;
        out.push_back(
            exam.lacks ? the + " was finished with more finds than are on record under it: the rest is to be "
                               "logged, or it is to be opened again and finished with what it found"
            : exam.contradicts
                ? the + " was finished with fewer finds than are on record under it: it is to be opened "
                        "again and finished with what it found"
                : the + " was begun, and what it found is not all on record: it is to be finished, or "
                        "withdrawn");
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    std::string all;
    for (const auto &one : out) all += (all.empty() ? "" : "; ") + one;
    return all;
}

std::string measured_in_vain_words(const Case &c, const Finding &f) {
    std::string out = " by an exam that counts";
    for (const int number : f.indications) {
        const Indication *entry = c.find(number);
        const auto by =
            std::find_if(c.exams.begin(), c.exams.end(), [&](const ExamDone &e) { return e.found(*entry); });
        out += "; #" + std::to_string(number) + " is of ";
        out += by == c.exams.end()
                   ? "no exam on record"
                   : "the " + std::string(name_of(by->method)) + " (exam " + std::to_string(by->number) +
                         "), which does not count: " + by->why_not;
    }
    return out;
}

} // namespace beadbook
