#include "judge/evaluation.hpp"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

namespace beadbook {
namespace {

/// The exam that counts and has the lowest number, of those methods; of any, if none is named.
const ExamDone *first_that_counts(const std::vector<ExamDone> &exams, std::span<const Exam> methods) {
    const ExamDone *out = nullptr;
    for (const auto &exam : exams) {
        if (!exam.counts) continue;
        if (!methods.empty() && std::find(methods.begin(), methods.end(), exam.method) == methods.end())
            continue;
        if (!out || std::tie(exam.number, exam.method) < std::tie(out->number, out->method)) out = &exam;
    }
    return out;
}

void take_exams(const Evaluation &e, std::size_t c, const std::vector<ExamDone> &exams, Proof &proof) {
    const auto take = [&](int required, bool called_for, std::span<const Exam> methods) {
        if (const ExamDone *exam = first_that_counts(exams, methods))
            proof.exams.push_back({required, called_for, exam->method, exam->number});
    };
    proof.exams.reserve(e.set.required.size() + e.coupon.called_for.count());
    for (std::size_t r = 0; r < e.set.required.size(); ++r) {
        const RequiredExam &required = e.set.required[r];
        // One that may not be needed is there all the same, else the class would not be accepted.
        if (required.classes[c] && e.bound.required[r].truth != Truth::no)
            take(static_cast<int>(r), false, required.one_of);
    }
    for (std::size_t x = 0; x < exam_count; ++x)
        if (const auto method = static_cast<Exam>(x); e.coupon.called_for[x]) take(-1, true, {&method, 1});
    if (proof.exams.empty()) take(-1, false, e.bound.one_of_any(c));
}

/// What became of one indication before one rule.
struct Row {
    const Evaluation::Traced *traced; ///< null: it does not count
    int rule;
    bool sure;
};

ProvenEntry entry_of(int number, const Row &row) {
    const auto *t = row.traced;
    if (!t) return {number, ProvenEntry::How::not_relevant, row.sure, false, row.rule, {}, {}};
    return {number, t->how, row.sure, t->has_numbers, row.rule, t->measured, t->limit};
}

/// The rows of one class, brought from the order of the rules into that of the entries: how many each has is
/// counted first, so that nothing is sorted. Of one entry they stay in the order of the rules.
class Rows {
public:
    Rows(const Evaluation &e, std::size_t c) : e_(e), end_of_(e.indications.size()) {
        for (const auto &t : e.traces())
            if (t.class_index == c || t.class_index == Evaluation::Traced::all_classes)
                of_class_.push_back(&t);
        for_each([&](std::size_t m, const Row &) { ++end_of_[m]; });
        std::uint32_t begin = 0;
        for (auto &end : end_of_) end = std::exchange(begin, begin + end);
        rows_.resize(begin);
        for_each([&](std::size_t m, const Row &row) { rows_[end_of_[m]++] = row; });
    }

    void write(std::vector<ProvenEntry> &out) const {
        out.reserve(rows_.size());
        for (const auto *t : of_class_)
            if (t->size == 0)
                out.push_back(entry_of(0, {t, t->rule, e_.bound.rule(t->rule).applies.truth == Truth::yes}));
        std::size_t k = 0;
        for (std::size_t m = 0; m < end_of_.size(); ++m)
            for (; k < end_of_[m]; ++k) out.push_back(entry_of(e_.indications[m].number, rows_[k]));
    }

private:
    template <class F>
    void for_each(F f) {
        for (const auto &item : e_.items)
            if (item.counts == Truth::no)
                for (const std::size_t m : item.members) f(m, Row{nullptr, item.irrelevant_by, true});
        for (const auto *t : of_class_)
            for (const auto &[entry, sure] : view(e_.traced_entries).subspan(t->first, t->size))
                f(entry, Row{t, t->rule, sure});
    }

