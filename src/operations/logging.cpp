#include "operations/logging.hpp"

#include "facts/commented_find.hpp"
#include "facts/reason.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "operations/exam_mends.hpp"
#include "operations/faults.hpp"
#include "operations/finishing.hpp"
#include "operations/import_numbers.hpp"
#include "operations/log_words.hpp"
#include "operations/said_beside.hpp"
#include "operations/turned_verdicts.hpp"
#include "operations/unread_measures.hpp"
#include "operations/vouching.hpp"
#include "records/codecs/bodies.hpp"
#include "technique/plausible.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

namespace beadbook {

std::vector<std::string> doubts_about(const CouponRecord &coupon,
                                      const std::vector<IndicationRecord> &indications) {
    std::vector<std::string> out;
    for (const auto &i : indications)
        if (const std::string doubt = implausible(Vocabulary::shipped(), i.type, coupon.get("process"));
            !doubt.empty())
            out.push_back("#" + std::to_string(i.number) + ": " + doubt);
    return out;
}

ParsedLog parse_log(const std::string &text, const std::string &name, const WeldLine &weld,
                    std::optional<Unit> unit, bool may_finish) {
    ParsedLog out;
    Faults faults;
    int number = 0;
    std::istringstream lines{std::string(without_mark(text))};
    for (std::string line; std::getline(lines, line);) {
        ++number;
        const auto at = [&](const std::string &column = "") {
            return [&, column] { return name + ":" + std::to_string(number) + column; };
        };
        if (is_comment(line)) {
            if (const std::string why = why_no_comment(line); !why.empty()) faults.add(at(), why);
            continue;
        }
        try {
            if (const LogOrder order = may_finish ? log_order(line) : LogOrder{};
                order.word == LogWord::nothing) {
                out.none.push_back(order.method);
                out.none_said.push_back(order.why);
                continue;
            }
            out.lines.push_back(read_log_line(line, weld, unit));
            out.numbers.push_back(number);
        } catch (const InputError &e) {
            faults.add(at(":" + std::to_string(e.column + 1)), e.what());
        } catch (const DataError &e) {
            faults.add(at(), e.what());
        }
    }
    faults.check(counted(faults.count(), "line"));
    return out;
}

std::string hash_of_lines(const std::string &text) {
    std::string all;
    std::istringstream lines{std::string(without_mark(text))};
    for (std::string line; std::getline(lines, line);)
        if (!is_comment(line)) all += std::string(trimmed(line)) + "\n";
    return sha256(all);
}

std::vector<int> Logged::exams() const {
    std::set<int> out;
    for (const auto &i : indications) out.insert(i.exam);
    return {out.begin(), out.end()};
}

int exam_for(const CouponState &coupon, int number, const std::string &who, std::optional<Exam> method) {
    const std::string &mark = coupon.record.id;
    if (!coupon.record.withdrawn.empty()) throw is_withdrawn(coupon.record);
    if (coupon.exams.empty())
        throw refused("coupon " + mark + " has no exam yet")
            .mend(exam_to_make(mark, method.value_or(Exam::VT)));
    // Which of several is meant only a person can say, so each is offered.
    const auto refuse_finished = [&](const std::vector<const ExamRecord *> &exams) {
        Refusal out =
            exams.size() == 1
                ? refused("exam " + std::to_string(exams.front()->number) + " of coupon " + mark +
                          " is finished; nothing more is logged under it")
                : refused("every " + std::string(method ? name_of(*method) : "exam") + " of coupon " + mark +
                          " is finished, " + named(exams) + "; nothing more is logged under them");
        for (const auto *exam : exams) out.mend({"reopen", {mark, std::to_string(exam->number)}, {"why"}});
        out.mend(exam_to_make(mark, method.value_or(exams.front()->method)));
        return out;
    };
    if (number > 0) {
        const ExamRecord &exam = coupon.needed_exam(number);
        if (exam.finished) throw refuse_finished({&exam});
        return number;
    }
    // A find filed under somebody else's exam is worse than a question: only one open exam is clear.
    auto open = coupon.open_exams();
    const auto by_another = [&](const ExamRecord *one) { return method && one->method != *method; };
    std::erase_if(open, by_another);
    if (open.empty()) {
        std::vector<const ExamRecord *> finished;
        for (const auto &exam : coupon.exams)
            if (exam.finished && !by_another(&exam)) finished.push_back(&exam);
        if (!finished.empty()) throw refuse_finished(finished);
        throw refused("coupon " + mark + " has no exam by " + std::string(name_of(*method)))
            .mend(exam_to_make(mark, *method));
    }
    if (open.size() == 1) return open.front()->number;
    std::vector<const ExamRecord *> own;
    for (const auto *exam : open)
        if (!who.empty() && exam->examiner == who) own.push_back(exam);
    if (own.size() == 1) return own.front()->number;
    throw refused("which exam found it? coupon " + mark + " has open: " + named(open) +
                  "; a line may begin with its method")
        .give("exam");
}

namespace {

/// The exam of each line of one log.
class ExamOfLine {
public:
    ExamOfLine(const CouponState &coupon, int asked, const std::string &who, std::string_view lines)
        : coupon_(coupon), asked_(asked), who_(who) {
        check_one_to_log(coupon_, asked_, who_, method_begun(lines));
    }

