#include "judge/contradiction.hpp"
#include "judge/evaluation.hpp"
#include "judge/over_methods.hpp"
#include "judge/proof_check.hpp"
#include "judge/readings.hpp"
#include "judge/settle_verdict.hpp"
#include "judge/wanted.hpp"
#include "judge/whole_coupon.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Which rules speak of which items, in rule order; one exam's finds never mix with another's.
Candidates candidates_of(const CriteriaSet &set, const Evaluation &e) {
    Candidates out;
    for (std::uint32_t i = 0; i < e.items.size(); ++i) {
        const Item &item = e.items[i];
        if (item.counts == Truth::no) continue;
        for (const std::size_t m : item.members) {
            const Indication &found = e.indications[m];
            for (const std::uint16_t r : set.rules_for(found.type, found.exam))
                out.emplace_back(r, found.exam, i);
        }
    }
    std::sort(out.begin(), out.end());
    // Joined ones of several types: each rule once.
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

/// What the set covers. True if the coupon lies outside for certain: then nothing else is said of it.
bool check_scope(Evaluation &e) {
    bool outside = false;
    for (std::size_t s = 0; s < e.set.scope.size(); ++s) {
        const auto &[asked_if, holding] = e.bound.scope[s];
        const Truth asked = asked_if.truth, held = holding.truth;
        if (asked == Truth::no) continue;
        const bool out = asked == Truth::yes && held == Truth::no;
        outside = outside || out;
        for (std::size_t c = 0; c < e.classes.size(); ++c) {
            if (held == Truth::yes) {
                if (asked == Truth::yes) e.classes[c].scope.push_back(static_cast<std::uint16_t>(s));
                continue;
            }
            Finding f;
            f.kind = out ? Finding::Kind::outside_scope : Finding::Kind::scope_unknown;
            f.effect = Verdict::cannot_say;
            f.clause = static_cast<int>(s);
            if (!out) f.missing = asked_if.lacks | holding.lacks;
            e.add(c, std::move(f));
        }
    }
    if (outside)
        for (auto &c : e.classes)
            std::erase_if(c.findings,
                          [](const Finding &f) { return f.kind != Finding::Kind::outside_scope; });
    return outside;
}

/// Where nobody read what a set covers, it can still not be a weld of which nothing is told: joint and metal
/// are asked before anything is accepted. What is rejected stays so.
void check_told(Evaluation &e) {
    if (!e.bound.untold.any()) return;
    Finding f;
    f.kind = Finding::Kind::scope_unknown;
    f.effect = Verdict::cannot_say;
    f.missing = e.bound.untold;
    for (std::size_t c = 0; c < e.classes.size(); ++c) e.add(c, f);
}

/// A weld on a tube closes on itself or does not, and whoever does not say which leaves it open what lies
/// beside what: two finds on both sides of the datum may be neighbours.
void check_seam(Evaluation &e) {
    if (!e.bound.seam_untold) return;
    Finding f;
    for (const auto &one : e.indications)
        if (one.place) f.indications.push_back(one.number);
    if (f.indications.size() < 2) return;
    f.kind = Finding::Kind::missing_data;
    f.effect = Verdict::cannot_say;
    f.missing = lack_of(Fact::seam);
    for (std::size_t c = 0; c < e.classes.size(); ++c) e.add(c, f);
}

/// A set that may not cover the coupon rejects it no more than it accepts it.
void settle_scope(Evaluation &e) {
    const bool open = !e.set.scope.empty() && !e.classes.empty() &&
                      std::any_of(e.classes[0].findings.begin(), e.classes[0].findings.end(),
                                  [](const Finding &f) { return f.kind == Finding::Kind::scope_unknown; });
    if (!open) return;
    for (auto &c : e.classes)
        for (auto &f : c.findings)
            if (f.effect == Verdict::reject) f.effect = Verdict::cannot_say;
}

bool speaks_of(const Gap &gap, const Evaluation &e, const Item &item) {
    return gap.subject && std::any_of(item.members.begin(), item.members.end(), [&](std::size_t m) {
               return gap.subject->covers(e.indications[m].type, e.indications[m].exam);
           });
}

/// A part that the set lacks keeps open what it alone could judge, and with `where` also what it would judge
/// beside the rules that are there.
void check_gaps(Evaluation &e, std::uint32_t i) {
    const Item &item = e.items[i];
    for (std::size_t g = 0; g < e.set.gaps.size(); ++g) {
        const Gap &gap = e.set.gaps[g];
        if (!gap.beside_rules || !speaks_of(gap, e, item)) continue;
        if (gap.shape != Shape::unknown && item.shape != Shape::unknown && item.shape != gap.shape) continue;
        Finding f;
        if (e.bound.gaps[g].truth == Truth::no) continue;
        f.missing = e.bound.gaps[g].lacks;
        if (holds_for(gap.where, e.coupon, item.measures.get(), item.words, f.missing, e.least_of(item)) ==
            Truth::no)
            continue;
        if (gap.shape != Shape::unknown && item.shape == Shape::unknown) f.missing |= Missing::shape();
        f.kind = f.missing.any() ? Finding::Kind::missing_data : Finding::Kind::not_covered;
        f.effect = Verdict::cannot_say;
        f.clause = static_cast<int>(g);
        f.indications = e.numbers_of({&i, 1});
        f.place = item.place;
        for (std::size_t c = 0; c < e.classes.size(); ++c)
            if (gap.classes[c]) e.add(c, f);
    }
}

/// Whatever is on record is judged by a rule, a measured dimension too: nothing is passed over.
void check_coverage(Evaluation &e) {
    for (std::uint32_t i = 0; i < e.items.size(); ++i) {
        if (e.items[i].counts == Truth::no) continue;
        check_gaps(e, i);
        each_of(e.not_covered(i), [&](std::size_t c) {
            Finding f;
            f.missing = e.cover_hangs_on(i);
            f.kind = f.missing.any() ? Finding::Kind::missing_data : Finding::Kind::not_covered;
            f.effect = Verdict::cannot_say;
            f.indications = e.numbers_of({&i, 1});
            f.place = e.items[i].place;
            for (std::size_t g = 0; g < e.set.gaps.size() && f.clause < 0; ++g)
                if (!e.set.gaps[g].beside_rules && speaks_of(e.set.gaps[g], e, e.items[i]))
                    f.clause = static_cast<int>(g);
            e.add(c, std::move(f));
        });
    }
}

/// Engines before it held nothing against each other and proved nothing.
constexpr int first_with_proofs = 4;

/// What cannot both be true keeps every class open until a person says which it is.
void check_contradictions(Evaluation &e, const Contradictions &contradictions) {
    for (const auto &one : contradictions.found)
        for (std::size_t c = 0; c < e.classes.size(); ++c) {
            Finding f;
            f.kind = Finding::Kind::contradiction;
            f.effect = Verdict::cannot_say;
            f.indications = one.indications;
            f.missing = one.between;
            if (one.method) f.exams = {*one.method};
            e.add(c, std::move(f));
        }
}

/// The one gate that an accept passes: with a proof that is whole.
void accept_by_proof(const Evaluation &e, std::size_t c, const std::vector<ExamDone> &exams,
                     const Agreement &agreement, ClassJudgement &out) {
    Proof proof = proof_from(e, c, exams, agreement.compared);
    const auto lack = lack_in(proof, e.bound, c, exams, e.indications, agreement);
    if (!lack) {
        out.proof = std::move(proof);
        return;
    }
    Finding f;
    f.kind = Finding::Kind::unproven;
    f.effect = out.verdict = Verdict::cannot_say;
    f.part = lack->part;
    f.rule = lack->rule;
    f.clause = lack->clause;
    if (lack->entry != 0) f.indications = {lack->entry};
    if (lack->method) f.exams = {*lack->method};
    out.findings.push_back(std::move(f));
}

void check_all(Evaluation &e, const std::vector<ExamDone> &exams) {
    const Candidates candidates = candidates_of(e.set, e);
    for (std::size_t begin = 0; begin < candidates.size();) {
        std::size_t end = begin + 1;
        while (end < candidates.size() && candidates[end].of_same_rule_and_exam(candidates[begin])) ++end;
        check_rule(e, candidates[begin].rule(), {candidates.data() + begin, end - begin});
        begin = end;
    }
    check_pairs(e);
    check_combined(e);
    check_coupon_rules(e);
    check_coverage(e);
    check_measured(e, exams);
    check_required_exams(e, exams);
}

Evaluation evaluated(const BoundSet &bound, const std::vector<ExamDone> &exams,
                     const std::vector<Indication> &indications, std::vector<Item> items) {
    Evaluation e(bound, indications, std::move(items));
    e.outside = check_scope(e);
    if (!e.outside) check_all(e, exams);
    return e;
}

/// All classes, by what counts for one of them.
Judgement judge_as_for(std::size_t for_class, const BoundSet &bound, const std::vector<ExamDone> &exams,
                       const std::vector<Indication> &indications) {
    const auto by_number = [](const Indication &a, const Indication &b) { return a.number < b.number; };
    if (!std::is_sorted(indications.begin(), indications.end(), by_number)) {
        // Ties between neighbours at the same place are then always told in the same words.
        std::vector<Indication> sorted = indications;
        std::stable_sort(sorted.begin(), sorted.end(), by_number);
        return judge_as_for(for_class, bound, exams, sorted);
    }
    const int engine = bound.engine;
    const auto read = [&](const std::vector<Indication> &found, Shapes shapes) {
        return evaluated(
            bound, exams, found,
            make_items(bound.set, bound.coupon, found, bound.vocabulary, engine, shapes, for_class));
    };
    Evaluation e = read(indications, Shapes::by_measures);
    const bool proofs = engine >= first_with_proofs && !e.outside;
    Agreement agreement;
    if (proofs) {
        const auto contradictions = contradictions_in(bound, exams, indications);
        check_contradictions(e, contradictions);
        agreement = {contradictions.found.empty(), contradictions.compared};
    }
    e.settle_nearest();
    settle_scope(e);
    if (proofs && engine >= first_that_asks_what_weld) check_told(e);
    if (proofs && engine >= first_that_asks_the_seam) check_seam(e);
    if (proofs && engine >= first_with_open_silence && e.any_open())
        for (const auto &reading : other_readings(bound, indications)) {
            agreement.compared += reading.behind.size();
            hold_against(reading, read(reading.indications, reading.shapes), e);
        }
    if (proofs && engine >= first_to_take_together && e.any_open())
        if (const auto rules = rules_over_methods(bound, indications); !rules.empty()) {
            agreement.compared += rules.size();
            hold_against({{}, {}, {}, Missing::place(), Methods::together}, taken_together(e, rules), e);
        }
    for (std::size_t c = 0; c < e.classes.size(); ++c) {
        ClassJudgement &one = e.classes[c];
        settle_verdict(one);
        if (engine >= first_with_proofs && one.verdict == Verdict::accept)
            accept_by_proof(e, c, exams, agreement, one);
    }
    return {std::move(e.classes)};
}

/// For each class, the first that counts the same finds.
std::vector<std::size_t> counting_alike(const CriteriaSet &set) {
    const auto alike = [&](std::size_t a, std::size_t b) {
        return std::all_of(set.relevance.begin(), set.relevance.end(),
                           [&](const Relevance &one) { return one.classes[a] == one.classes[b]; });
    };
    std::vector<std::size_t> out;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        std::size_t first = 0;
        while (!alike(first, c)) ++first;
        out.push_back(first);
    }
    return out;
}

} // namespace

Judgement judge(const BoundSet &bound, const std::vector<ExamDone> &exams,
                const std::vector<Indication> &indications) {
    Judgement out = judge_as_for(0, bound, exams, indications);
    if (!bound.set.counts_by_class) return out;
    const auto like = counting_alike(bound.set);
    for (std::size_t first = 1; first < like.size(); ++first) {
        if (like[first] != first) continue;
        Judgement by = judge_as_for(first, bound, exams, indications);
        for (std::size_t c = first; c < like.size(); ++c)
            if (like[c] == first) out.classes[c] = std::move(by.classes[c]);
    }
    return out;
}

Judgement judge(const CriteriaSet &set, const Coupon &coupon, const std::vector<ExamDone> &exams,
                const std::vector<Indication> &indications, const Vocabulary &vocabulary, int engine) {
    return judge(BoundSet(set, coupon, vocabulary, engine, &indications), exams, indications);
}

} // namespace beadbook
