#include "operations/shortcoming_words.hpp"

#include "measure/text.hpp"
#include "operations/grade_standing.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string by_authority(const std::optional<Authority> &from) {
    return from ? " [" + authority(*from) + "]" : "";
}

std::optional<Authority> from_of(const std::optional<CouponsAsked> &asked) {
    return asked ? std::optional(asked->from) : std::nullopt;
}

std::string exam_lacking(const Shortcoming &one, const RangeRules *rules) {
    if (rules)
        for (const auto &exam : rules->exams)
            if (exam.id == one.rule)
                return "no " + named_exams(exam.one_of, "or") + " on record [" +
                       authority(exam.clause, exam.standing) + "]";
    return "the examination '" + one.rule + "' of the rules is not on record";
}

std::string coupons_asked(const Shortcoming &one, const std::string &what) {
    return counted(static_cast<std::size_t>(one.asked), "coupon") + " " + what;
}

std::string retest_words(const Shortcoming &one, const RangeRules *rules) {
    const bool trained = one.after && !one.after->trained.empty();
    std::optional<Authority> from;
    if (rules) from = from_of(trained ? rules->retest.after_training : rules->retest.immediate);
    return (one.after ? words_of(*one.after) + ": " : "") + coupons_asked(one, "must pass") + ", " +
           std::to_string(one.given) + " did" + by_authority(from);
}

/// What is entered late for an earlier day, with those before it that have no reason of their own.
std::string revives_words(const Shortcoming &one) {
    const auto its = one.lacks.begin() + std::min<std::ptrdiff_t>(2, std::ssize(one.lacks));
    const std::vector<std::string> what(one.lacks.begin(), its), others(its, one.lacks.end());
    return "the " + listed(what, "of") + " was entered only on " + one.on + ", when it was " + one.was +
           " already, and would revive it" +
           (others.empty() ? ""
                           : " together with what was entered late for " + listed(others) +
                                 ": a reason for it stands for all of them") +
           " (common practice, no source)";
}

std::string without_coupon(const Shortcoming &one, const RangeRules *rules) {
    using Kind = Shortcoming::Kind;
    const std::string named = "coupon " + one.coupon;
    switch (one.kind) {
    case Kind::told: return one.text;
    case Kind::grade:
        return std::string(to_grade_again) + ": " + grade_moved_words(one.class_id, one.was, one.now);
    case Kind::verdict: return against_words(one.class_id, one.now, one.by, one.on, one.remark);
    case Kind::purpose: return "it was for practice when it was first examined, and was called a test later";
    case Kind::not_examined:
        return "no examination that counts is on record, and the rules as they are known here name none";
    case Kind::exam: return exam_lacking(one, rules);
    case Kind::same_exam:
        return (one.after ? words_of(*one.after) + ": " : "") + "the retest was not examined by " +
               named_exams(one.lacks, "and") + ", by which it failed" +
               by_authority(rules ? rules->retest.same_exam : std::nullopt);
    case Kind::retest: return retest_words(one, rules);
    case Kind::training:
        return (one.after ? words_of(*one.after) + ": " : "") +
               "a retest failed too, so further training comes first" +
               by_authority(rules ? from_of(rules->retest.immediate) : std::nullopt);
    case Kind::retest_unknown:
        return (one.after ? words_of(*one.after) + ": " : "") +
               "cannot say whether the retest is done, as what " +
               (rules ? rules->name : std::string("these rules")) +
               " asks after a failure is not known here (gap)";
    case Kind::failed_day:
        return "cannot say whether this is a retest: " + named +
               " failed, and the day on which it was welded is not on record";
    case Kind::failed_kind:
        return "cannot say whether this is a retest: " + named + " failed, and " + listed(one.lacks) +
               (one.lacks.size() == 1 ? " is" : " are") + " not known of both";
    case Kind::failed_whose:
        if (one.lacks.size() == 2)
            return "cannot say whether this is a retest: " + named + " failed, and its welder " +
                   one.lacks[0] + " was called '" + shown(one.lacks[1]) +
                   "' when it came on record; if it was this one, say so of that coupon by his mark, and if "
                   "it was not, "
                   "a reason says that";
        return "cannot say whether this is a retest: " + named + " failed, and whether its welder '" +
               shown(listed(one.lacks)) +
               "' is this one is not on record; name him there by the mark, or say that another is meant";
    case Kind::unreadable:
        return "cannot say whether this is a retest: " + named + " cannot be read" +
               (one.text.empty() ? "" : " (" + one.text + ")");
    case Kind::unjudged:
        return "cannot say whether this is a retest: " + named + " shows " + listed(one.lacks, "and") +
               ", and is neither judged by criteria that it names nor graded, so it may have failed; name "
               "its "
               "criteria, or grade it";
    case Kind::by_machine:
        return "a machine led the torch: what it shows of the welder's hand, " +
               (rules ? rules->name : std::string("these rules")) +
               " as it is known here does not say (common practice: it qualifies an operator)";
    case Kind::entered_late:
        return "it is dated before the failure of " + named + " and was entered only after that was known";
    case Kind::accepted_by:
        return "it was graded by " + criteria_name(one.criteria) + ", class " + one.class_id +
               (rules ? "; by " + rules->name + " a test weld is accepted by " + accepted_by_words(*rules)
                      : "");
    case Kind::described: return described_words(one.lacks) + "; grade it again";
    case Kind::turned:
        if (!one.remark.empty()) return one.remark;
        if (one.criteria.empty()) return "its mechanical tests were said to have failed before";
        return "it was rejected by " + criteria_name(one.criteria) +
               (one.class_id.empty() ? "" : ", class " + one.class_id + ",") + " before its " +
               listed(one.lacks, "and") + (one.lacks.size() == 1 ? " was" : " were") + " changed";
    case Kind::revoked:
        return "what was held in its process was revoked on " + one.on + " (" + one.remark +
               "): only a test welded after that counts (common practice, no source)";
    case Kind::revives: return revives_words(one);
    case Kind::late_training:
        return (one.after ? "coupon " + one.after->coupon + " failed on " + print(one.after->failed) + ": "
                          : "") +
               "the training of " + listed(one.lacks) +
               ", without which the retest lacks more, was entered only on " + one.on +
               ", after the retest was graded (common practice, no source)";
    case Kind::nameless:
        return "who the welder is: " + listed(one.lacks) +
               " is enrolled without a name, so nobody can say whether he failed under another mark (common "
               "practice, no source); give the name";
    case Kind::renamed:
        return "who the welder is: called '" + shown(one.was) + "' when the test came on record, and '" +
               shown(one.now) +
               "' now, and nobody said that this is the same person (common practice, no source)";
    case Kind::employer:
        return "it holds with the same employer, and that was " + shown(one.was) +
               " when the test came on record, and is " + shown(one.now) + " now";
    case Kind::not_after:
        return (one.coupon.empty() ? "it" : "coupon " + one.coupon) +
               (one.was == one.on
                    ? " was on record as welded on " + one.was +
                          " before it was seen, that day, that coupon " + listed(one.lacks) + " failed"
                    : " was welded on " + one.was + ", and that coupon " + listed(one.lacks) +
                          " failed was seen by the examination of " + one.on) +
               ": a retest follows a failure (common practice, no source)";
    case Kind::coupons: break;
    }
    return (one.after ? words_of(*one.after) + ": " : "") +
           coupons_asked(one, one.asked == 1 ? "renews it" : "renew it") + ", " + std::to_string(one.given) +
           (one.given == 1 ? " is given" : " are given") +
           by_authority(rules ? from_of(rules->renewal) : std::nullopt);
}

