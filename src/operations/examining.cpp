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
