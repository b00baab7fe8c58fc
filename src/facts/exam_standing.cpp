#include "facts/exam_standing.hpp"

#include "criteria/methods.hpp"
#include "facts/person_record.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::vector<std::string> words_of_level(const std::string &text) {
    return words_apart(text,
                       [](char c) { return std::string_view("-,/()").find(c) != std::string_view::npos; });
}

int level_of_word(const std::string &word) {
    constexpr std::string_view roman[] = {"I", "II", "III"}, figures[] = {"1", "2", "3"};
    for (int i = 0; i < 3; ++i)
        if (word == roman[i] || word == figures[i]) return i + 1;
    return 0;
}

/// The level in a text such as "II", "Level 2": the first word that is one.
int level_in(const std::string &text) {
    for (const auto &word : words_of_level(text))
        if (const int level = level_of_word(word); level > 0) return level;
    return 0;
}

bool is_inspector(const std::string &word) { return word == "CWI" || word == "SCWI"; }

bool inspector(const std::string &text) {
    const auto words = words_of_level(text);
    return std::any_of(words.begin(), words.end(), is_inspector);
}

/// What stands beside a level and takes nothing from it: the word itself, methods, and the schemes by which
/// people are certified.
bool goes_with_level(const std::string &word) {
    constexpr std::string_view beside[] = {"level", "lvl",  "certified", "ndt", "nde", "asnt", "snt",
                                           "tc",    "1a",   "cp",        "189", "iso", "en",   "9712",
                                           "473",   "4179", "nas",       "410", "aws", "qc1",  "by"};
    return exam_named(word) ||
           std::find(std::begin(beside), std::end(beside), lowered(word)) != std::end(beside);
}

} // namespace

bool same_level(const std::string &a, const std::string &b) {
    return level_in(a) == level_in(b) && (level_in(a) > 0 || inspector(a) == inspector(b));
}

int rank_of_level(const std::string &level) {
    const int number = level_in(level);
    return number > 0 ? number : inspector(level) ? 2 : 0;
}

std::string no_word_of_level(const std::string &level) {
    int held = 0;
    bool inspects = false;
    for (const auto &word : words_of_level(level)) {
        const int number = level_of_word(word);
        inspects = inspects || is_inspector(word);
        if (number > 0 ? held > 0 && held != number : !is_inspector(word) && !goes_with_level(word))
            return word;
        if (number > 0) held = number;
    }
    return held > 0 || inspects ? "" : level;
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
