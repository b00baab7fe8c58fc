#include "operations/rejudging.hpp"

#include "criteria/owners_copy.hpp"
#include "measure/text.hpp"
#include "operations/selecting.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Rules of the class whose findings have this effect, each once.
std::vector<std::string> rules_with(const Judged &judged, Verdict effect) {
    std::vector<std::string> out;
    for (const auto &finding : judged.judgement.classes[*judged.sought].findings) {
        if (finding.effect != effect || finding.rule < 0) continue;
        const std::string &id = judged.set->rules[static_cast<std::size_t>(finding.rule)].id;
        if (std::find(out.begin(), out.end(), id) == out.end()) out.push_back(id);
    }
    return out;
}

/// What keeps a cannot say open beside its rules, each once.
std::vector<std::string> lacks_of(const Judged &judged) {
    std::vector<std::string> out;
    const auto add = [&](const std::string &one) {
        if (std::find(out.begin(), out.end(), one) == out.end()) out.push_back(one);
    };
    if (judged.verdict() != Verdict::cannot_say) return out;
    for (const auto &finding : judged.judgement.classes[*judged.sought].findings) {
        if (finding.effect != Verdict::cannot_say) continue;
        for (const auto &name : names_of(finding.missing)) add(name);
        std::vector<std::string> methods;
        for (const Exam exam : finding.exams) methods.emplace_back(name_of(exam));
        if (!methods.empty()) add(listed(methods, "or") + " that counts");
        if (finding.kind == Finding::Kind::outside_scope) add("a weld that the set covers");
    }
    return out;
}

VerdictBy verdict_by(const Judged &judged) {
    return {judged.set->name, judged.set->classes[*judged.sought].id, judged.verdict(),
            rules_with(judged, judged.verdict()), lacks_of(judged)};
}

/// Both sides of one coupon. Throws Refusal: one of them cannot be judged.
class Sides {
public:
    Sides(Office &office, const RejudgeRequest &request) : office_(office), request_(request) {
        if (!request.criteria.empty()) other_ = office.criteria(request.criteria);
    }

    std::pair<Judged, Judged> of(const CouponState &coupon) {
        if (!coupon.record.withdrawn.empty()) throw refused("it is withdrawn");
        Judged own = judge_coupon(office_, coupon);
        if (!own.sought) throw refused("it names no class").give("class");
        const std::string own_class = own.set->classes[*own.sought].id;
        if (other_) {
            const std::string &wanted = request_.class_id.empty() ? own_class : request_.class_id;
            return {std::move(own), by_class(coupon, other_, wanted)};
        }
        if (coupon.verdicts.empty()) throw refused("no verdict of it is on record");
        return {by_class(coupon, as_kept(coupon.verdicts.back()), own_class), std::move(own)};
    }

private:
    /// The text that a verdict kept, with the numbers that stood in its blanks then.
    std::shared_ptr<const CriteriaSet> as_kept(const StoredVerdict &verdict) {
        AsKept &known = kept_[verdict.hash];
        if (known.set && known.filled == verdict.filled) return known.set;
        const auto text = office_.catalogue().kept_criteria(office_.ledger(), verdict.hash);
        if (!text) throw refused("the text that its last verdict kept cannot be read");
        known = {verdict.filled, with_owners_copy(text, {verdict.filled, {}})};
        return known.set;
    }

    static Judged by_class(const CouponState &coupon, const std::shared_ptr<const CriteriaSet> &set,
                           const std::string &wanted) {
        const auto index = set->class_index(wanted);
        if (!index)
            throw refused(set->name + " has no class '" + shown(wanted) + "'; expected " +
                          listed(set->class_names(), "or"))
                .give("class");
        Judged out = judge_by(coupon, set);
        out.sought = index;
        return out;
    }

    struct AsKept {
        std::vector<Filling> filled;
        std::shared_ptr<const CriteriaSet> set;
    };

    Office &office_;
    const RejudgeRequest &request_;
    std::shared_ptr<const CriteriaSet> other_;
    std::map<std::string, AsKept> kept_; ///< by the hash of the text
};

void count_rules(const Judged &judged, std::size_t RuleDecided::*side,
                 std::map<std::string, RuleDecided> &into) {
    for (const auto &id : rules_with(judged, Verdict::reject)) ++(into[judged.set->name + ": " + id].*side);
}

} // namespace

Rejudged rejudge(Office &office, const RejudgeRequest &request) {
    Rejudged out{request, 0, {}, {}, {}};
    Sides sides(office, request);
    select(office, request.of, [&](CouponAtHand &one) {
        const Ledger::Moment moment(office.ledger());
        const std::string &mark = one.coupon().record.id;
        try {
            const auto [before, after] = sides.of(one.coupon());
            ++out.compared;
            count_rules(before, &RuleDecided::before, out.rules);
            count_rules(after, &RuleDecided::after, out.rules);
            if (before.verdict() != after.verdict())
                out.flips.push_back({mark, verdict_by(before), verdict_by(after)});
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            out.left_out.push_back({mark, e.what()});
        }
    });
    return out;
}

} // namespace beadbook
