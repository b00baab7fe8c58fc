#include "operations/log_words.hpp"

#include "criteria/shipped.hpp"
#include "criteria/vocabulary.hpp"
#include "facts/commented_find.hpp"
#include "facts/log_line.hpp"
#include "facts/log_line_hints.hpp"
#include "facts/told_find.hpp"
#include "measure/natural_order.hpp"
#include "measure/text.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <set>
#include <sstream>

namespace beadbook {
namespace {

struct LogWordInfo {
    std::string_view text;
    LogWord word;
    std::size_t most; ///< words that may follow
};
/// A whole line may follow.
constexpr std::size_t most_words = 1000;
constexpr std::array<LogWordInfo, 17> log_words{{{"help", LogWord::help, 0},
                                                 {"?", LogWord::help, 0},
                                                 {"list", LogWord::list, 0},
                                                 {"undo", LogWord::undo, 1},
                                                 {"reopen", LogWord::reopen, most_words},
                                                 {"correct", LogWord::correct, most_words},
                                                 {"withdraw", LogWord::withdraw, most_words},
                                                 {"move", LogWord::move, most_words},
                                                 {"verdict", LogWord::verdict, 1},
                                                 {"finish", LogWord::finish, 1},
                                                 {"none", LogWord::nothing, 1},
                                                 {"all", LogWord::all, 0},
                                                 {"next", LogWord::next, 0},
                                                 {"on", LogWord::on, 2},
                                                 {"done", LogWord::done, 0},
                                                 {"quit", LogWord::done, 0},
                                                 {"exit", LogWord::done, 0}}};

const LogWordInfo *log_word(std::string_view text) {
    const auto at = std::find_if(log_words.begin(), log_words.end(),
                                 [&](const LogWordInfo &one) { return same_word(one.text, text); });
    return at == log_words.end() ? nullptr : &*at;
}

int number_in(std::string_view line, std::string_view word) {
    const std::string_view digits = word.starts_with('#') ? word.substr(1) : word;
    int out = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), out);
    if (error != std::errc() || end != digits.data() + digits.size() || out < 1)
        throw InputError("'" + shown(word) + "' is no number of a find or an exam; expected such as 3",
                         static_cast<std::size_t>(word.data() - line.data()));
    return out;
}

bool finishes(LogWord word) { return word == LogWord::finish || word == LogWord::nothing; }

/// `no indications`, `VT nothing found`, `none. VT`: nothing, by the method that is named; a remark may stand
/// behind it.
std::optional<LogOrder> said_none(std::string_view line) {
    const std::size_t hash = std::min(line.find('#'), line.size());
    const auto words = words_of(line.substr(0, hash));
    std::vector<std::string> rest(words.begin(), words.end());
    LogOrder out{LogWord::nothing, "", 0, {}};
    if (rest.size() > 1 && exam_named(rest.front())) {
        out.method = exam_named(rest.front());
        rest.erase(rest.begin());
    } else if (rest.size() > 1 && exam_named(rest.back())) {
        out.method = exam_named(rest.back());
        rest.pop_back();
    }
    if (!says_none(joined(rest, " "))) return std::nullopt;
    const std::string_view remark = line.substr(hash);
    if (const std::string why = not_behind_none(remark); !why.empty()) throw InputError(why, hash);
    out.why = trimmed(remark.substr(std::min<std::size_t>(1, remark.size())));
    return out;
}

/// `MT`, `VT MT` or `VT,MT`: all of them are methods.
std::vector<Exam> only_methods(std::string_view line) {
    std::string apart(line);
    std::replace(apart.begin(), apart.end(), ',', ' ');
    std::vector<Exam> out;
    for (const auto word : words_of(apart)) {
        const auto method = exam_named(word);
        if (!method) return {};
        if (std::find(out.begin(), out.end(), *method) == out.end()) out.push_back(*method);
    }
    return out;
}

