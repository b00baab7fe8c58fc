#include "report/exam_document.hpp"

#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/marks.hpp"

namespace beadbook {

namespace {

std::string exam_name(const ExamRecord &exam, const std::string &coupon) {
    return title_of(exam) + " of coupon " + coupon;
}

std::string found_text(int found) { return found == 0 ? "none found" : std::to_string(found) + " found"; }

/// Before many are begun so: each of them would be mended by itself.
void add_no_examiner(Document &doc, const ExamRecord &exam, const std::string &it) {
    if (exam.examiner.empty() && !exam.finished)
        doc.line("  " + it +
                 " no examiner, and can neither be finished nor count until an entry in its "
                 "place says who examined");
}

/// Why it does not count; that it is open says the line before.
void add_objection(Document &doc, const ExamRecord &exam) {
    if (!exam.incomplete.empty()) doc.line("  it does not count: incomplete, " + exam.incomplete);
    if (!exam.invalid.empty()) doc.line("  " + exam.invalid);
    if (exam.incomplete.empty() && exam.finished && !exam.open.empty())
        doc.line("  it does not count: " + exam.open);
}

} // namespace

Document document_of(const ExamRecorded &done) {
    Document doc;
    const std::string name = exam_name(done.exam, done.coupon) + " recorded";
    if (done.exam.finished)
        doc.line(name + " and finished: " + found_text(done.exam.finished->found) +
                 "; next: beadbook judge " + done.coupon);
    else
        doc.line(name + "; next: log what it finds, and finish it");
    add_no_examiner(doc, done.exam, "it names");
    add_objection(doc, done.exam);
    return doc;
}

Document document_of(const ExamsRecorded &done) {
    Document doc;
    const ExamRecord &first = done.exams.front();
    std::vector<std::string> methods, marks;
    for (const auto &exam : done.exams)
        if (word_among(name_of(exam.method), methods).empty()) methods.emplace_back(name_of(exam.method));
    for (const auto &mark : done.coupons)
        if (marks.empty() || marks.back() != mark) marks.push_back(mark);
    doc.line(listed(methods) + " of " + marks_text(marks) + " recorded" +
             (first.finished ? " and finished: " + found_text(first.finished->found)
                             : "; next: log what they find, and finish them"));
    add_no_examiner(doc, first, "they name");
    for (std::size_t i = 0; i < done.exams.size(); ++i)
        if (const ExamRecord &exam = done.exams[i];
            !exam.incomplete.empty() || !exam.invalid.empty() || (exam.finished && !exam.open.empty())) {
            doc.line(exam_name(exam, done.coupons[i]) + ":");
            add_objection(doc, exam);
        }
    return doc;
}

Document document_of(const SheetTaken &done) {
    Document doc;
    for (const auto &part : done.parts) {
        doc.line(padded(exam_name(part.exam, part.coupon), 24) + "  " +
                 (!part.exam.incomplete.empty() ? "incomplete: " + part.exam.incomplete
                  : part.exam.finished          ? found_text(part.exam.finished->found)
                                                : "not finished"));
        for (const auto &found : part.found)
            doc.line("  #" + std::to_string(found.number) + " " + print_log_line(found));
        if (part.exam.incomplete.empty()) add_objection(doc, part.exam);
    }
    return doc;
}

Document document_of(const ExamFinishedNow &done) {
    Document doc;
    doc.line(exam_name(done.exam, done.coupon) + " finished: " + found_text(done.exam.finished->found));
    add_objection(doc, done.exam);
    return doc;
}

Document document_of(const ExamsFinished &done) {
    Document doc;
    for (std::size_t i = 0; i < done.exams.size(); ++i) {
        const Document one = document_of(ExamFinishedNow{done.coupons[i], done.exams[i]});
        doc.blocks.insert(doc.blocks.end(), one.blocks.begin(), one.blocks.end());
    }
    return doc;
}

Document document_of(const ExamReopened &done) {
    return Document{}.line(exam_name(done.exam, done.coupon) + " is open again");
}

Document document_of(const FinishedAll &done) {
    return Document{}.line(std::to_string(done.exams) + (done.exams == 1 ? " exam" : " exams") +
                           " finished as logged");
}

Document document_of(const Logged &done) {
    Document doc;
    for (const auto &i : done.indications) doc.line("#" + std::to_string(i.number) + " " + print_log_line(i));
    const std::size_t count = done.indications.size();
    for (const int exam : done.none)
        doc.line("exam " + std::to_string(exam) + " is finished: none found" +
                 (count > 0 ? "" : "; next: beadbook judge " + done.coupon));
    if (count == 0) return doc;
    std::vector<std::string> exams;
    for (const int exam : done.exams()) exams.push_back(std::to_string(exam));
    const bool several = exams.size() > 1;
    const std::string logged = std::to_string(count) + (count == 1 ? " indication" : " indications") +
                               " logged under " + (several ? "exams " : "exam ") + listed(exams, "and");
    if (!done.finished)
        return doc.line(logged + (several ? ", which are still open; next: log more, or finish them"
                                          : ", which is still open; next: log more, or finish it"));
    return doc.line(logged + (several ? ", which are finished: " : ", which is finished: ") +
                    found_text(*done.finished) + "; next: beadbook judge " + done.coupon);
}

Document document_of(const Corrected &done) {
    const std::string number = "#" + std::to_string(done.now.number);
    return Document{}
        .line(number + " " + print_log_line(done.now))
        .line(number + " corrected; the old entry is kept");
}

Document document_of(const Withdrawn &done) {
    return Document{}.line(done.what + " " + std::to_string(done.number) +
                           " withdrawn; the old entry is kept");
}

Document document_of(const Moved &done) {
    const std::string now = "#" + std::to_string(done.now.number) + " " + print_log_line(done.now);
    return Document{}.line(now).line("moved from exam " + std::to_string(done.from_exam) + " of coupon " +
                                     done.from + " (#" + std::to_string(done.from_number) + ") to exam " +
                                     std::to_string(done.now.exam) + " of coupon " + done.coupon +
                                     "; the old entry is kept");
}

} // namespace beadbook
