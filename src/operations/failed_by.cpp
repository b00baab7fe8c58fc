#include "operations/failed_by.hpp"

#include "operations/judging.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <set>

namespace beadbook {
namespace {

JudgedNow of_class(const ClassJudgement &one) { return {one.verdict, one.findings}; }

/// Methods by whose finds the coupon is rejected as it stands there.
void take_rejecting(Office &office, const CouponState &coupon, std::set<std::string> &out,
                    std::set<int> &exams) {
    const auto judged = judged_now(office, coupon);
    if (!judged) return;
    for (const auto &finding : judged->findings) {
        if (finding.effect != Verdict::reject) continue;
        for (const int number : finding.indications)
            if (const auto *found = coupon.indication(number))
                if (const auto *exam = coupon.exam(found->exam)) {
                    out.emplace(name_of(exam->method));
                    exams.insert(exam->number);
                }
    }
}

/// Where no find is told to reject it: what found nothing did not, where another found something.
void take_examined(const CouponState &coupon, std::set<std::string> &out) {
    for (const auto &found : coupon.indications)
        if (const auto *exam = coupon.exam(found.exam)) out.emplace(name_of(exam->method));
    if (!out.empty()) return;
    for (const auto &exam : coupon.exams)
        if (exam.done().counts) out.emplace(name_of(exam.method));
    if (!coupon.record.get("mechanical").empty()) out.insert("mechanical");
}

/// As it stood before each correction since one of its exams was finished, until it was last graded failed,
/// if it ever was.
std::vector<CouponState> before_corrections(Office &office, const std::vector<Entry> &history,
                                            std::int64_t last_failed) {
    std::vector<CouponState> out;
    bool finished = false;
    for (const auto &entry : history) {
        if (last_failed > 0 && entry.seq > last_failed) break;
        const bool of_exam = entry.kind == "exam";
        if (finished && entry.supersedes && (of_exam || entry.kind == "indication"))
            out.push_back(office.coupon(entry.subject, entry.seq));
        finished = finished || (of_exam && !is_withdrawal(entry) &&
                                codec::exam_from(codec::parsed(entry.body)).finished.has_value());
    }
    return out;
}

} // namespace

std::vector<CouponState> graded_failed(Office &office, const std::vector<Entry> &history) {
    std::vector<CouponState> out;
    for (const auto &entry : history) {
        if (entry.kind != "grade" || is_withdrawal(entry)) continue;
        Grade grade = codec::grade_from(codec::parsed(entry.body), stamp_of(entry));
        if (grade.passed) continue;
        grade.seq = entry.seq;
        out.push_back(office.coupon(entry.subject, entry.seq));
        out.back().grade = std::move(grade);
    }
    return out;
}

std::optional<JudgedNow> judged_now(Office &office, CouponState coupon) {
    coupon.record.withdrawn.clear(); // a failed one that was taken back is no less a failure
    try {
        if (!coupon.grade) {
            Judged judged = judge_coupon(office, coupon, {});
            if (judged.sought) return of_class(judged.judgement.classes[*judged.sought]);
            // Without a class it has failed only if every class rejects it.
            JudgedNow all{judged.verdict(), {}};
            for (auto &one : judged.judgement.classes)
                all.findings.insert(all.findings.end(), one.findings.begin(), one.findings.end());
            return all;
        }
        const StoredVerdict *then = nullptr;
        for (const auto &v : coupon.verdicts)
            if (v.seq < coupon.grade->seq) then = &v;
        const auto set =
            then ? office.with_copy(office.catalogue().kept_criteria(office.ledger(), then->hash)) : nullptr;
        const auto index = set ? set->class_index(coupon.grade->class_id) : std::nullopt;
        if (!index) return std::nullopt;
        return of_class(judge_by(coupon, set).judgement.classes[*index]);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return std::nullopt;
    }
}

FailedBy failed_by(Office &office, const std::vector<Entry> &history, const CouponState &coupon,
                   bool bends_failed) {
    auto states = graded_failed(office, history);
    const std::int64_t last_failed = states.empty() ? 0 : states.back().grade->seq;
    if (states.empty()) states.push_back(coupon);
    for (auto &state : before_corrections(office, history, last_failed)) states.push_back(std::move(state));
    std::set<std::string> out;
    std::set<int> exams;
    if (bends_failed) out.insert("mechanical");
    for (const auto &fact : coupon.record.before)
        if (fact.kind != CarriedFact::Kind::failed_beside)
            out.insert(fact.methods.begin(), fact.methods.end());
    for (const auto &state : states) take_rejecting(office, state, out, exams);
    if (out.empty()) take_examined(states.front(), out);
    return {{out.begin(), out.end()}, std::move(exams)};
}

} // namespace beadbook
