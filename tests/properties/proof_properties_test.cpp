// An accept is a proof: whatever part of it is taken away from a random accepted coupon, the accept goes.
#include "catch.hpp"
#include "examined_case.hpp"

#include <algorithm>
#include <functional>
#include <map>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// One accepted class of one coupon, and how often each kind of part was taken away.
class Taking {
public:
    Taking(CriteriaSet &set, const ExaminedCase &whole, std::size_t class_index, Proof proof,
           std::mt19937 &random, std::map<std::string, int> &taken)
        : set_(set), whole_(whole), class_(class_index), proof_(std::move(proof)), random_(random),
          taken_(taken) {}

    void take_all() {
        take_scope();
        take_exams();
        take_rules();
        take_relevance();
        take_dimensions();
        take_facts();
        add_contradictions();
        add_unspoken_of();
    }

private:
    ClassJudgement judged(const RandomCase &c) const {
        return std::move(judge(set_, c.coupon, c.exams, c.indications).classes[class_]);
    }
    void fails(const std::string &what, const RandomCase &c) const {
        FAIL(what << " was taken from " << set_.name << ", class " << set_.classes[class_].id
                  << ", and it is still accepted\n"
                  << described(c));
    }
    ClassJudgement must_go(const std::string &what, const RandomCase &c) {
        ++taken_[what];
        ClassJudgement out = judged(c);
        if (out.verdict == Verdict::accept) fails(what, c);
        return out;
    }

    /// A coupon of which the scope no longer holds.
    void take_scope() {
        for (const int s : proof_.scope) {
            auto &part = set_.scope[static_cast<std::size_t>(s)];
            const auto when = part.when;
            for (auto &condition : part.when) {
                condition.fitting = 0;
                if (condition.kind != Condition::Kind::word)
                    for (auto &edge : condition.edges)
                        edge.right = formula_of(Quantity::size); // of no coupon
            }
            const ClassJudgement judged = must_go("a part of the scope", whole_.c);
            CHECK(std::any_of(judged.findings.begin(), judged.findings.end(), [&](const Finding &f) {
                return f.clause == s &&
                       (f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown);
            }));
            part.when = when;
        }
    }

    void take_exams() {
        struct Way {
            const char *what;
            std::function<void(ExamRecord &)> take;
        };
        static const std::vector<Way> ways{
            {"exam: not finished", [](ExamRecord &e) { e.finished.reset(); }},
            {"exam: nobody examined", [](ExamRecord &e) { e.examiner.clear(); }},
            {"exam: level I", [](ExamRecord &e) { e.level = "I"; }},
            {"exam: level not known", [](ExamRecord &e) { e.level.clear(); }},
            {"exam: before the weld", [](ExamRecord &e) { e.date = parse_day("2026-11-19"); }},
            {"exam: more found than is on record", [](ExamRecord &e) { ++e.finished->found; }},
            {"exam: fewer found than are on record", [](ExamRecord &e) { --e.finished->found; }},
            {"exam: part left out", [](ExamRecord &e) { e.incomplete = "the root was not seen"; }},
            {"exam: conditions not held", [](ExamRecord &e) { e.invalid = "too dark"; }},
        };
        for (const auto &part : proof_.exams) {
            std::vector<Exam> methods{part.method};
            if (part.required >= 0) methods = set_.required[static_cast<std::size_t>(part.required)].one_of;
            // Where nothing is asked, any that counts would do.
            const bool any = part.required < 0 && !part.called_for;
            const auto of_part = [&](const ExamRecord &e) {
                return any || std::find(methods.begin(), methods.end(), e.method) != methods.end();
            };
            for (const auto &way : ways) {
                ExaminedCase without = whole_;
                for (auto &exam : without.exams)
                    if (of_part(exam)) way.take(exam);
                without.settle();
                must_go(way.what, without.c);
            }
            ExaminedCase without = whole_;
            std::erase_if(without.exams, of_part);
            without.settle();
            must_go("exam: withdrawn", without.c);
        }
    }

