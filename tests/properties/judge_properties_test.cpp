// What must hold for every coupon, tried on many random ones. A failure prints the coupon.
#include "case.hpp"
#include "catch.hpp"
#include "judge/bound_set.hpp"
#include "naive.hpp"
#include "random_case.hpp"

#include <algorithm>
#include <cstdlib>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Level 3 of ISO 23278 allows a linear indication of 6 mm but a round one of 4 mm only, so a neighbour that
/// makes a round one linear does turn its reject into an accept: the standard says so, not we.
bool longer_may_pass(const CriteriaSet &set) { return set.name == "iso-23278"; }

/// The real evaluator's verdicts and why, and the naive one's, for whoever has to look into a failure.
std::string reasons(const CriteriaSet &set, const RandomCase &c) {
    const Judgement j = judge(set, c.coupon, c.exams, c.indications);
    const auto naive = naive_verdicts(set, c);
    std::string out;
    for (std::size_t k = 0; k < j.classes.size(); ++k) {
        out += set.classes[k].id + ": " + std::string(name_of(j.classes[k].verdict)) + ", naive " +
               std::string(name_of(naive[k])) + "\n";
        for (const auto &f : j.classes[k].findings)
            out += "  " + sentence({set, c.coupon, c.exams, c.indications, set.unit}, k, f) + "\n";
    }
    return out;
}

/// Tries `check` on random coupons of every set in turn; stops at the first that fails.
template <class F>
void for_random_coupons(std::size_t count, F check) {
    std::mt19937 random(20261125);
    const auto sets = all_sets();
    for (std::size_t n = 0; n < count; ++n) {
        // The set that shows every construct is tried most.
        const CriteriaSet &set = n % 2 == 0 ? *sets[0] : *sets[(n / 2) % sets.size()];
        const RandomCase c = random_case(random, set);
        if (check(set, c, random)) continue;
        FAIL("coupon " << n << " of " << set.name << "\n" << described(c) << reasons(set, c));
    }
    SUCCEED();
}

} // namespace

