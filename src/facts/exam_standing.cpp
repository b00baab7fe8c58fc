#include "facts/exam_standing.hpp"

#include "facts/person_record.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The level in a text such as "II", "Level 2", "RT-II, UT-I": the first word that is one.
int level_in(const std::string &text) {
    std::string plain = text;
    std::replace_if(
        plain.begin(), plain.end(), [](char c) { return c == '-' || c == ',' || c == '/'; }, ' ');
    for (const auto word : words_of(plain)) {
        if (word == "I" || word == "1") return 1;
        if (word == "II" || word == "2") return 2;
        if (word == "III" || word == "3") return 3;
    }
    return 0;
}

bool inspector(const std::string &text) {
    for (const auto word : words_of(text))
        if (word == "CWI" || word == "SCWI") return true;
    return false;
}

/// "not II", "below III", "II expired", "I or II": the word of a level, and that it is not held.
bool takes_itself_back(const std::string &text) {
    constexpr std::string_view words[] = {"not",     "no",     "non",      "without",  "below",   "under",
                                          "less",    "former", "formerly", "ex",       "was",     "until",
                                          "expired", "lapsed", "trainee",  "training", "applied", "pending",
                                          "helper",  "for",    "of",       "or",       "almost",  "nearly"};
    const std::string low = lowered(text);
    const auto all = words_of(low);
    return std::any_of(all.begin(), all.end(), [&](std::string_view word) {
        return std::find(std::begin(words), std::end(words), word) != std::end(words);
    });
}

} // namespace

bool same_level(const std::string &a, const std::string &b) {
    return level_in(a) == level_in(b) && (level_in(a) > 0 || inspector(a) == inspector(b));
}

int rank_of_level(const std::string &level) {
    const int number = level_in(level);
    return number > 0 ? number : inspector(level) ? 2 : 0;
}

bool known_level(const std::string &level) {
    return !takes_itself_back(level) && (level_in(level) > 0 || inspector(level));
}

std::optional<bool> may_judge_alone(Exam method, const std::string &level) {
    if (const int number = level_in(level); number > 0) return number >= 2;
    if (method == Exam::VT && inspector(level)) return true;
    return std::nullopt;
}

std::string why_not_examined(const ExamRecord &exam, const CouponRecord &coupon, int finds) {
    if (!exam.finished) return "it is not finished: nobody has said how many finds it has, or none";
    if (exam.finished->found != finds)
        return "it was finished with " + std::to_string(exam.finished->found) +
               (exam.finished->found == 1 ? " find, " : " finds, ") + std::to_string(finds) +
               (finds == 1 ? " is on record" : " are on record");
    if (exam.examiner.empty()) return "its examiner is not named";
    for (const auto &id : exam.sure)
        if (std::string why = why_not_entitled(id); !why.empty()) return why;
    const auto alone = may_judge_alone(exam.method, exam.level);
    if (!alone)
        return exam.level.empty()
                   ? "the examiner's level is not on record; an entry in the exam's place can say it"
                   : "'" + shown(exam.level) + "' is no level that may judge alone, as far as is known here";
    if (!*alone) return "level I does not judge alone (common practice, no source)";
    const std::string welded = coupon.get("welded");
    if (!welded.empty() && exam.date < parse_day(welded))
        return "it is dated " + print(exam.date) + ", before the weld of " + welded;
    return "";
}

void settle_exam(ExamRecord &exam, const CouponRecord &coupon, int finds) {
    exam.pending = !exam.finished || exam.finished->found != finds;
    exam.contradicts = exam.finished && exam.finished->found < finds;
    exam.lacks = exam.finished && exam.finished->found > finds;
    exam.open = why_not_examined(exam, coupon, finds);
}

} // namespace beadbook