    void take_rules() {
        const auto table = set_.by_type_and_exam;
        for (const auto &i : whole_.c.indications) {
            std::vector<int> rules;
            for (const auto &row : proof_.entries)
                if (row.entry == i.number && decides(row)) rules.push_back(row.rule);
            if (rules.empty()) continue;
            for (auto &list : set_.by_type_and_exam)
                std::erase_if(list, [&](std::uint16_t r) {
                    return std::find(rules.begin(), rules.end(), r) != rules.end();
                });
            must_go("the rules of an entry", whole_.c);
            set_.by_type_and_exam = table;
        }
    }

    void take_relevance() {
        for (const auto &row : proof_.entries) {
            if (row.how != ProvenEntry::How::not_relevant) continue;
            auto &clause = set_.relevance[static_cast<std::size_t>(row.rule)];
            const Subject subject = clause.subject;
            clause.subject = {};
            const ClassJudgement without = judged(whole_.c);
            ++taken_["the clause that leaves an entry out"];
            // Then it must be judged by a rule, or left out by another clause.
            if (without.verdict == Verdict::accept &&
                std::none_of(without.proof->entries.begin(), without.proof->entries.end(),
                             [&](const ProvenEntry &other) {
                                 return other.entry == row.entry &&
                                        (decides(other) || (other.how == row.how && other.rule != row.rule));
                             }))
                fails("the clause that leaves an entry out", whole_.c);
            clause.subject = subject;
        }
    }

    void take_dimensions() {
        for (const auto &part : proof_.measured) {
            const Subject &subject = set_.rules[static_cast<std::size_t>(part.rule)].subject;
            ExaminedCase without = whole_;
            std::erase_if(without.c.indications,
                          [&](const Indication &i) { return subject.covers(i.type, i.exam); });
            for (auto &exam : without.exams) exam.finished->found = without.finds_of(exam.method);
            without.settle();
            must_go("a dimension that must be measured", without.c);
        }
    }

    /// Where the accept stays without a fact, it must stay whatever the fact turns out to be.
    void take_facts() {
        const Missing facts = facts_behind(proof_, set_, class_);
        for (std::size_t f = 0; f < fact_count; ++f) {
            const auto fact = static_cast<Fact>(f);
            if (!facts.has(lack_of(fact))) continue;
            RandomCase without = whole_.c;
            without.coupon.facts[f] = 0;
            if (gone_without(without)) continue;
            for (std::size_t word = 1; word <= info(fact).words.size(); ++word) {
                without.coupon.facts[f] = static_cast<std::uint8_t>(word);
                must_stay(std::string(info(fact).name), without);
            }
        }
        const RandomCase other = random_case(random_, set_);
        for (std::size_t q = 0; q < coupon_quantities; ++q) {
            const auto quantity = static_cast<Quantity>(q);
            if (!facts.has(lack_of(quantity))) continue;
            RandomCase without = whole_.c;
            without.coupon.values.forget(quantity);
            if (quantity == Quantity::weld_length) without.coupon.line.length.reset();
            if (gone_without(without)) continue;
            // Another length or another of the two thicknesses could contradict the rest.
            if (quantity == Quantity::weld_length || quantity == Quantity::thinner ||
                quantity == Quantity::thicker)
                continue;
            without.coupon.values.set(quantity, other.coupon.values[quantity]);
            must_stay(std::string(info(quantity).name), without);
        }
    }
    bool gone_without(const RandomCase &without) {
        const bool gone = judged(without).verdict != Verdict::accept;
        if (gone) ++taken_["a fact of the coupon"];
        return gone;
    }
    void must_stay(const std::string &fact, const RandomCase &c) {
        ++taken_["a fact that turns out otherwise"];
        if (judged(c).verdict == Verdict::accept) return;
        FAIL("accepted without knowing " << fact << ", and not with it, by " << set_.name << ", class "
                                         << set_.classes[class_].id << "\n"
                                         << described(c));
    }

