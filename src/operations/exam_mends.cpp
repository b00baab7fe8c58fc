#include "operations/exam_mends.hpp"

#include "facts/exam_standing.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/entitled.hpp"
#include "operations/people.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string method_of(const ExamRecord &exam) { return std::string(name_of(exam.method)); }

/// An entry in the exam's place that says this as well; the rest is taken over.
Remedy in_its_place(const std::string &mark, const ExamRecord &exam, std::vector<std::string> fields) {
    fields.insert(fields.begin(), "replaces");
    if (exam.finished) // else it would be open again
        fields.insert(fields.begin() + 1,
                      "found=" + (exam.finished->found > 0 ? std::to_string(exam.finished->found) : "none"));
    fields.emplace_back("why");
    return {"exam", {mark, method_of(exam)}, std::move(fields), std::to_string(exam.number)};
}

/// Fields of the coupon among what is missing.
Remedy told_of_coupon(const std::string &mark, const Missing &missing) {
    Remedy out{"change", {mark}, {}};
    const auto add = [&](Missing lack, std::string name) {
        std::replace(name.begin(), name.end(), ' ', '-');
        if (missing.has(lack) && coupon_field(name)) out.fields.push_back(std::move(name));
    };
    for (std::size_t f = 0; f < fact_count; ++f)
        add(lack_of(static_cast<Fact>(f)), std::string(info(static_cast<Fact>(f)).name));
    for (std::size_t q = 0; q < quantity_count; ++q)
        if (const auto &one = info(static_cast<Quantity>(q)); one.scope == Scope::coupon)
            add(lack_of(static_cast<Quantity>(q)), std::string(one.field.empty() ? one.name : one.field));
    if (!out.fields.empty()) out.fields.emplace_back("why");
    return out;
}

/// By its practice: what nobody recorded is said in its place, what was not as it is asked is done again.
std::vector<Remedy> mends_by_practice(Office &office, const CouponState &coupon, const ExamRecord &exam) {
    const auto practice = office.catalogue().kept_practice(office.ledger(), exam.practice_hash);
    if (!practice) return {};
    const auto check = check_exam(*practice, exam.conditions_told(), exam.date, coupon.record.facts());
    if (check.valid == Truth::no) return {exam_to_make(coupon.record.id, exam.method)};
    std::vector<std::string> fields;
    const auto add = [&](const std::vector<std::string> &lacks) {
        for (const auto &name : lacks) {
            const std::string field = name == "level" ? name : condition_field + name;
            if (condition_info(name) && std::find(fields.begin(), fields.end(), field) == fields.end())
                fields.push_back(field);
        }
    };
    for (const auto &finding : check.findings)
        if (finding.holds == Truth::unknown && !finding.warning) add(finding.lacks);
    for (const auto &gap : check.gaps) add(gap.lacks);
    if (fields.empty()) return {};
    return {in_its_place(coupon.record.id, exam, std::move(fields))};
}

/// Whether the record knows the examiner, and no certificate by which he may judge on the day of the exam.
bool lacks_certificate(Office &office, const ExamRecord &exam) {
    const auto person = person_named(office, exam.examiner);
    return person && !entitled_by_record(office, *person, exam.method, exam.date).objection.empty();
}

bool is_set_aside(const ExamRecord &exam, const std::string &begin) {
    return std::any_of(exam.sure.begin(), exam.sure.end(),
                       [&](const std::string &one) { return one.starts_with(begin); });
}

/// What its examiner lacks: a name, a level, a certificate that is on record.
std::vector<Remedy> mends_of_examiner(Office &office, const CouponState &coupon, const ExamRecord &exam) {
    const std::string &mark = coupon.record.id;
    if (exam.examiner.empty()) return {in_its_place(mark, exam, {"examiner"})};
    if (lacks_certificate(office, exam)) {
        std::vector<Remedy> out{mend_of_certificate(exam.examiner)};
        // What was taken for sure stands with the exam until another entry takes its place.
        if (is_set_aside(exam, "certificate-")) out.push_back(in_its_place(mark, exam, {}));
        return out;
    }
    if (is_set_aside(exam, "certificate-")) return {in_its_place(mark, exam, {})};
    if (!may_judge_alone(exam.method, exam.level)) return {in_its_place(mark, exam, {"level"})};
    return {};
}