/// What stands in the line from a word on.
std::string tail_from(std::string_view line, std::string_view word) {
    return std::string(trimmed(line.substr(static_cast<std::size_t>(word.data() - line.data()))));
}

/// `withdraw 3 WHY`, `move 3 PT WHY`, `move 3 to T-8 WHY`, `move 3 to T-8 2 WHY`.
void read_taken_away(LogOrder &out, std::string_view line, const std::vector<std::string_view> &words) {
    const bool moves = out.word == LogWord::move;
    const char *wanted = moves ? "expected its number, where it belongs and why: move 3 PT found by the PT; "
                                 "move 3 to T-8 the films were mixed up"
                               : "expected its number and why: withdraw 3 a scratch of the brush";
    if (words.size() < 2) throw InputError(std::string("which find? ") + wanted, line.size());
    (moves ? out.find : out.number) = number_in(line, words[1]);
    std::size_t next = 2;
    const auto take_exam = [&] {
        if (next >= words.size()) return false;
        const bool number = words[next].find_first_not_of("0123456789") == std::string_view::npos;
        out.method = exam_named(words[next]);
        if (number) out.number = number_in(line, words[next]);
        if (number || out.method) ++next;
        return number || out.method;
    };
    if (moves) {
        if (next + 1 < words.size() && same_word(words[next], "to")) {
            out.of = words[next + 1];
            next += 2;
            take_exam();
        } else if (!take_exam()) {
            throw InputError(std::string("under which exam does it belong? ") + wanted,
                             next < words.size() ? static_cast<std::size_t>(words[next].data() - line.data())
                                                 : line.size());
        }
    }
    if (next >= words.size()) throw InputError(std::string("why? ") + wanted, line.size());
    out.why = tail_from(line, words[next]);
}

/// `reopen one was missed`, `reopen MT one was missed`, `reopen 2 one was missed`.
void read_reopened(LogOrder &out, std::string_view line, const std::vector<std::string_view> &words) {
    std::size_t next = 1;
    if (next < words.size()) {
        out.method = exam_named(words[next]);
        if (words[next].find_first_not_of("0123456789") == std::string_view::npos)
            out.number = number_in(line, words[next]);
        if (out.method || out.number > 0) ++next;
    }
    if (next >= words.size())
        throw InputError("why? expected such as: reopen one more find under the light; reopen MT ..., where "
                         "several are finished",
                         line.size());
    out.why = tail_from(line, words[next]);
}

/// The open exams of which a line of the text says that they found nothing.
struct SaidNone {
    std::vector<const ExamRecord *> exams;
    bool alone = true; ///< no line says anything else
};
SaidNone exams_of_none(const CouponState &coupon, const std::string &text) {
    SaidNone out;
    std::istringstream lines{text};
    for (std::string line; std::getline(lines, line);) {
        if (is_comment(line)) {
            // One that was refused as a find may be one.
            out.alone = out.alone && why_no_comment(line).empty();
            continue;
        }
        LogOrder order;
        try {
            order = log_order(line);
        } catch (const InputError &) { // no line of a find either
        }
        if (order.word != LogWord::nothing) {
            out.alone = false;
            continue;
        }
        for (const auto *exam : coupon.open_exams())
            if ((!order.method || exam->method == *order.method) &&
                std::find(out.exams.begin(), out.exams.end(), exam) == out.exams.end())
                out.exams.push_back(exam);
    }
    return out;
}

} // namespace

