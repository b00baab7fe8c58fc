// The check of a proof: no part of it can go unnoticed.
#include "catch.hpp"
#include "examined_case.hpp"

#include <algorithm>
#include <map>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// One proof, and how often each kind of part was taken from it.
struct Lessening {
    const CriteriaSet &set;
    const RandomCase &c;
    std::size_t k;
    const Proof &proof;
    std::map<std::string, int> &taken;

    std::optional<ProofLack> lack(const Proof &of) const {
        return lack_in(of, set, k, c.coupon, c.exams, c.indications);
    }
    void fails(const std::string &what) const {
        FAIL(what << " was taken from a proof by " << set.name << ", class " << set.classes[k].id
                  << ", and it is still whole\n"
                  << described(c));
    }

    /// The check of the proof itself: no part of it can go unnoticed.
    void take_all() {
        const auto must_lack = [&](const std::string &what, ProofPart part, const Proof &less) {
            ++taken[what];
            const auto found = lack(less);
            if (!found) fails(what);
            CHECK(found->part == part);
        };
        const auto less_one = [](auto list, std::size_t i) {
            list.erase(list.begin() + static_cast<std::ptrdiff_t>(i));
            return list;
        };
        CHECK(!lack(proof));
        Proof less = proof;
        for (std::size_t i = 0; i < proof.exams.size(); ++i) {
            less.exams = less_one(proof.exams, i);
            must_lack("an exam", ProofPart::exam, less);
        }
        less = proof;
        for (std::size_t i = 0; i < proof.scope.size(); ++i) {
            less.scope = less_one(proof.scope, i);
            must_lack("a part of the scope", ProofPart::scope, less);
        }
        less = proof;
        for (std::size_t i = 0; i < proof.entries.size(); ++i) {
            if (!speaks(proof.entries[i])) continue;
            less.entries = less_one(proof.entries, i);
            must_lack("an entry before a rule", ProofPart::entry, less);
        }
        less = proof;
        for (auto &row : less.entries) {
            if (!row.has_numbers) continue;
            const bool upper = is_maximum(set.rules[static_cast<std::size_t>(row.rule)].compare);
            const Exact kept = row.measured;
            row.measured = upper ? row.limit + 1 : row.limit - 1;
            must_lack("a number out of its limit", ProofPart::entry, less);
            row.measured = kept;
        }
        for (std::size_t i = 0; i < proof.not_applying.size(); ++i) {
            less = proof;
            less.not_applying = less_one(proof.not_applying, i);
            ++taken["a rule that does not apply"];
            if (!lack(less)) fails("a rule that does not apply");
        }
        less = proof;
        for (std::size_t i = 0; i < proof.measured.size(); ++i) {
            less.measured = less_one(proof.measured, i);
            must_lack("a dimension", ProofPart::dimension, less);
        }
        less = proof;
        if (less.compared-- > 0) must_lack("a comparison", ProofPart::agreement, less);
        less = proof;
        if (less.gaps-- > 0) must_lack("a gap", ProofPart::gap, less);
    }
    /// The rule speaks of the entry itself, not only of what it was counted as one with.
    bool speaks(const ProvenEntry &row) const {
        if (row.entry == 0 || row.how == ProvenEntry::How::not_relevant) return true;
        const auto &all = c.indications;
        const auto i = std::find_if(all.begin(), all.end(),
                                    [&](const Indication &one) { return one.number == row.entry; });
        const auto &rules = set.rules_for(i->type, i->exam);
        return std::find(rules.begin(), rules.end(), row.rule) != rules.end();
    }
};

const char *const kinds[] = {
    "a part of the scope",        "an exam",     "an entry before a rule", "a number out of its limit",
    "a rule that does not apply", "a dimension", "a comparison",           "a gap"};

} // namespace

TEST_CASE("a proof that lacks any part is not whole", "[properties]") {
    std::map<std::string, int> taken;
    for_accepts(coupons_to_try(1500), 20261127,
                [&](const CriteriaSet &set, const ExaminedCase &one, std::size_t k, const Proof &proof,
                    std::mt19937 &) {
                    Lessening{set, one.c, k, proof, taken}.take_all();
                });
    for (const char *kind : kinds) {
        INFO(kind);
        CHECK(taken[kind] > 0);
    }
    CHECK(taken.size() == std::size(kinds));
}