    const Evaluation &e_;
    boost::container::small_vector<const Evaluation::Traced *, 32> of_class_;
    Several<std::uint32_t> end_of_; ///< of the rows of each indication
    boost::container::small_vector<Row, 32> rows_;
};

void take_entries(const Evaluation &e, std::size_t c, Proof &proof) {
    Rows(e, c).write(proof.entries);
    const auto same_number = [](const Indication &a, const Indication &b) { return a.number == b.number; };
    if (std::adjacent_find(e.indications.begin(), e.indications.end(), same_number) != e.indications.end())
        std::stable_sort(proof.entries.begin(), proof.entries.end(),
                         [](const ProvenEntry &a, const ProvenEntry &b) {
                             return std::tie(a.entry, a.rule) < std::tie(b.entry, b.rule);
                         });
}

void take_measured(const Evaluation &e, std::size_t c, const std::vector<ExamDone> &exams, Proof &proof) {
    for (const std::size_t r : e.bound.to_be_measured) {
        const Rule &rule = e.set.rules[r];
        if (rule.limits[c].kind != Limit::Kind::value ||
            std::binary_search(proof.not_applying.begin(), proof.not_applying.end(), static_cast<int>(r)))
            continue;
        const auto found =
            std::find_if(e.indications.begin(), e.indications.end(), [&](const Indication &entry) {
                return gives(entry, rule) &&
                       (e.engine < first_to_measure_by_what_counts || found_by_one_that_counts(entry, exams));
            });
        if (found != e.indications.end()) proof.measured.push_back({static_cast<int>(r), found->number});
    }
}

} // namespace

Proof proof_from(const Evaluation &e, std::size_t c, const std::vector<ExamDone> &exams,
                 std::size_t compared) {
    Proof out;
    out.compared = compared;
    out.gaps = e.set.gaps.size();
    out.scope.assign(e.classes[c].scope.begin(), e.classes[c].scope.end());
    out.not_applying = e.not_applying();
    std::sort(out.not_applying.begin(), out.not_applying.end());
    out.not_applying.erase(std::unique(out.not_applying.begin(), out.not_applying.end()),
                           out.not_applying.end());
    // A rule that asks nothing of this class, nor speaks of an entry, takes no part in its proof.
    std::erase_if(out.not_applying, [&](int r) {
        const Rule &rule = e.set.rules[static_cast<std::size_t>(r)];
        return rule.limits[c].kind != Limit::Kind::value &&
               std::none_of(e.indications.begin(), e.indications.end(), [&](const Indication &entry) {
                   return rule.subject.covers(entry.type, entry.exam);
               });
    });
    take_exams(e, c, exams, out);
    take_entries(e, c, out);
    take_measured(e, c, exams, out);
    return out;
}

namespace {

/// Rules, relevance clauses and required exams that a proof rests on, each once.
struct Behind {
    std::set<int> rules, relevance, required;

    explicit Behind(const Proof &proof) {
        for (const auto &row : proof.entries) {
            if (row.how == ProvenEntry::How::not_relevant) relevance.insert(row.rule);
            if (decides(row)) rules.insert(row.rule);
        }
        for (const auto &exam : proof.exams)
            if (exam.required >= 0) required.insert(exam.required);
    }
};

template <class List>
const auto &at(const List &list, int index) {
    return list[static_cast<std::size_t>(index)];
}

} // namespace

StandingCount standings_behind(const Proof &proof, const CriteriaSet &set, std::size_t c) {
    StandingCount out;
    const Behind behind(proof);
    for (const int s : proof.scope) out.add(at(set.scope, s).standing);
    for (const int r : behind.rules) out.add(at(set.rules, r).standings[c]);
    for (const int r : behind.relevance) out.add(at(set.relevance, r).standing);
    for (const int r : behind.required) out.add(at(set.required, r).standing);
    return out;
}

Missing facts_behind(const Proof &proof, const CriteriaSet &set, std::size_t c) {
    Missing out;
    const auto take_formula = [&](const Formula &f) {
        for (const Quantity q : quantities_of(f))
            if (index_of(q) < coupon_quantities) out |= lack_of(q);
    };
    const auto take = [&](const std::vector<Condition> &conditions) {
        for (const auto &condition : conditions) {
            if (condition.kind == Condition::Kind::word && condition.slot < fact_count)
                out |= lack_of(static_cast<Fact>(condition.slot));
            if (condition.kind != Condition::Kind::comparison) continue;
            take_formula(condition.left);
            for (const auto &edge : condition.edges) take_formula(edge.right);
        }
    };
    const Behind behind(proof);
    for (const auto &part : set.scope) {
        take(part.only_if);
        take(part.when);
    }
    for (const int r : behind.rules) {
        const Rule &rule = at(set.rules, r);
        take(rule.when);
        take(rule.where);
        if (rule.limits[c].kind == Limit::Kind::value) take_formula(rule.limits[c].formula);
        if (const Window *window = rule.window(c); window && window->kind == Window::Kind::length)
            take_formula(window->length);
        if (rule.kind == Rule::Kind::each) take_formula(rule.measure);
        if (rule.prorated) out |= lack_of(Quantity::weld_length);
    }
    // What does not apply rests on the facts that say so.
    for (const int r : proof.not_applying) take(at(set.rules, r).when);
    for (const auto &rule : set.rules)
        if (rule.kind == Rule::Kind::coupon && rule.limits[c].kind != Limit::Kind::other) take(rule.when);
    for (const int r : behind.relevance) take(at(set.relevance, r).ignore);
    for (const auto &required : set.required)
        if (required.classes[c]) take(required.when);
    return out;
}

} // namespace beadbook
