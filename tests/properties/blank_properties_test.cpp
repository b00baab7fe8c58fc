// Blanks: what nobody filled never lets a class be accepted where it bears, and what is filled bears on
// nothing else.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/owners_copy.hpp"
#include "random_case.hpp"

#include <cstdlib>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::vector<std::shared_ptr<const CriteriaSet>> sets_with_blanks() {
    std::vector<std::shared_ptr<const CriteriaSet>> out;
    for (const auto &set : all_sets())
        if (!set->blanks.empty()) out.push_back(set);
    return out;
}

/// A number for a blank: tiny, huge, or of the size of what random coupons have.
Exact some_value(std::mt19937 &random, const Blank &blank) {
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    const Exact unit =
        blank.dimension() == Dimension::number ? Exact::fraction(1, 8) : Exact(nm_per_inch / 64);
    const int size = pick(0, 3);
    return unit * Exact(size == 0 ? 1 : size == 1 ? 100'000 : pick(1, 40));
}

OwnersCopy random_copy(std::mt19937 &random, const CriteriaSet &set,
                       const std::vector<std::size_t> &classes) {
    OwnersCopy out;
    for (const auto &blank : set.blanks)
        for (const std::size_t c : classes)
            if (blank.classes[c])
                out.fillings.push_back(
                    {blank.id, set.classes[c].id, some_value(random, blank), "", "A and B"});
    return out;
}

std::vector<std::size_t> all_classes(const CriteriaSet &set) {
    std::vector<std::size_t> out;
    for (std::size_t c = 0; c < set.classes.size(); ++c) out.push_back(c);
    return out;
}

template <class F>
void for_coupons_with_blanks(F check) {
    std::mt19937 random(20261126);
    const auto sets = sets_with_blanks();
    REQUIRE(sets.size() >= 2);
    for (std::size_t n = 0; n < coupons_to_try(20'000); ++n) {
        const auto &set = sets[n % sets.size()];
        RandomCase c = random_case(random, *set);
        if (n % 3 == 0) c = with_holes(std::move(c), *set, random);
        if (!check(set, c, random)) FAIL("coupon " << n << " of " << set->name << "\n" << described(c));
    }
    SUCCEED();
}

} // namespace

TEST_CASE("what is said while blanks are open stays so whatever they are filled with", "[properties]") {
    std::size_t said = 0, settled = 0;
    for_coupons_with_blanks([&](const auto &set, const RandomCase &c, std::mt19937 &random) {
        const auto open = verdicts_of(*set, c);
        const auto full =
            verdicts_of(*with_owners_copy(set, random_copy(random, *set, all_classes(*set))), c);
        bool holds = true;
        for (std::size_t k = 0; k < open.size(); ++k) {
            said += open[k] != Verdict::cannot_say;
            settled += open[k] == Verdict::cannot_say && full[k] != Verdict::cannot_say;
            holds = holds && (open[k] == Verdict::cannot_say || open[k] == full[k]);
        }
        return holds;
    });
    CHECK(said > 100);
    CHECK(settled > 100);
}

TEST_CASE("no accept rests on a limit that hangs on an open blank", "[properties]") {
    for_coupons_with_blanks([&](const auto &set, const RandomCase &c, std::mt19937 &) {
        const Judgement j = judge(*set, c.coupon, c.exams, c.indications);
        for (std::size_t k = 0; k < j.classes.size(); ++k) {
            if (!j.classes[k].proof) continue;
            for (const auto &row : j.classes[k].proof->entries) {
                if (row.rule < 0 || row.how == ProvenEntry::How::not_relevant) continue;
                const Rule &rule = set->rules[static_cast<std::size_t>(row.rule)];
                if (row.has_numbers && !set->blanks_of(rule, k).empty()) return false;
            }
        }
        return true;
    });
}

TEST_CASE("filling the blanks of one class changes no verdict of another", "[properties]") {
    for_coupons_with_blanks([&](const auto &set, const RandomCase &c, std::mt19937 &random) {
        const std::size_t one = random() % set->classes.size();
        const auto open = verdicts_of(*set, c);
        const auto filled = verdicts_of(*with_owners_copy(set, random_copy(random, *set, {one})), c);
        for (std::size_t k = 0; k < open.size(); ++k)
            if (k != one && open[k] != filled[k]) return false;
        return true;
    });
}

TEST_CASE("filling what bears on no find of a coupon changes nothing", "[properties]") {
    for_coupons_with_blanks([&](const auto &set, const RandomCase &c, std::mt19937 &random) {
        OwnersCopy copy = random_copy(random, *set, all_classes(*set));
        std::erase_if(copy.fillings, [&](const Filling &filling) {
            const std::size_t k = *set->class_index(filling.class_id);
            for (const auto &rule : set->rules)
                for (const Slot slot : set->blanks_of(rule, k))
                    if (set->blanks[slot].id == filling.blank)
                        for (const auto &i : c.indications)
                            if (rule.subject.covers(i.type, i.exam)) return true;
            return false;
        });
        return verdicts_of(*set, c) == verdicts_of(*with_owners_copy(set, copy), c);
    });
}
