// What several methods found of a weld, together, and pieces that were called otherwise: the other random
// coupons are rejected too often before it comes to that.
#include "case.hpp"
#include "catch.hpp"
#include "naive.hpp"

#include <algorithm>
#include <cstdlib>

using namespace beadbook;
using namespace beadbook::test;

namespace {

constexpr std::int64_t step = nm_per_inch / 64;

std::vector<std::shared_ptr<const CriteriaSet>> sets() {
    const std::string of = "types: any, exams: [VT, MT, PT], clause: c, standing: {house: x}, ";
    std::vector<std::shared_ptr<const CriteriaSet>> out;
    for (const std::string rule :
         {"measure: gap, at least: {A: 3 x larger size, B: 1 x larger size}",
          "measure: length, at most: {A: 12/64 in, B: 16/64 in}",
          "measure: count, window: 2 in, at most: {A: 2, B: 3}",
          "measure: sum of length, window: 1 in, at most: {A: 0.4 in, B: 0.6 in}",
          "measure: count, linked: gap at most 1/16 in, at most: {A: 1, B: 2}",
          "measure: count, window: \"1 in2, longest side 2 in\", at most: {A: 2, B: 3}"})
        out.push_back(set_from(head() + "rules:\n  - {id: r, " + of + rule + "}\n  - {id: s, " + of +
                               "allowed: no limit}\n"));
    return out;
}

RandomCase few_finds(std::mt19937 &random, const CriteriaSet &set) {
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    RandomCase c = random_case(random, set);
    c.indications.clear();
    const std::int64_t length = c.coupon.line.length->nm;
    const int methods = pick(1, 3);
    std::int64_t near = pick(0, static_cast<int>(length / step) - 1) * step;
    for (int n = pick(2, 5); n > 0; --n) {
        static const std::array names{"gas pore",        "surface pore",       "slag inclusion",
                                      "undercut",        "rounded indication", "linear indication",
                                      "elongated cavity"};
        Indication i;
        i.number = n;
        i.exam = static_cast<Exam>(pick(0, methods - 1));
        i.type = *Vocabulary::shipped().find(names[static_cast<std::size_t>(pick(0, 6))]);
        const int size = pick(0, 3) == 0 ? pick(9, 21) : pick(1, 8);
        i.measures.set(Quantity::length, Exact(size * step));
        i.measures.set(Quantity::width, Exact(std::min(size, pick(1, 3)) * step));
        for (const Quantity q : {Quantity::depth, Quantity::height}) i.measures.set(q, Exact(step));
        i.measures.set(Quantity::angle, Exact(90'000'000));
        i.words = {static_cast<std::uint8_t>(pick(0, 4) == 0 ? 2 : 1), 1};
        near = (near + pick(-2, pick(0, 1) == 0 ? 6 : 60) * step + length) % length;
        if (!c.coupon.line.closed) near = std::min(near, length - size * step);
        i.place = Span{{near}, {near}};
        i.complete(Vocabulary::shipped());
        const std::int64_t across = pick(-1, 1) * step;
        i.across = Span{{across}, {across + step}};
        near += pick(0, size) * step;
        c.indications.push_back(i);
    }
    return c;
}

} // namespace

TEST_CASE("the naive evaluator agrees on what several methods found together", "[properties]") {
    std::mt19937 random(13);
    const auto all = sets();
    std::size_t open = 0, joined = 0, once = 0;
    for (std::size_t n = 0; n < coupons_to_try(20'000); ++n) {
        const CriteriaSet &set = *all[n % all.size()];
        const RandomCase c = few_finds(random, set);
        const auto said = verdicts_of(set, c);
        const auto naive = naive_verdicts(set, c);
        if (said != naive)
            FAIL(set.rules[0].id << " " << n << "\n"
                                 << described(c) << "naive " << name_of(naive[0]) << ", " << name_of(naive[1])
                                 << "; judge " << name_of(said[0]) << ", " << name_of(said[1]));
        const auto before = verdicts_of(
            judge(set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), first_to_take_together - 1));
        for (std::size_t k = 0; k < said.size(); ++k) {
            (n % all.size() == 1 ? joined : open) +=
                said[k] == Verdict::cannot_say && before[k] == Verdict::accept;
            // All by one method would be rejected.
            RandomCase by_one = c;
            for (auto &i : by_one.indications) i.exam = Exam::VT;
            once += said[k] == Verdict::accept && verdicts_of(set, by_one)[k] == Verdict::reject;
        }
        // In any order, and with some of it missing, no more is said.
        RandomCase other = c;
        std::shuffle(other.indications.begin(), other.indications.end(), random);
        if (said != verdicts_of(set, other)) FAIL("in another order: " << described(c));
        const RandomCase holed = with_holes(c, set, random);
        const auto partial = verdicts_of(set, holed);
        for (std::size_t k = 0; k < said.size(); ++k)
            if (partial[k] == Verdict::accept && said[k] != Verdict::accept)
                FAIL("class " << set.classes[k].id << " is accepted of less:\n"
                              << described(holed) << described(c));
    }
    CHECK(open > coupons_to_try(20'000) / 100);
    CHECK(joined > coupons_to_try(20'000) / 1000);
    CHECK(once > coupons_to_try(20'000) / 100);
}