/// Of an exam that the set asks for and that nobody made, or none that counts: then of the newest.
Mends mends_of_missing_exam(Office &office, const CouponState &coupon, const Finding &f) {
    const std::string &mark = coupon.record.id;
    for (auto exam = coupon.exams.rbegin(); exam != coupon.exams.rend(); ++exam)
        if (std::find(f.exams.begin(), f.exams.end(), exam->method) != f.exams.end())
            if (Mends out = mends_of_exam(office, coupon, *exam); !out.operations.empty()) return out;
    if (Remedy told = told_of_coupon(mark, f.missing); !told.fields.empty()) return {{std::move(told)}};
    Mends out{{}, true};
    for (const Exam method : f.exams) out.operations.push_back(exam_to_make(mark, method));
    return out;
}

} // namespace

std::vector<std::string> set_aside_of_exam(Office &office, const ExamRecord &exam,
                                           const std::vector<Unlikely> &found, bool sure) {
    try {
        return set_aside_by(found, sure);
    } catch (Unsure &e) {
        if (lacks_certificate(office, exam)) e.mend(mend_of_certificate(exam.examiner));
        throw;
    }
}

Remedy mend_of_certificate(const std::string &examiner) {
    return {"person", {examiner}, {"certificate", "why"}};
}

Remedy exam_to_make(const std::string &mark, Exam method) {
    return {"exam", {mark, std::string(name_of(method))}, {"examiner"}};
}

Mends mends_of_exam(Office &office, const CouponState &coupon, const ExamRecord &exam) {
    const std::string &mark = coupon.record.id;
    if (exam.done().counts || !coupon.record.withdrawn.empty()) return {};
    if (!exam.finished) return {{{"finish", {mark, std::to_string(exam.number)}, {"found"}}}};
    if (exam.pending) return {{{"reopen", {mark, std::to_string(exam.number)}, {"why"}}}};
    if (!exam.incomplete.empty()) return {{exam_to_make(mark, exam.method)}};
    if (!exam.invalid.empty()) return {mends_by_practice(office, coupon, exam)};
    if (Remedy told = told_of_coupon(mark, exam.hangs_on); !told.fields.empty()) return {{std::move(told)}};
    return {mends_of_examiner(office, coupon, exam)};
}

Mends mends_of_verdict(Office &office, const CouponState &coupon, const ClassJudgement &judged) {
    if (judged.verdict != Verdict::cannot_say || judged.findings.empty()) return {};
    const Finding &f = judged.findings.front();
    if (f.kind == Finding::Kind::exam_missing) return mends_of_missing_exam(office, coupon, f);
    if (f.kind == Finding::Kind::exam_pending) {
        for (const auto &exam : coupon.exams)
            if (exam.pending && exam.method == f.exams.front()) return mends_of_exam(office, coupon, exam);
        return {};
    }
    if (f.kind != Finding::Kind::missing_data && f.kind != Finding::Kind::scope_unknown) return {};
    if (Remedy told = told_of_coupon(coupon.record.id, f.missing); !told.fields.empty())
        return {{std::move(told)}};
    return {};
}

std::string unknown_finisher(Office &office, const ExamRecord &exam, const std::string &who) {
    if (same_person(exam.examiner, who) || office.book().people().empty() || person_named(office, who))
        return "";
    const std::string method = method_of(exam);
    return "'" + shown(who) + "' says what the " + method + " by " + shown(exam.examiner) +
           " found, and is not on record as a person, so nothing tells whether that person may judge by " +
           method + "; put the person on record with the certificate, or have the examiner finish it";
}

} // namespace beadbook
