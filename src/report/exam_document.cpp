#include "report/exam_document.hpp"

namespace beadbook {

Document document_of(const ExamRecorded &done) {
    Document doc;
    doc.line("exam " + std::to_string(done.exam.number) + " (" + std::string(name_of(done.exam.method)) +
             ") of coupon " + done.coupon + " recorded; next: beadbook log " + done.coupon +
             " \"gas pore 0.04 at 2.1\", or nothing if it found nothing");
    if (!done.exam.invalid.empty()) doc.line("  " + done.exam.invalid);
    return doc;
}

Document document_of(const Logged &done) {
    Document doc;
    for (const auto &i : done.indications) doc.line("#" + std::to_string(i.number) + " " + print_log_line(i));
    const std::size_t count = done.indications.size();
    return doc.line(std::to_string(count) + (count == 1 ? " indication" : " indications") +
                    " logged under exam " + std::to_string(done.exam) + "; next: beadbook judge " +
                    done.coupon);
}

Document document_of(const Corrected &done) {
    return Document{}.line("#" + std::to_string(done.number) + " corrected; the old entry is kept");
}

Document document_of(const Withdrawn &done) {
    return Document{}.line(done.what + " " + std::to_string(done.number) +
                           " withdrawn; the old entry is kept");
}

} // namespace beadbook