    int of(const LogLine &line) const {
        if (!line.method) return exam_for(coupon_, asked_, who_);
        const std::string method(name_of(*line.method));
        const auto open = coupon_.open_exams();
        if (asked_ > 0) {
            if (coupon_.needed_exam(asked_).method != *line.method)
                throw refused("the line says " + method + ", and it would go to exam " +
                              named({coupon_.exam(asked_)}))
                    .at("exam");
            return asked_;
        }
        std::vector<const ExamRecord *> fitting;
        for (const auto *exam : open)
            if (exam->method == *line.method) fitting.push_back(exam);
        if (fitting.size() == 1) return fitting.front()->number;
        const bool finished =
            std::any_of(coupon_.exams.begin(), coupon_.exams.end(),
                        [&](const ExamRecord &exam) { return exam.finished && exam.method == *line.method; });
        if (fitting.empty() && finished) exam_for(coupon_, 0, who_, line.method); // which refuses it
        if (fitting.empty())
            throw refused("no " + method + " of coupon " + coupon_.record.id + " is open; open are " +
                          named(open))
                .mend(exam_to_make(coupon_.record.id, *line.method));
        throw refused("which " + method + " found it? coupon " + coupon_.record.id +
                      " has open: " + named(fitting))
            .give("exam");
    }

private:
    const CouponState &coupon_;
    int asked_;
    std::string who_;
};

/// Finds on record by their exam and line, with their numbers: of a file check_not_again tells them.
std::map<std::string, int> standing_lines(const CouponState &state, const LogRequest &request) {
    std::map<std::string, int> out;
    if (request.is_file || request.again) return out;
    for (const auto &i : state.indications)
        out.emplace(std::to_string(i.exam) + " " + print_log_line(i), i.number);
    return out;
}

/// Gives each find its exam and number, and what was set aside for it.
std::vector<IndicationRecord> filed(const CouponState &state, const LogRequest &request,
                                    const ExamOfLine &exams, ParsedLog log) {
    Numbers numbers("indication", state.record.id, state.last_indication);
    const auto at_line = [&](std::size_t i, const Refusal &e) {
        if (log.lines.size() == 1) return Refusal(e);
        return e.told(request.name + ":" + std::to_string(log.numbers[i]) + ": " + e.what());
    };
    std::vector<IndicationRecord> out;
    std::string unsure;
    std::set<std::string> seen;
    auto beside = state.indications;
    const auto standing = standing_lines(state, request);
    for (std::size_t i = 0; i < log.lines.size(); ++i) {
        IndicationRecord &found = log.lines[i].found;
        try {
            found.exam = exams.of(log.lines[i]);
            if (const IndicationRecord *stands = state.indication(found.number))
                throw refused("find #" + std::to_string(found.number) +
                              " stands already: " + print_log_line(*stands))
                    .mend({"correct", {state.record.id, std::to_string(found.number), "LINE"}, {"why"}});
            numbers.claim(found.number);
        } catch (const Refusal &e) {
            throw at_line(i, e);
        }
        try {
            auto unlikely = Plausibility::shipped().of(
                state.record, found, state.needed_exam(found.exam).method, beside, log.lines[i].typed);
            const std::string read = std::to_string(found.exam) + " " + print_log_line(found);
            if (!seen.insert(read).second)
                unlikely.push_back({"same-line-twice", "'" + shown(print_log_line(found)) +
                                                           "' stands here twice: are these two finds?"});
            if (const auto at = standing.find(read); at != standing.end())
                unlikely.push_back({"same-line-again", "'" + shown(print_log_line(found)) + "' stands as #" +
                                                           std::to_string(at->second) +
                                                           ": is this another find?"});
            found.sure = set_aside_by(unlikely, request.sure);
        } catch (const Unsure &e) {
            unsure += (unsure.empty() ? "" : "\n") + std::string(at_line(i, e).what());
        }
        beside.push_back(found);
        out.push_back(std::move(found));
    }
    if (!unsure.empty()) throw Unsure(unsure);
    for (auto &found : out) numbers.give(found.number);
    return out;
}

/// What was taken for more than it says, a sentence each.
std::vector<std::string> guesses_in(const ParsedLog &log) {
    std::vector<std::string> out;
    for (const auto &line : log.lines)
        if (!line.guessed.empty())
            out.push_back("'" + shown(line.guessed) + "' is taken as " +
                          Vocabulary::shipped()[line.found.type].name);
    return out;
}

/// Refuses lines that an exam of theirs was given before: all of a text, or some of it.
void check_not_again(const CouponState &state, const std::vector<IndicationRecord> &found,
                     const std::string &file) {
    std::set<int> exams;
    for (const auto &i : found) exams.insert(i.exam);
    std::vector<std::string> numbers;
    for (const auto &i : state.indications)
        if (i.file == file && exams.contains(i.exam)) numbers.push_back("#" + std::to_string(i.number));
    if (!numbers.empty())
        throw refused("the same lines are logged already, as " + listed(numbers)).give("again");
    std::map<std::pair<int, std::string>, int> standing;
    for (const auto &i : state.indications)
        if (exams.contains(i.exam)) standing.emplace(std::pair(i.exam, print_log_line(i)), i.number);
    for (const auto &i : found)
        if (const auto at = standing.find({i.exam, print_log_line(i)}); at != standing.end())
            numbers.push_back("'" + shown(at->first.second) + "' as #" + std::to_string(at->second));
    if (!numbers.empty())
        throw refused(
            (numbers.size() == 1 ? "a line is logged already: " : "some lines are logged already: ") +
            listed(numbers) + "; leave out what is, or if these are other finds")
            .give("again");
}

} // namespace

namespace {

/// The lines, of which one that says none is told how that is said.
ParsedLog parsed(const CouponState &state, const LogRequest &request) {
    const CouponRecord &coupon = state.record;
    try {
        return parse_log(request.text, request.name, coupon.facts().line, coupon.fixed_unit(),
                         request.may_finish);
    } catch (const Refusal &e) {
        throw with_way_to_finish(e, state, request.text);
    }
}

/// The lines as they are read on the coupon as it stands, with what is doubted.
Done<Logged> taken_as(Office &office, const CouponState &state, const std::string &who,
                      const LogRequest &request) {
    const CouponRecord &coupon = state.record;
    check_is_another(office, who, coupon.get("welder"), "says what an exam found");
    const ExamOfLine exams(state, request.exam, who, request.text);
    ParsedLog log = parsed(state, request);
    if (log.lines.empty() && log.none.empty())
        throw refused("there is no line to log" +
                      (request.is_file && request.name != "-" ? " in " + shown(request.name) : "") +
                      "; expected such as 'gas pore 0.045 at 3.2'");
    auto notes = guesses_in(log);
    Logged out{request.coupon, 0, {}, {}, {}, log.none_said};
    for (const auto &method : log.none) out.none.push_back(exam_for(state, request.exam, who, method));
    out.indications = filed(state, request, exams, std::move(log));
    check_none_alone(state, out.none, out.indications, request.is_file ? request.name : "");
    if (request.is_file) {
        const std::string file = hash_of_lines(request.text);
        if (!request.again) check_not_again(state, out.indications, file);
        for (auto &i : out.indications) i.file = file;
    }
    out.exam = out.indications.empty() ? out.none.front() : out.indications.front().exam;
    for (auto &doubt : doubts_about(coupon, out.indications)) notes.push_back(std::move(doubt));
    for (const auto &find : out.indications)
        for (auto &note :
             unread_measures(office.catalogue(), coupon, state.needed_exam(find.exam).method, find))
            notes.push_back(std::move(note));
    return {std::move(out), std::move(notes)};
}

} // namespace

Done<Logged> log_lines(Writing &writing, const LogRequest &request) {
    auto out = taken_as(writing.office(), writing.coupon(request.coupon), writing.stamp().who, request);
    for (const auto &i : out.value.indications) writing.add(codec::entry_of(request.coupon, i));
    FinishRequest none{.coupon = request.coupon, .found = 0, .sure = request.sure};
    for (std::size_t i = 0; i < out.value.none.size(); ++i) {
        none.exam = out.value.none[i];
        none.remark = out.value.none_said[i];
        try {
            finish_exam(writing, none);
        } catch (const Refusal &e) {
            throw e.told((request.is_file ? request.name + ": " : std::string()) + "'none' of exam " +
                         named({writing.coupon(request.coupon).exam(none.exam)}) + ": " + e.what());
        }
    }
    keep_what_may_go(writing, request.coupon);
    return out;
}

Done<Logged> read_lines(Office &office, const std::string &who, const LogRequest &request) {
    return taken_as(office, office.coupon(request.coupon), who, request);
}

Done<Logged> correct_indication(Writing &writing, const std::string &coupon, int number,
                                const std::string &line, const std::string &why, bool sure) {
    const CouponState &state = writing.coupon(coupon);
    const CouponRecord record = state.record;
    check_may_judge(writing, state, state.needed_exam(state.needed_indication(number).exam));
    ParsedLog log = parse_log(line, "line", record.facts().line, record.fixed_unit());
    if (log.lines.size() != 1) throw refused("a correction is exactly one line");
    const IndicationRecord &old = state.needed_indication(number);
    const ExamRecord &exam = state.needed_exam(old.exam);
    if (const auto method = log.lines.front().method; method && *method != exam.method)
        throw refused("#" + std::to_string(number) + " was found by exam " + named({&exam}) +
                      "; a correction leaves it there")
            .mend({"move", {coupon, std::to_string(number)}, {"exam", "why"}});
    IndicationRecord now = std::move(log.lines.front().found);
    if (now.number > 0 && now.number != number)
        throw refused("the line is of #" + std::to_string(now.number) + ", not of #" +
                      std::to_string(number));
    now.number = number;
    now.exam = old.exam;
    now.file = old.file;
    now.moved_from = old.moved_from;
    now.sure = set_aside_by(with_why(Plausibility::shipped().of(record, now, exam.method, state.indications,
                                                                log.lines.front().typed),
                                     why, {old, now}),
                            sure);
    Entry e = codec::entry_of(coupon, now);
    if (e.body == codec::entry_of(coupon, old).body)
        throw refused("this changes nothing: #" + std::to_string(number) + " stands so already");
    e.supersedes = state.indication_seq.at(number);
    e.reason = needed_reason(why);
    const auto before = as_it_stands(writing, coupon);
    writing.add(std::move(e));
    auto notes = guesses_in(log);
    for (auto &doubt : doubts_about(record, {now})) notes.push_back(std::move(doubt));
    for (auto &note : unread_measures(writing.catalogue(), record, exam.method, now))
        notes.push_back(std::move(note));
    note_turned_verdicts("the correction", before, as_it_stands(writing, coupon), notes);
    keep_what_may_go(writing, coupon);
    return {{coupon, now.exam, {now}, {}}, std::move(notes)};
}

Done<int> withdraw_indication(Writing &writing, const std::string &coupon, int number,
                              const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    const int exam = state.needed_indication(number).exam;
    check_may_judge(writing, state, state.needed_exam(exam));
    Entry e = withdrawal_of(state.indication_seq.at(number), "indication", coupon, number, why);
    e.exam = exam;
    e.number = number;
    writing.add(std::move(e));
    Done<int> out{number, {}};
    note_contradictions(writing, coupon, exam, out.notes);
    return out;
}

bool undone_without_reason(Office &office, const CouponState &state, int number, const std::string &who) {
    const Entry last = office.book().history(state.record.id).back();
    return last.seq == state.indication_seq.at(number) && last.who == who;
}

Done<int> undo_indication(Writing &writing, const std::string &coupon, int number, const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    const int known = state.needed_indication(number).number;
    const bool slip = undone_without_reason(writing.office(), state, known, writing.stamp().who);
    return withdraw_indication(writing, coupon, number,
                               slip && why.empty() ? std::string(undone_at_once) : why);
}

} // namespace beadbook