/// Kinds whose sentence names the coupon itself.
bool names_coupon(Shortcoming::Kind kind) {
    using Kind = Shortcoming::Kind;
    return kind == Kind::failed_day || kind == Kind::failed_kind || kind == Kind::failed_whose ||
           kind == Kind::unreadable || kind == Kind::entered_late || kind == Kind::not_after ||
           kind == Kind::unjudged;
}

} // namespace

std::string accepted_by_words(const RangeRules &rules) {
    std::vector<std::string> out;
    for (const auto &one : rules.accepted_by) out.push_back(print(one) + " [" + authority(one.from) + "]");
    return listed(out, "or");
}

std::string named_exams(std::vector<std::string> exams, std::string_view last) {
    for (auto &name : exams)
        if (name == "mechanical") name = "mechanical tests (bend, fracture or section)";
    return listed(exams, last);
}

std::string words_of(const AfterFailure &after) {
    std::string out = "coupon " + after.coupon + " failed on " + print(after.failed);
    for (const Day day : after.trained) {
        out += ", training on " + print(day);
        if (const auto late = after.late.find(day); late != after.late.end())
            out += " (entered on " + print(late->second) + ", after the retest was welded)";
    }
    return out;
}

std::string words_of(const Aside &aside, const RangeRules *rules) {
    std::string what;
    for (const auto &one : words_of(aside.what, rules)) what += (what.empty() ? "" : "; ") + one;
    return (aside.at.empty() ? "" : aside.at + " of " + print(*aside.day) + ", ") + "set aside: " + what +
           (aside.why.empty() ? "" : "; because: " + aside.why);
}

std::string words_of(const Shortcoming &one, const RangeRules *rules) {
    const std::string said = without_coupon(one, rules);
    return one.coupon.empty() || names_coupon(one.kind) ? said : "coupon " + one.coupon + ": " + said;
}

std::vector<std::string> words_of(const std::vector<Shortcoming> &all, const RangeRules *rules) {
    std::vector<std::string> out;
    for (const auto &one : all) out.push_back(words_of(one, rules));
    return out;
}

} // namespace beadbook
