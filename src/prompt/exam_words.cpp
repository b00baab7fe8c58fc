#include "prompt/exam_words.hpp"

#include "measure/text.hpp"
#include "prompt/exam_meant.hpp"
#include "terminal/call.hpp"

#include <algorithm>

namespace beadbook {

int found_word(const std::string &word) {
    return same_word(word, "none") || word == "0" ? 0 : whole_number(word, "number of finds, nor 'none'");
}

int exam_word(const CouponState &coupon, const std::string &word) {
    if (const auto method = exam_named(word)) return exam_by(coupon, *method);
    return whole_number(word, "number of an exam");
}

void take_replaced(const std::string &word, ExamRequest &request) {
    request.replaces_last = same_word(word, "last");
    if (!request.replaces_last) request.replaces = whole_number(word, "number of an exam, nor 'last'");
}

std::vector<Exam> method_words(std::string list) {
    std::replace(list.begin(), list.end(), ',', ' ');
    std::vector<Exam> out;
    for (const auto word : words_of(list)) {
        const auto method = exam_named(word);
        if (!method) throw UsageError("'" + shown(word) + "' is no exam; expected " + exam_names_text());
        if (std::find(out.begin(), out.end(), *method) != out.end())
            throw UsageError(shown(word) + " is given twice; a second exam by it is entered by itself");
        out.push_back(*method);
    }
    if (out.empty()) throw UsageError("by which method? expected " + exam_names_text());
    return out;
}

} // namespace beadbook