TEST_CASE("the naive evaluator agrees on 100,000 random coupons", "[properties]") {
    for_random_coupons(coupons_to_try(100'000),
                       [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &) {
                           return verdicts_of(set, c) == naive_verdicts(set, c);
                       });
}

TEST_CASE("the naive evaluator agrees where exams that do not count found some of it", "[properties]") {
    for_random_coupons(coupons_to_try(100'000) / 5,
                       [](const CriteriaSet &set, RandomCase c, std::mt19937 &random) {
                           const std::size_t methods = c.exams.size();
                           for (std::size_t x = 0; x < methods; ++x) {
                               c.exams[x].number = static_cast<int>(x) + 1;
                               ExamDone other = c.exams[x];
                               other.number += static_cast<int>(methods);
                               other.counts = false;
                               c.exams.push_back(other);
                           }
                           for (auto &one : c.indications) {
                               std::vector<int> by;
                               for (const auto &exam : c.exams)
                                   if (exam.method == one.exam) by.push_back(exam.number);
                               one.of_exam = by[random() % by.size()];
                           }
                           return verdicts_of(set, c) == naive_verdicts(set, c);
                       });
}

TEST_CASE("the naive evaluator agrees on long finds that go round a girth weld", "[properties]") {
    // The other random coupons reject long finds whatever they join to; these accept all but a whole ring.
    const auto set = set_from(head() + R"(
merge:
  - {id: m, types: any, exams: VT, when: gap under smaller size, clause: c, standing: {house: x}}
rules:
  - {id: r, types: any, exams: VT, measure: length, at most: {A: 60 % x L, B: 99.9 % x L}, clause: c, standing: {house: x}}
)");
    std::mt19937 random(11);
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    constexpr std::int64_t step = nm_per_inch / 64;
    std::size_t rings = 0, near_rings = 0;
    for (std::size_t n = coupons_to_try(20'000); n > 0; --n) {
        RandomCase c = random_case(random, *set);
        const int around = pick(100, 250);
        c.coupon.line = {Length{around * step}, true};
        c.coupon.values.set(Quantity::weld_length, Exact(around * step));
        c.indications.clear();
        const int most = pick(2, 6);
        for (int k = 0, at = pick(0, around - 1); k < most; ++k) {
            const int length = std::min(around - 1, pick(1, 2 * around / most));
            Indication i;
            i.number = k + 1;
            i.exam = Exam::VT;
            i.type = *Vocabulary::shipped().find("undercut");
            i.measures.set(Quantity::length, Exact(length * step));
            for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height})
                i.measures.set(q, Exact(step));
            i.measures.set(Quantity::angle, Exact(90'000'000));
            for (auto &word : i.words) word = 1;
            i.place = Span{{at * step}, {at * step}};
            i.complete(Vocabulary::shipped());
            i.across = Span{{0}, {step}};
            c.indications.push_back(i);
            at = (at + length + pick(-3, around / 6)) % around;
            if (at < 0) at += around;
        }
        const auto said = verdicts_of(*set, c);
        if (said != naive_verdicts(*set, c)) FAIL(described(c) << reasons(*set, c));
        const auto before =
            judge(*set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), first_with_rings - 1);
        rings += said[1] == Verdict::reject && before.classes[1].verdict == Verdict::accept;
        near_rings += said[0] == Verdict::reject && said[1] == Verdict::accept;
        // Turned by any way it is the same.
        RandomCase turned = c;
        const std::int64_t by = pick(0, around - 1) * step;
        for (auto &i : turned.indications) {
            const std::int64_t length = i.place->to.nm - i.place->from.nm;
            i.place->from.nm = (i.place->from.nm + by) % (around * step);
            i.place->to.nm = i.place->from.nm + length;
        }
        std::shuffle(turned.indications.begin(), turned.indications.end(), random);
        if (said != verdicts_of(*set, turned)) FAIL("turned: " << described(c) << reasons(*set, c));
    }
    CHECK(rings > coupons_to_try(20'000) / 100);
    CHECK(near_rings > coupons_to_try(20'000) / 100);
}

TEST_CASE("random coupons reach every verdict and every rule of the demonstration set", "[properties]") {
    // Guards the properties themselves: a generator that never rejects would prove nothing.
    std::mt19937 random(7);
    const auto set = demo_set();
    std::vector<int> met(3), fired(set->rules.size());
    for (int n = 0; n < 20'000; ++n) {
        const RandomCase c = random_case(random, *set);
        const Judgement j = judge(*set, c.coupon, c.exams, c.indications);
        for (const auto &k : j.classes) {
            ++met[static_cast<std::size_t>(k.verdict)];
            for (const auto &f : k.findings)
                if (f.rule >= 0) ++fired[static_cast<std::size_t>(f.rule)];
        }
    }
    for (const int count : met) CHECK(count > 1000);
    for (std::size_t r = 0; r < fired.size(); ++r) {
        INFO(set->rules[r].id);
        CHECK(fired[r] > 0);
    }
}

TEST_CASE("the order of entry never matters", "[properties][long]") {
    for_random_coupons(10'000, [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &random) {
        const Judgement first = judge(set, c.coupon, c.exams, c.indications);
        auto shuffled = c.indications;
        std::shuffle(shuffled.begin(), shuffled.end(), random);
        auto exams = c.exams;
        std::shuffle(exams.begin(), exams.end(), random);
        const Judgement second = judge(set, c.coupon, exams, shuffled);
        // Not the verdict alone: every sentence.
        for (std::size_t k = 0; k < set.classes.size(); ++k) {
            const auto &a = first.classes[k], &b = second.classes[k];
            if (a.findings.size() != b.findings.size()) return false;
            const Case one{set, c.coupon, c.exams, c.indications}, two{set, c.coupon, exams, shuffled};
            for (std::size_t f = 0; f < a.findings.size(); ++f)
                if (sentence(one, k, a.findings[f]) != sentence(two, k, b.findings[f])) return false;
            if (a.nearest.has_value() != b.nearest.has_value()) return false;
            if (a.nearest && sentence(one, k, *a.nearest) != sentence(two, k, *b.nearest)) return false;
        }
        return true;
    });
}

TEST_CASE("a set bound once says the same as one bound for these finds", "[properties]") {
    for_random_coupons(
        coupons_to_try(20'000), [](const CriteriaSet &set, const RandomCase &full, std::mt19937 &random) {
            const RandomCase c = random() % 2 == 0 ? full : with_holes(full, set, random);
            const Judgement alone = judge(set, c.coupon, c.exams, c.indications);
            const BoundSet bound(set, c.coupon, Vocabulary::shipped(), engine_number);
            const Judgement once = judge(bound, c.exams, c.indications);
            for (std::size_t k = 0; k < set.classes.size(); ++k) {
                const ClassJudgement &a = alone.classes[k], &b = once.classes[k];
                if (a.verdict != b.verdict || a.proof != b.proof || a.findings.size() != b.findings.size())
                    return false;
                const Case one{set, c.coupon, c.exams, c.indications};
                for (std::size_t f = 0; f < a.findings.size(); ++f)
                    if (sentence(one, k, a.findings[f]) != sentence(one, k, b.findings[f])) return false;
            }
            return true;
        });
}

TEST_CASE("a stricter class never accepts what a looser one rejects", "[properties]") {
    for_random_coupons(coupons_to_try(20'000),
                       [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &) {
                           if (!set.ordered) return true;
                           const auto v = verdicts_of(set, c);
                           for (std::size_t k = 0; k + 1 < v.size(); ++k)
                               if (v[k] == Verdict::accept && v[k + 1] == Verdict::reject) return false;
                           return true;
                       });
}

TEST_CASE("one more indication never turns a reject into an accept", "[properties]") {
    for_random_coupons(
        coupons_to_try(20'000), [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &random) {
            if (c.indications.empty() || longer_may_pass(set)) return true;
            RandomCase fewer = c;
            const auto drop = std::uniform_int_distribution<std::size_t>(0, c.indications.size() - 1)(random);
            // A dimension that must be measured is not "one more indication".
            if (Vocabulary::shipped()[c.indications[drop].type].measured) return true;
            fewer.indications.erase(fewer.indications.begin() + static_cast<std::ptrdiff_t>(drop));
            const auto less = verdicts_of(set, fewer), more = verdicts_of(set, c);
            for (std::size_t k = 0; k < less.size(); ++k)
                if (less[k] == Verdict::reject && more[k] == Verdict::accept) return false;
            return true;
        });
}

TEST_CASE(
    "a find cut into pieces that touch, or that nobody said the place of, is accepted no more than the whole",
    "[properties]") {
    std::size_t caught = 0, caught_without_place = 0;
    for_random_coupons(coupons_to_try(40'000), [&](const CriteriaSet &set, const RandomCase &given,
                                                   std::mt19937 &random) {
        if (given.indications.empty() || longer_may_pass(set)) return true;
        // Few others, or they are what rejects.
        RandomCase c = given;
        c.indications.resize(std::min<std::size_t>(c.indications.size(), 2));
        RandomCase cut = c;
        const auto pick = [&](std::size_t most) {
            return std::uniform_int_distribution<std::size_t>(0, most)(random);
        };
        const std::size_t which = pick(c.indications.size() - 1);
        const Indication whole = cut.indications[which];
        if (Vocabulary::shipped()[whole.type].measured) return true;
        const std::int64_t grid = nm_per_inch / 64;
        const std::int64_t steps = (whole.place->to.nm - whole.place->from.nm) / grid;
        if (steps < 2) return true;
        const std::size_t pieces = 2 + pick(2);
        std::int64_t from = whole.place->from.nm;
        cut.indications.erase(cut.indications.begin() + static_cast<std::ptrdiff_t>(which));
        for (std::size_t p = 0; p < pieces && from < whole.place->to.nm; ++p) {
            const std::int64_t left = (whole.place->to.nm - from) / grid;
            const std::int64_t length =
                p + 1 == pieces
                    ? left * grid
                    : grid * (1 + static_cast<std::int64_t>(pick(static_cast<std::size_t>(left - 1))));
            Indication part = whole;
            part.number = p == 0 ? whole.number : 100 + static_cast<int>(p);
            part.measures.set(Quantity::length, Exact(length));
            part.measures.set(Quantity::size, Exact(std::max(length, whole.measures[Quantity::width])));
            part.measures.forget(Quantity::area);
            part.place = Span{{from}, {from + length}};
            part.complete(Vocabulary::shipped());
            cut.indications.push_back(part);
            from += length;
        }
        const auto before = verdicts_of(set, c);
        const auto accepted_no_more = [&](const RandomCase &other, std::size_t &open) {
            const auto after = verdicts_of(set, other);
            for (std::size_t k = 0; k < before.size(); ++k) {
                if (before[k] == Verdict::reject && after[k] == Verdict::accept) {
                    UNSCOPED_INFO("class " << set.classes[k].id << " accepts this:\n" << described(other));
                    return false;
                }
                open += before[k] == Verdict::reject && after[k] == Verdict::cannot_say;
            }
            return true;
        };
        if (!accepted_no_more(cut, caught)) return false;
        // Round ones were seen one by one.
        if (Vocabulary::shipped()[whole.type].shape == Shape::rounded) return true;
        for (auto &part : cut.indications)
            if (part.number == whole.number || (part.number > 100 && pick(1) == 0)) part.place.reset();
        return accepted_no_more(cut, caught_without_place);
    });
    if (coupons_to_try(40'000) < 20'000) return; // of few none may be of that kind
    CHECK(caught > 5);
    CHECK(caught_without_place > 5);
}

TEST_CASE("turning all places round a tube changes nothing", "[properties]") {
    for_random_coupons(coupons_to_try(20'000),
                       [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &random) {
                           if (!c.coupon.line.closed) return true;
                           RandomCase turned = c;
                           const std::int64_t around = c.coupon.line.length->nm;
                           const auto by = std::uniform_int_distribution<std::int64_t>(0, around - 1)(random);
                           for (auto &i : turned.indications) {
                               const std::int64_t length = i.place->to.nm - i.place->from.nm;
                               i.place->from.nm = (i.place->from.nm + by) % around;
                               i.place->to.nm = i.place->from.nm + length;
                           }
                           return verdicts_of(set, c) == verdicts_of(set, turned);
                       });
}

TEST_CASE("reading a straight weld from its other end changes nothing", "[properties]") {
    for_random_coupons(
        coupons_to_try(20'000), [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &) {
            if (c.coupon.line.closed) return true;
            RandomCase mirrored = c;
            for (auto &i : mirrored.indications)
                i.place = Span{{c.coupon.line.length->nm - i.place->to.nm},
                               {c.coupon.line.length->nm - i.place->from.nm}};
            if (verdicts_of(set, c) == verdicts_of(set, mirrored)) return true;
            UNSCOPED_INFO("from the other end: " << described(mirrored) << reasons(set, mirrored));
            return false;
        });
}

TEST_CASE("missing data never decides: what is said without it stays true whatever it turns out to be",
          "[properties]") {
    for_random_coupons(
        coupons_to_try(40'000), [](const CriteriaSet &set, const RandomCase &c, std::mt19937 &random) {
            if (longer_may_pass(set)) return true;
            const RandomCase holed = with_holes(c, set, random);
            const auto partial = verdicts_of(set, holed);
            const auto whole = verdicts_of(set, c);
            for (std::size_t k = 0; k < whole.size(); ++k)
                if (partial[k] != Verdict::cannot_say && partial[k] != whole[k]) {
                    // A person's decision or a gap keeps the whole one open too; only accept against reject
                    // contradicts, and an accept that the whole data do not bear out.
                    if (partial[k] != Verdict::accept && whole[k] != Verdict::accept) continue;
                    UNSCOPED_INFO("class " << set.classes[k].id << " is " << name_of(partial[k])
                                           << " when only this is known:\n"
                                           << described(holed));
                    return false;
                }
            return true;
        });
}

TEST_CASE("inches and millimetres give the same verdict", "[properties]") {
    std::mt19937 random(3);
    const auto set = demo_set();
    for (int n = 0; n < 2000; ++n) {
        // Whole tenths of a thousandth of an inch are exact in millimetres: 0.0001 in = 0.00254 mm.
        const auto number = [&](int from, int to) {
            return std::uniform_int_distribution<int>(from, to)(random);
        };
        CaseText inches{"material=steel process=GTAW inside=closed magnetic=yes joint=groove weld-length=6in "
                        "thickness=0.1250in",
                        {}};
        CaseText metric{"material=steel process=GTAW inside=closed magnetic=yes joint=groove "
                        "weld-length=152.4mm thickness=3.175mm",
                        {}};
        for (int i = number(0, 5); i >= 0; --i) {
            const int size = number(50, 900), at = number(0, 50'000);
            const auto inch = [](int tenths) {
                return std::to_string(tenths / 10000) + "." +
                       std::to_string(10000 + tenths % 10000).substr(1) + " in";
            };
            const auto mm = [](int tenths) {
                const long hundred_thousandths = tenths * 254L;
                return std::to_string(hundred_thousandths / 100000) + "." +
                       std::to_string(100000 + hundred_thousandths % 100000).substr(1) + " mm";
            };
            inches.log.push_back("RT gas pore " + inch(size) + " at " + inch(at));
            metric.log.push_back("RT gas pore " + mm(size) + " at " + mm(at));
        }
        REQUIRE(judged(set, inches).verdicts() == judged(set, metric).verdicts());
    }
}
