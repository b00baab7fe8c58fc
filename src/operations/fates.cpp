#include "operations/fates.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "operations/carried_in.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/grade_standing.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/vouching.hpp"
#include "records/described_since.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Those of them that none of the coupons contradicts: what was said in their stead is not kept.
RuleWords words_beside(Office &office, RuleWords words, const std::vector<std::string> &coupons) {
    for (const auto &id : coupons) words = words_beside(std::move(words), office.coupon(id).record);
    return words;
}

/// A qualification that a renewal or an extension prolongs; null if it was taken back.
const QualificationRecord *changed_by(const WelderState &welder, const WelderEvent &event) {
    if (event.qualification != 0) return welder.qualification(event.qualification);
    const auto found = std::find_if(
        welder.qualifications.begin(), welder.qualifications.end(), [&](const QualificationRecord &q) {
            return q.rules == event.rules && same_word(process_of(q), event.process);
        });
    return found == welder.qualifications.end() ? nullptr : &*found;
}

} // namespace

std::string Fates::in_the_way(const std::vector<Shortcoming> &lacks, const std::string &coupon,
                              const std::vector<Shortcoming> &aside, std::int64_t entry,
                              const RangeRules &rules) {
    std::string out;
    for (const auto &lack : lacks) {
        if (is_told_otherwise(lack.kind)) continue;
        const bool found_since = lack.kind == Shortcoming::Kind::verdict &&
                                 of(lack.coupon.empty() ? coupon : lack.coupon).newest_reason > entry;
        if (found_since || !is_aside(lack, aside)) out += (out.empty() ? "" : "; ") + words_of(lack, &rules);
    }
    return out;
}

bool Fates::Fate::bears(const std::vector<Shortcoming> &set_aside, std::int64_t entry) const {
    using Kind = Shortcoming::Kind;
    const bool settled =
        newest_reason <= entry && std::any_of(set_aside.begin(), set_aside.end(), [](const Shortcoming &one) {
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
        fate.newest_reason = grade.newest_reason;
        if (fate.why.empty() && grade.moved) {
            fate.doubt = true;
            fate.why = "coupon " + coupon + " is " + std::string(to_grade_again) + ": " + grade.why;
        }
        if (fate.why.empty() && !line_follows(office_, state)) {
            fate.doubt = fate.unreadable = true;
            fate.why = "cannot say: " + line_does_not_follow(coupon);
        }
        if (!fate.why.empty() && state.grade)
            fate.since = parse_day(std::string_view(state.grade->stamp.at).substr(0, 10));
    } catch (const Refusal &e) {
        // One coupon that cannot be read must not hide what the others prove.
        fate = {"cannot say: " + std::string(e.what()), true, true, {}, 0, 0};
    }
    return fate;
}

std::map<std::int64_t, std::string> Fates::undone(const WelderState &welder) {
    std::map<std::int64_t, std::string> out;
    for (const auto &e : welder.events) {
        if (e.kind == "use" || e.kind == "training") { // they rest on no coupon
            if (const std::string as = as_himself(office_, e.stamp.who, welder.record.mark); !as.empty())
                out[e.seq] = e.stamp.who + ", who entered it, " + as + " (common practice, no source)";
            continue;
        }
        for (const auto &proof : e.evidence)
            for (const auto &coupon : coupons_of(proof))
                if (const Fate &fate = of(coupon); fate.bears(e.overridden, e.seq)) out[e.seq] = fate.why;
        if (e.evidence.empty() || out.contains(e.seq)) continue;
        if (std::string why = refused_today(welder, e); !why.empty()) out[e.seq] = std::move(why);
    }
    return out;
}

std::string Fates::refused_today(const WelderState &welder, const WelderEvent &event) {
    const auto *held = changed_by(welder, event);
    if (!held) return ""; // it bears on nothing any more
    std::vector<std::string> coupons;
    for (const auto &proof : event.evidence) coupons.push_back(proof.coupon);
    try {
        for (const auto &coupon : coupons)
            for (const auto &[field, was, is] :
                 said_otherwise_since(office_.book().history(coupon), event.seq))
                if (field == "welded") return "coupon " + coupon + " is said now to be welded on " + is;
        const auto rules = office_.catalogue().kept_rules(office_.ledger(), held->rules_hash);
        if (!rules) return ""; // told of the qualification itself
        const GivenCoupons now =
            evidence_of(office_, tests(welder), welder.record.mark, held->process(), *rules, coupons,
                        words_beside(office_, words_of_test(held->test), coupons));
        return in_the_way(now.lacks, coupons.front(), event.overridden, event.seq, *rules);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return e.what();
    }
    return "";
}

Fates::Refused Fates::refused_today(const WelderState &welder, const QualificationRecord &record,
                                    const RangeRules &rules) {
    const RuleWords words = words_of_test(record.test);
    const std::string &coupon = record.test.id;
    const std::int64_t granted = welder.entries.at(record.number);
    try {
        if (record.carried()) {
            const auto welds = welds_of(record.test);
            if (record.part >= welds.size()) return {}; // told of the qualification itself
            const auto lacks = carried_lacks(tests(welder), record.test, welds[record.part], rules, granted);
            const std::string why = in_the_way(lacks, coupon, record.overridden, granted, rules);
            return why.empty() ? Refused{} : Refused{"it would not be carried in today: " + why, true};
        }
        const TestEvidence now = evidence(office_, tests(welder), office_.coupon(coupon), rules, words);
        if (!now.impediments.empty()) return {now.impediments.front().text};
        if (record.part >= now.parts.size()) return {"coupon " + coupon + " is of fewer processes now"};
        const std::string why =
            in_the_way(now.parts[record.part].lacks, coupon, record.overridden, granted, rules);
        return why.empty() ? Refused{}
                           : Refused{"coupon " + coupon + " would not qualify today: " + why, true};
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return {"cannot say: " + std::string(e.what())};
    }
    return {};
}

std::string Fates::anew_words(const WelderState &welder, const QualificationRecord &record,
                              const RangeRules &rules) {
    using Kind = Shortcoming::Kind;
    const std::string retract = "retract entry " + std::to_string(welder.entries.at(record.number)) +
                                " of welder " + shown(welder.record.mark),
                      if_so = "; if it is so, ";
    const std::string &coupon = record.test.id;
    try {
        const TestEvidence now = evidence(office_, tests(welder), office_.coupon(coupon), rules,
                                          words_beside(office_, words_of_test(record.test), {coupon}));
        if (!now.impediments.empty())
            return if_so + retract + "; it does not qualify anew so: " + now.impediments.front().text;
        std::string lacking;
        bool again = false;
        for (const auto &part : now.parts)
            for (const auto &lack : part.lacks) {
                const bool of_grade =
                    lack.coupon.empty() && (lack.kind == Kind::described || lack.kind == Kind::grade);
                again = again || of_grade;
                if (!of_grade) lacking += (lacking.empty() ? "" : "; ") + words_of(lack, &rules);
            }
        return if_so + (again ? "grade it again, then " : "") + retract + " and qualify it anew" +
               (lacking.empty() ? "" : ", with what it lacks now or a reason that sets it aside: " + lacking);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return if_so + retract + "; it does not qualify anew so: " + e.what();
    }
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
