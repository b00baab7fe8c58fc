#include "operations/fates.hpp"

#include "operations/grade_standing.hpp"
#include "operations/shortcoming_words.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Whether what lacks now was set aside with a reason when the coupon proved it.
bool is_aside(const Shortcoming &lack, const std::vector<Shortcoming> &aside) {
    using Kind = Shortcoming::Kind;
    return std::any_of(aside.begin(), aside.end(), [&](const Shortcoming &one) {
        return one.kind == Kind::told || (one.kind == lack.kind && one.coupon == lack.coupon &&
                                          one.rule == lack.rule && one.given <= lack.given);
    });
}

/// Told by the state of the grade; or of another coupon that cannot be read, which leaves this one as it was.
bool is_told_otherwise(Shortcoming::Kind kind) {
    using Kind = Shortcoming::Kind;
    return kind == Kind::grade || kind == Kind::verdict || kind == Kind::unreadable;
}

} // namespace

bool Fates::Fate::bears(const std::vector<Shortcoming> &set_aside) const {
    using Kind = Shortcoming::Kind;
    const bool settled = std::any_of(set_aside.begin(), set_aside.end(), [](const Shortcoming &one) {
        return one.kind == Kind::grade ||
               (one.kind == Kind::told && one.text.find(to_grade_again) != std::string::npos);
    });
    return !why.empty() && (unreadable || !(doubt && settled));
}

const Fates::Fate &Fates::of(const std::string &coupon) {
    const auto [at, fresh] = fates_.emplace(coupon, Fate{});
    if (!fresh) return at->second;
    Fate &fate = at->second;
    try {
        const CouponState state = office_.coupon(coupon);
        fate.described = state.record_seq;
        fate.why = no_longer_proves(state, welder_);
        const GradeStanding grade = standing_of_grade(office_, state);
        if (fate.why.empty() && grade.state == GradeStanding::State::again) {
            fate.doubt = true;
            fate.why = "coupon " + coupon + " is " + std::string(to_grade_again) + ": " + grade.why;
        }
        if (fate.why.empty() && state.grade && grade.now != Verdict::accept)
            fate.passed_by = words_of(against_verdict(state, grade, coupon), nullptr);
        if (!fate.why.empty() && state.grade)
            fate.since = parse_day(std::string_view(state.grade->stamp.at).substr(0, 10));
    } catch (const Refusal &e) {
        // One coupon that cannot be read must not hide what the others prove.
        fate = {"cannot say: " + std::string(e.what()), true, "", true, {}, 0};
    }
    return fate;
}

std::map<std::int64_t, std::string> Fates::undone(const WelderState &welder) {
    std::map<std::int64_t, std::string> out;
    for (const auto &e : welder.events)
        for (const auto &proof : e.evidence)
            for (const auto &coupon : coupons_of(proof))
                if (const Fate &fate = of(coupon); fate.bears(e.overridden)) out[e.seq] = fate.why;
    return out;
}

std::string Fates::refused_today(const WelderState &welder, const QualificationRecord &record,
                                 const RangeRules &rules) {
    RuleWords words;
    for (const Trait trait : rule_words())
        if (const std::string word = record.test.get(field_of(trait)); !word.empty())
            words[field_of(trait)] = word;
    const std::string &coupon = record.test.id;
    try {
        const TestEvidence now = evidence(office_, tests(welder), office_.coupon(coupon), rules, words);
        if (!now.impediments.empty()) return now.impediments.front().text;
        if (record.part >= now.parts.size()) return "coupon " + coupon + " is of fewer processes now";
        for (const auto &lack : now.parts[record.part].lacks)
            if (!is_told_otherwise(lack.kind) && !is_aside(lack, record.overridden))
                return "coupon " + coupon + " would not qualify today: " + words_of(lack, &rules);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return "cannot say: " + std::string(e.what());
    }
    return "";
}

std::vector<std::string> Fates::coupons_of(const Evidence &proof) {
    std::vector<std::string> out{proof.coupon};
    for (const auto &with : proof.coupons)
        if (with != proof.coupon) out.push_back(with);
    return out;
}

const GradedTests &Fates::tests(const WelderState &welder) {
    if (!tests_) tests_.emplace(office_, welder);
    return *tests_;
}

} // namespace beadbook