    void must_contradict(const std::string &what, const std::function<void(Indication &)> &make) {
        if (whole_.c.indications.empty()) return;
        ExaminedCase with = whole_;
        Indication again = with.c.indications[random_() % with.c.indications.size()];
        again.number = with.c.indications.back().number + 1;
        make(again);
        for (auto &exam : with.exams) exam.finished->found += exam.method == again.exam;
        with.c.indications.push_back(again);
        with.settle();
        const ClassJudgement judged = must_go(what, with.c);
        CHECK(std::any_of(judged.findings.begin(), judged.findings.end(), [&](const Finding &f) {
            return f.kind == Finding::Kind::contradiction && f.indications == std::vector{again.number};
        }));
    }
    void add_contradictions() {
        must_contradict("an entry larger than its size", [](Indication &i) {
            i.type = *Vocabulary::shipped().find("gas pore"); // the size of a dimension is not its length
            i.measures.set(Quantity::size, Exact(i.measures[Quantity::length] - 1));
        });
        must_contradict("what lies at the root, on the face", [](Indication &i) {
            i.type = *Vocabulary::shipped().find("excess penetration");
            i.words[static_cast<std::size_t>(Attribute::side)] = word_index(info(Attribute::side), "face");
        });
        must_contradict("an entry wider than long", [](Indication &i) {
            i.type = *Vocabulary::shipped().find("gas pore"); // a cap's width lies across the weld
            i.measures.set(Quantity::width, Exact(i.measures[Quantity::length] + 1));
        });
        must_contradict("an entry that ends before it begins",
                        [](Indication &i) { i.place->to.nm = i.place->from.nm - 1; });
        must_contradict("an entry off the weld", [&](Indication &i) {
            i.place->to.nm = i.place->from.nm + whole_.c.coupon.line.length->nm + 1;
        });
        ExaminedCase with = whole_;
        with.c.coupon.values.set(Quantity::thicker, Exact(with.c.coupon.values[Quantity::thinner] - 1));
        must_go("thicknesses the wrong way round", with.c);
    }

    /// An entry of a type that no rule speaks of; of a gap, if the set has one that names it.
    void add_unspoken_of() {
        const Vocabulary &v = Vocabulary::shipped();
        for (std::size_t tries = 0; tries < 40; ++tries) {
            Indication i;
            i.type = static_cast<TypeId>(random_() % v.size());
            i.exam = static_cast<Exam>(random_() % exam_count);
            if (!set_.rules_for(i.type, i.exam).empty()) continue;
            i.number = 1000;
            i.measures.set(Quantity::length, Exact(nm_per_inch));
            i.measures.set(Quantity::width, Exact(nm_per_inch / 2));
            i.words.fill(1);
            i.place = Span{{0}, {0}};
            i.complete(v);
            ExaminedCase with = whole_;
            for (auto &exam : with.exams) exam.finished->found += exam.method == i.exam;
            with.c.indications.push_back(i);
            with.settle();
            const ClassJudgement out = must_go("an entry that no rule speaks of", with.c);
            for (const auto &f : out.findings)
                if (f.kind == Finding::Kind::not_covered && f.clause >= 0) ++taken_["a gap bears on it"];
            return;
        }
    }

    CriteriaSet &set_;
    const ExaminedCase &whole_;
    std::size_t class_;
    Proof proof_;
    std::mt19937 &random_;
    std::map<std::string, int> &taken_;
};

const char *const part_kinds[] = {"a part of the scope",
                                  "exam: not finished",
                                  "exam: nobody examined",
                                  "exam: level I",
                                  "exam: level not known",
                                  "exam: before the weld",
                                  "exam: more found than is on record",
                                  "exam: fewer found than are on record",
                                  "exam: part left out",
                                  "exam: conditions not held",
                                  "exam: withdrawn",
                                  "the rules of an entry",
                                  "the clause that leaves an entry out",
                                  "a dimension that must be measured",
                                  "a fact of the coupon",
                                  "a fact that turns out otherwise",
                                  "an entry larger than its size",
                                  "an entry wider than long",
                                  "an entry that ends before it begins",
                                  "an entry off the weld",
                                  "what lies at the root, on the face",
                                  "thicknesses the wrong way round",
                                  "an entry that no rule speaks of",
                                  "a gap bears on it"};

} // namespace

TEST_CASE("whatever part of its proof is taken away, an accepted coupon is accepted no more",
          "[properties]") {
    std::map<std::string, int> taken;
    for_accepts(coupons_to_try(1500), 20261126,
                [&](CriteriaSet &set, const ExaminedCase &one, std::size_t k, const Proof &proof,
                    std::mt19937 &random) { Taking(set, one, k, proof, random, taken).take_all(); });
    for (const char *kind : part_kinds) {
        INFO(kind);
        CHECK(taken[kind] > 0);
    }
    CHECK(taken.size() == std::size(part_kinds));
}
