#include "report/exam_words.hpp"

#include "measure/text.hpp"

namespace beadbook {

std::string exams_words(std::vector<std::string> one_of) {
    for (auto &name : one_of)
        if (name == "mechanical") name = "mechanical tests (bend, fracture or section)";
    return listed(one_of, "or");
}

std::string why_words(const AskedExam &exam) {
    if (exam.called_for) return "the drawing calls for it beyond the criteria";
    std::string out = authority(exam.from);
    if (!exam.because.empty()) out += "; because " + listed(exam.because);
    if (!exam.lacks.empty()) out += " (unknown here: " + listed(exam.lacks) + ")";
    return out;
}

std::string finished_words(const ExamRecord &exam) {
    if (!exam.finished) return "not finished";
    return "finished by " + exam.finished->by +
           (exam.finished->on ? " on " + print(*exam.finished->on) : "") +
           (exam.finished->told_by.empty() ? "" : ", brought in by " + exam.finished->told_by) +
           (exam.finished->why.empty() ? "" : " (the reason: " + exam.finished->why + ")");
}

std::string caution_words(ExamCaution caution, const CriteriaSet *set) {
    switch (caution) {
    case ExamCaution::partly_magnetic:
        return "its work is partly magnetic: MT where the coupon is magnetic, else PT";
    case ExamCaution::partly_unsaid:
        return "of some of its work it is not said whether it is magnetic: say so; until then MT where the "
               "coupon is magnetic, else PT";
    case ExamCaution::not_magnetic: return "not magnetic: MT finds nothing, PT takes its place";
    case ExamCaution::classes_not_ordered:
        return "the classes of " + (set ? set->name : std::string("the criteria")) +
               " are not ordered; check each job's own";
    case ExamCaution::fillet: break;
    }
    return "a fillet is not radiographed: the thickness varies across the image (common practice)";
}

std::string never_accepted_words(const NeverAccepted &one, const CriteriaSet &set) {
    return set.name + " accepts no such coupon, whatever is found, while " + listed(one.because, "and") +
           ": " + one.title + " [" + authority(one.from) + "]" + (one.says.empty() ? "" : "; " + one.says);
}

} // namespace beadbook
