#include "operations/examining.hpp"

#include "measure/text.hpp"
#include "records/codecs/bodies.hpp"
#include "technique/exam_check.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The request as a record, and the practice that it names.
ExamRecord read(const ExamRequest &request, const Outside &outside) {
    ExamRecord out;
    out.method = request.method;
    out.date = request.date.value_or(outside.today());
    out.examiner = checked_text(request.examiner, "examiner");
    out.level = checked_text(request.level, "level");
    out.procedure = checked_text(request.procedure, "procedure");
    out.note = checked_text(request.note, "note");
    out.incomplete = checked_text(request.incomplete, "incomplete");
    for (const auto &condition : request.conditions) add_condition(out, condition);
    return out;
}

std::shared_ptr<const Practice> practice_for(Catalogue &catalogue, const ExamRequest &request) {
    if (request.practice.empty()) return nullptr;
    const auto out = catalogue.practice(request.practice);
    if (out->method != request.method)
        throw refused("practice " + out->name + " is for " + std::string(name_of(out->method)) +
                      ", not for " + std::string(name_of(request.method)))
            .at("practice");
    return out;
}

std::vector<std::string> slips(const ExamRecord &exam) {
    std::vector<std::string> names, out;
    for (const auto &c : condition_infos()) names.push_back(c.name);
    for (const auto &[name, value] : exam.conditions)
        if (const std::string near = nearest_word(name, names); !condition_info(name) && !near.empty())
            out.push_back("condition '" + shown(name) + "' is kept as a name of your own; did you mean '" +
                          near + "'?");
    return out;
}

/// An exam by a shipped practice, from an import say, has its text kept.
void keep_shipped_practice(Ledger &ledger, ExamRecord &exam) {
    if (exam.practice.empty() || (!exam.practice_hash.empty() && ledger.criteria_text(exam.practice_hash)))
        return;
    const auto names = shipped_practice_names();
    if (std::find(names.begin(), names.end(), exam.practice) == names.end()) return;
    const auto practice = shipped_practice(exam.practice);
    if (exam.practice_hash.empty()) exam.practice_hash = practice->hash;
    if (exam.practice_hash == practice->hash)
        ledger.keep_criteria(practice->hash, practice->name, practice->text);
}

/// An exam is neither of tomorrow nor of before the weld.
void check_day(const ExamRecord &exam, const CouponRecord &coupon, Day today) {
    if (exam.date > today)
        throw refused("the exam is dated " + print(exam.date) + ", which is to come").at("date");
    if (const std::string welded = coupon.get("welded"); !welded.empty() && exam.date < parse_day(welded))
        throw refused("the exam is dated " + print(exam.date) + ", before coupon " + coupon.id +
                      " was welded on " + welded)
            .at("date");
}

void check_finish(const ExamRecord &exam, int found, int on_record) {
    if (exam.examiner.empty())
        throw refused("who examined? an exam is finished by a named examiner").give("examiner");
    if (found != on_record)
        throw refused("the exam is said to have found " + std::to_string(found) + ", and " +
                      std::to_string(on_record) +
                      " are on record under it: log the rest, or withdraw what was not "
                      "found")
            .at("found");
}

Entry entry_of(const std::string &coupon, const ExamRecord &exam) {
    Entry e;
    e.kind = "exam";
    e.subject = coupon;
    e.exam = exam.number;
    e.body = codec::body_of(exam);
    return e;
}

} // namespace

std::vector<std::string> conditions_to_ask(Office &office, const ExamRequest &request) {
    const auto practice = practice_for(office.catalogue(), request);
    if (!practice) throw lacking("practice", "which conditions are asked for hangs on the practice");
    const ExamRecord exam = read(request, office.outside());
    return conditions_wanted(*practice, exam.conditions_told(), exam.date,
                             office.coupon(request.coupon).record.facts());
}

Done<ExamRecord> record_exam(Writing &writing, const ExamRequest &request) {
    ExamRecord exam = read(request, writing.outside());
    check_day(exam, writing.coupon(request.coupon).record, writing.outside().today());
    if (request.found) {
        check_finish(exam, *request.found, writing.coupon(request.coupon).finds_of(request.replaces));
        exam.finished = ExamFinished{*request.found, writing.outside().today(), writing.stamp().who};
    }
    if (const auto practice = practice_for(writing.catalogue(), request)) {
        exam.practice = practice->name;
        exam.practice_hash = practice->hash;
        writing.ledger().keep_criteria(practice->hash, practice->name, practice->text);
    }
    if (request.replaces > 0) {
        const CouponState &state = writing.coupon(request.coupon);
        exam.number = state.needed_exam(request.replaces).number;
        Entry e = entry_of(request.coupon, exam);
        e.supersedes = state.exam_seq.at(exam.number);
        e.reason = needed_reason(request.why);
        writing.add(std::move(e));
    } else {
        exam.number = add_exam(writing, request.coupon, exam);
    }
    return {writing.coupon(request.coupon).needed_exam(exam.number), slips(exam)};
}