LogOrder log_order(std::string_view line) {
    auto words = words_of(line);
    if (words.empty()) return {};
    if (const auto none = said_none(line)) return *none;
    LogOrder out;
    // MT none is none MT.
    if (words.size() == 2 && exam_named(words[0]))
        if (const auto *second = log_word(words[1]); second && finishes(second->word))
            std::swap(words[0], words[1]);
    if (const auto methods = only_methods(line); !methods.empty())
        return {LogWord::by, "", 0, methods.front(), methods};
    const LogWordInfo *info = log_word(words[0]);
    if (!info || words.size() > info->most + 1) return {};
    if (finishes(info->word) && words.size() == 2) {
        out.method = exam_named(words[1]);
        if (!out.method && info->word != LogWord::finish) return {};
        if (!out.method) out.number = number_in(line, words[1]);
    }
    out.word = info->word;
    if (out.word == LogWord::undo && words.size() == 2) out.number = number_in(line, words[1]);
    if (out.word == LogWord::correct) {
        if (words.size() < 3)
            throw InputError("which find, and to what? such as correct 3 porosity 0.02 at 3 in", line.size());
        out.number = number_in(line, words[1]);
        out.of = tail_from(line, words[2]);
    }
    if (out.word == LogWord::withdraw || out.word == LogWord::move) read_taken_away(out, line, words);
    if (out.word == LogWord::reopen) read_reopened(out, line, words);
    if (out.word == LogWord::verdict && words.size() == 2) out.of = words[1];
    if (out.word == LogWord::on) {
        if (words.size() < 2) throw InputError("on which coupon? such as on T-8", line.size());
        out.of = words[1];
        if (words.size() == 3) out.method = exam_named(words[2]);
        if (words.size() == 3 && !out.method) out.number = number_in(line, words[2]);
    }
    return out;
}

bool slip_of_log_word(std::string_view line) {
    const auto words = words_of(line);
    constexpr std::size_t least = 3, most_digits = 3;
    if (words.empty() || words.size() > 2 || words.front().size() < least) return false;
    if (words.size() == 2) {
        const std::string_view number = words[1].substr(words[1].starts_with('#') ? 1 : 0);
        if (number.size() > most_digits || number.find_first_not_of("0123456789") != number.npos)
            return false;
    }
    std::vector<std::string> known;
    for (const auto &one : log_words) known.emplace_back(one.text);
    const Vocabulary &vocabulary = Vocabulary::shipped();
    return !nearest_word(words.front(), known).empty() && told_in(line).empty() &&
           vocabulary.perhaps(words.front()).empty() && !type_named(line, vocabulary);
}

LogWord order_begun(std::string_view line) {
    try {
        return log_order(line).word;
    } catch (const InputError &) {
        const LogWordInfo *info = log_word(words_of(line).front());
        return info ? info->word : LogWord::none;
    }
}

std::optional<Exam> method_begun(std::string_view text) {
    const auto words = words_of(text);
    if (words.empty()) return std::nullopt;
    const std::string_view word = words.front();
    return exam_named(word.substr(0, word.size() - (word.ends_with(':') ? 1 : 0)));
}

void check_one_to_log(const CouponState &coupon, int number, const std::string &who,
                      std::optional<Exam> method) {
    const std::size_t open = coupon.open_exams().size();
    // Lines may tell several open exams apart; where all are finished they tell which one is meant.
    if (number > 0 || open <= 1) exam_for(coupon, number, who, open == 0 ? method : std::nullopt);
}

Refusal with_way_to_finish(const Refusal &refusal, const CouponState &coupon, const std::string &lines) {
    std::string text = refusal.what();
    std::vector<Remedy> remedies;
    const SaidNone none = exams_of_none(coupon, lines);
    for (const auto *exam : none.exams) {
        const int finds = coupon.finds_of(exam->number);
        if (finds > 0)
            text += "; " + counted(static_cast<std::size_t>(finds), "find is", "finds are") +
                    " on record under exam " + named({exam}) + ": withdraw what was not found";
        for (auto &one : mends_of_number(coupon, *exam, 0)) remedies.push_back(std::move(one));
        // A line beside it may be a find, which would be lost.
        if (finds == 0 && none.alone)
            remedies.push_back(
                {"finish", {coupon.record.id, std::to_string(exam->number)}, {"found"}, "none"});
    }
    Refusal out = refusal.told(text);
    for (auto &remedy : remedies) out.mend(std::move(remedy));
    return out;
}

