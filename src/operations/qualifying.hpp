#pragma once

#include "operations/evidence.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// What was granted: one qualification for each process of the test, as each stands today.
struct Granted {
    std::string mark;
    std::vector<HeldQualification> held;
};

struct QualifyRequest {
    std::string coupon;
    std::string rules; ///< a shipped name or a file
    std::string way;   ///< how it stays valid; empty: the usual one
    RuleWords words;
    std::string override_why; ///< why what the rules ask beyond the evidence is set aside
};
/// Qualifies the coupon's welder. Throws Refusal: the coupon names no welder, is no passed test
/// (evidence.hpp), qualified by these rules already, or lacks what the rules ask and no reason sets that
/// aside. Notes: rules that ask for no examination; a reason that was not needed.
Done<Granted> qualify(Writing &writing, const QualifyRequest &request);

/// How it stays valid: the way given, else the usual one. Throws Refusal (field "way"): the rules know none
/// of that name.
std::string way_of(const std::string &given, const RangeRules &rules);
/// The number that a coupon qualified its welder under by these rules, if it did and was not revoked.
std::optional<int> qualified_already(const WelderState &welder, const std::string &coupon,
                                     const std::string &rules);

/// Bytes that a document may have.
constexpr std::size_t largest_paper = std::size_t{16} << 20;

struct CarryRequest {
    std::string mark, rules, way;
    std::map<std::string, std::string> test; ///< as welded, by the names of coupon_fields()
    struct Paper {
        std::string name, bytes;
    } paper;                       ///< the document, of at least one byte
    bool sure = false;             ///< what nobody would believe at first sight is meant so
    std::string override_why = {}; ///< why what the rules ask after a failure here is set aside
};
/// Carries a qualification in from elsewhere; its paper is kept. Throws Refusal: no paper, no day, what
/// impedes any test (evidence.hpp), words that the rules do not know, carried in already, what the record
/// says against it (carried_in.hpp) and no reason sets aside.
Done<Granted> carry(Writing &writing, const CarryRequest &request);

struct RenewRequest {
    std::string mark;
    int number = 0;
    std::vector<std::string> coupons;
    RuleWords words;
    std::string override_why;
};
/// Renews a lapsed qualification, and all others of its process by the same rules, by as many coupons as the
/// rules ask, welded after it lapsed. Throws Refusal: its rules know no renewal, it is not lapsed, what
/// the gate of evidence.hpp refuses.
Done<StandingChange> renew(Writing &writing, const RenewRequest &request);

} // namespace beadbook
