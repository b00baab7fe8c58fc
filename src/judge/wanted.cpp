#include "judge/wanted.hpp"

#include <algorithm>

namespace beadbook {

void check_required_exams(Evaluation &e, const std::vector<ExamDone> &exams) {
    const auto done = [&](Exam method) {
        return std::any_of(exams.begin(), exams.end(),
                           [&](const ExamDone &x) { return x.counts && x.method == method; });
    };
    // An exam that may count is asked about before another one is.
    const auto may_count_by = [&](const std::vector<Exam> &of) {
        Missing out;
        for (const auto &x : exams)
            if (!x.counts && (of.empty() || std::find(of.begin(), of.end(), x.method) != of.end()))
                out |= x.hangs_on;
        return out;
    };
    const auto missing = [&](std::size_t c, int clause, std::vector<Exam> of, Missing lacks) {
        Finding f;
        f.kind = Finding::Kind::exam_missing;
        f.effect = Verdict::cannot_say;
        f.clause = clause;
        f.missing = lacks | may_count_by(of);
        f.exams = std::move(of);
        e.add(c, std::move(f));
    };
    for (std::size_t r = 0; r < e.set.required.size(); ++r) {
        const RequiredExam &required = e.set.required[r];
        if (std::any_of(required.one_of.begin(), required.one_of.end(), done)) continue;
        const auto &[needed, lacks] = e.bound.required[r];
        if (needed == Truth::no) continue;
        for (std::size_t c = 0; c < e.classes.size(); ++c)
            if (required.classes[c]) missing(c, static_cast<int>(r), required.one_of, lacks);
    }
    std::vector<Exam> pending;
    for (const auto &exam : exams)
        if (exam.pending) pending.push_back(exam.method);
    std::sort(pending.begin(), pending.end());
    pending.erase(std::unique(pending.begin(), pending.end()), pending.end());
    for (const Exam method : pending)
        for (std::size_t c = 0; c < e.classes.size(); ++c) {
            Finding f;
            f.kind = Finding::Kind::exam_pending;
            f.effect = Verdict::cannot_say;
            f.exams = {method};
            e.add(c, std::move(f));
        }
    const bool none = std::none_of(exams.begin(), exams.end(), [](const ExamDone &x) { return x.counts; });
    const auto none_of = [&](const std::vector<Exam> &methods) {
        return methods.empty() ? none : std::none_of(methods.begin(), methods.end(), done);
    };
    for (std::size_t c = 0; c < e.classes.size(); ++c) {
        for (std::size_t x = 0; x < exam_count; ++x)
            if (e.coupon.called_for[x] && !done(static_cast<Exam>(x)))
                missing(c, -1, {static_cast<Exam>(x)}, {});
        if (!e.classes[c].findings.empty()) continue;
        if (const auto &methods = e.bound.one_of_any(c); none_of(methods))
            missing(c, -1, none ? std::vector<Exam>{} : methods, {});
    }
}

namespace {

/// Whether an entry is a measurement of what the rule wants measured: of the right side, if it names one.
Truth measures_it(const Evaluation &e, const Rule &rule, const Indication &found, Missing &lacks) {
    if (!rule.subject.covers(found.type, found.exam)) return Truth::no;
    Truth out = Truth::yes;
    if (e.engine < first_to_ask_in_order) return out;
    for (const auto &c : rule.where)
        if (asks_for_side(c))
            out = both(out, c.word(found.words[static_cast<std::size_t>(Attribute::side)], lacks));
    return out;
}

/// What it measured fulfils nothing, and is told so. Of one that was not finished this is told by itself, and
/// to measure anew is not what mends it.
bool measured_in_vain(const Evaluation &e, const Indication &found, const std::vector<ExamDone> &exams) {
    return e.engine >= first_to_measure_by_what_counts && !found_by_one_that_counts(found, exams) &&
           std::none_of(exams.begin(), exams.end(),
                        [&](const ExamDone &exam) { return exam.pending && exam.found(found); });
}

} // namespace

void check_measured(Evaluation &e, const std::vector<ExamDone> &exams) {
    for (const std::size_t r : e.bound.to_be_measured) {
        const Rule &rule = e.set.rules[r];
        Truth there = Truth::no;
        Missing of_side;
        std::vector<int> perhaps, in_vain;
        for (const auto &found : e.indications) {
            if (Missing side; measured_in_vain(e, found, exams)) {
                if (measures_it(e, rule, found, side) == Truth::yes) in_vain.push_back(found.number);
                continue;
            }
            const Truth one = measures_it(e, rule, found, of_side);
            there = std::max(there, one);
            if (one == Truth::unknown) perhaps.push_back(found.number);
        }
        if (there == Truth::yes) continue;
        Missing lacks;
        const Truth applies = e.applies(r, lacks);
        if (applies == Truth::no) continue;
        for (std::size_t c = 0; c < e.classes.size(); ++c) {
            if (rule.limits[c].kind != Limit::Kind::value) continue;
            Finding f;
            f.kind = Finding::Kind::not_measured;
            f.effect = Verdict::cannot_say;
            f.rule = static_cast<int>(r);
            f.missing = lacks;
            if (e.engine >= first_to_ask_in_order) {
                // Whether it must be measured at all comes first, then whether one on record is of that side.
                if (applies == Truth::yes) f.missing = of_side;
                if (applies == Truth::yes && there == Truth::unknown) f.indications = perhaps;
                if (f.missing.any())
                    f.kind = Finding::Kind::missing_data;
                else
                    f.indications = in_vain;
            }
            e.add(c, std::move(f));
        }
    }
}

} // namespace beadbook