void check_none_alone(const CouponState &coupon, const std::vector<int> &none,
                      const std::vector<IndicationRecord> &found, const std::string &name) {
    for (const int exam : none)
        for (const auto &find : found)
            if (find.exam == exam)
                throw refused((name.empty() ? "" : name + ": ") + "'none' of exam " +
                              named({coupon.exam(exam)}) + ", and '" + shown(print_log_line(find)) +
                              "' is a find of it in the same lines: which is so? Nothing was stored; leave "
                              "out the line that is wrong");
}

std::string_view log_orders_help() {
    return "  a line is one find: type, sizes, place: gas pore 0.045 at 3.2 | undercut l 3/8 d 0.010 at 4:00 "
           "root\n"
           "  MT             the lines that follow are of the MT, on the next coupons too; MT crack 0.2 at "
           "3: "
           "this one\n"
           "  MT VT          the sitting is of both: a line that names none is of the MT\n"
           "  list           what is on record of this coupon\n"
           "  undo [N]       take back the last line of this sitting, or its find N\n"
           "  correct N ...  find N as the line behind it says; the old line is kept\n"
           "  withdraw N WHY find N of any sitting is none; it stays in the history\n"
           "  move N PT WHY  find N is of the PT (move N 2 WHY: of exam 2)\n"
           "  move N to COUPON [PT] WHY  find N is of another coupon\n"
           "  verdict [SET]  every class as it stands, or by another criteria set\n"
           "  finish         these are all that the exam found (finish MT, finish 2: where several are "
           "open)\n"
           "  none           the exam found nothing (MT none: where several are open)\n"
           "  reopen WHY     the finished exam is open again (reopen MT WHY, reopen 2 WHY: where several "
           "are)\n"
           "  all            these are all that the open exams found, none where no find is logged; goes on. "
           "Of "
           "a\n"
           "                 sitting that is of the MT: all that the MT found\n"
           "  next           go to the next coupon that has an open exam\n"
           "  on COUPON [N]  go to another coupon, and its exam N, or that by a method\n"
           "  done           leave; the exam stays open (also quit, exit, Ctrl-D)\n";
}

std::vector<std::string> ways_on(Office &office, std::string_view before, std::string_view begun) {
    std::set<std::string, NaturalOrder> out;
    const auto offer = [&](std::string_view word) {
        if (word.starts_with(begun)) out.emplace(word);
    };
    const auto words = words_of(before);
    if (words.empty()) {
        for (const auto &name : Vocabulary::shipped().names()) offer(name);
        for (const auto &one : log_words) offer(one.text);
    } else if (words.front() == "on" || (words.front() == "move" && words.back() == "to")) {
        for (const auto &mark : office.book().coupons()) offer(mark);
    } else if (words.front() == "verdict") {
        for (const auto &set : shipped_sets()) offer(set);
    } else {
        // A name of several words goes on; in front of it may stand the method.
        std::string_view said = before;
        if (exam_named(words.front()))
            said.remove_prefix(
                std::min(before.find(words.front()) + words.front().size() + 1, before.size()));
        for (const auto &name : Vocabulary::shipped().names())
            if (name.size() > said.size() && name.starts_with(said)) offer(name.substr(said.size()));
        if (!trimmed(said).empty())
            for (const char *word :
                 {"at", "from", "to", "length", "width", "depth", "height", "size", "face", "root"})
                offer(word);
    }
    return {out.begin(), out.end()};
}

std::string next_to_log(Office &office, const std::string &after, const std::vector<Exam> &methods) {
    const auto marks = office.book().coupons();
    const auto meant = [&](const ExamRecord *exam) {
        return methods.empty() || std::find(methods.begin(), methods.end(), exam->method) != methods.end();
    };
    auto at = std::find(marks.begin(), marks.end(), after);
    while (at != marks.end() && ++at != marks.end()) {
        const CouponState one = office.coupon(*at);
        const auto open = one.open_exams();
        if (one.record.withdrawn.empty() && std::any_of(open.begin(), open.end(), meant)) return *at;
    }
    return "";
}

} // namespace beadbook