int add_exam(Writing &writing, const std::string &coupon, ExamRecord exam) {
    exam.number = std::max(exam.number, writing.coupon(coupon).last_exam + 1);
    keep_shipped_practice(writing.ledger(), exam);
    writing.add(entry_of(coupon, exam));
    return exam.number;
}

std::string named(const std::vector<const ExamRecord *> &exams) {
    std::vector<std::string> names;
    for (const auto *exam : exams)
        names.push_back(std::to_string(exam->number) + " (" + std::string(name_of(exam->method)) + ")");
    return listed(names);
}

namespace {

/// The exam of the request, else the one that is open.
const ExamRecord &open_exam(const CouponState &coupon, int number) {
    if (number > 0) {
        const ExamRecord &exam = coupon.needed_exam(number);
        if (exam.finished)
            throw refused("exam " + std::to_string(number) + " of coupon " + coupon.record.id +
                          " is finished already")
                .mend({"reopen", {coupon.record.id, std::to_string(number)}, {"why"}});
        return exam;
    }
    const auto open = coupon.open_exams();
    if (open.empty()) throw refused("coupon " + coupon.record.id + " has no open exam");
    if (open.size() > 1)
        throw refused("which exam? coupon " + coupon.record.id + " has open: " + named(open)).at("exam");
    return *open.front();
}

void replace_exam(Writing &writing, const std::string &coupon, const ExamRecord &exam,
                  const std::string &why) {
    Entry e = entry_of(coupon, exam);
    e.supersedes = writing.coupon(coupon).exam_seq.at(exam.number);
    e.reason = needed_reason(why);
    writing.add(std::move(e));
}

void finish(Writing &writing, const std::string &coupon, ExamRecord exam, int found, const std::string &why) {
    check_finish(exam, found, writing.coupon(coupon).finds_of(exam.number));
    check_day(exam, writing.coupon(coupon).record, writing.outside().today());
    exam.finished = ExamFinished{found, writing.outside().today(), writing.stamp().who};
    replace_exam(writing, coupon, exam, why);
}

} // namespace

Done<ExamRecord> finish_exam(Writing &writing, const FinishRequest &request) {
    const CouponState &state = writing.coupon(request.coupon);
    const ExamRecord &exam = open_exam(state, request.exam);
    const int number = exam.number;
    if (!request.found && !request.as_logged)
        throw lacking("found", "how many did exam " + std::to_string(number) + " find? a number, or none");
    const int found = request.found.value_or(state.finds_of(number));
    finish(writing, request.coupon, exam, found, "finished with " + std::to_string(found) + " found");
    return {writing.coupon(request.coupon).needed_exam(number), {}};
}

Done<int> finish_all(Writing &writing, const std::string &why) {
    Done<int> out{0, {}};
    const std::string reason = needed_reason(why);
    for (const auto &mark : writing.book().coupons()) {
        const auto exams = writing.coupon(mark).exams;
        for (const auto &exam : exams) {
            if (exam.finished) continue;
            try {
                finish(writing, mark, exam, writing.coupon(mark).finds_of(exam.number), reason);
                ++out.value;
            } catch (const Refusal &e) {
                if (e.kind() == Refusal::Kind::record) throw;
                out.notes.push_back("coupon " + mark + ", exam " + std::to_string(exam.number) +
                                    " stays open: " + e.what());
            }
        }
    }
    return out;
}

Done<ExamRecord> reopen_exam(Writing &writing, const std::string &coupon, int number,
                             const std::string &why) {
    ExamRecord exam = writing.coupon(coupon).needed_exam(number);
    if (!exam.finished) throw refused("exam " + std::to_string(number) + " is open");
    exam.finished.reset();
    replace_exam(writing, coupon, exam, why);
    return {writing.coupon(coupon).needed_exam(number), {}};
}

void withdraw_exam(Writing &writing, const std::string &coupon, int number, const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    state.needed_exam(number);
    for (const auto &i : state.indications)
        if (i.exam == number)
            throw refused("exam " + std::to_string(number) + " found indication #" +
                          std::to_string(i.number) + "; withdraw its indications first");
    Entry e;
    e.kind = "exam";
    e.subject = coupon;
    e.exam = number;
    e.supersedes = state.exam_seq.at(number);
    e.reason = needed_reason(why);
    e.body = withdrawal(number);
    writing.add(std::move(e));
}

} // namespace beadbook
