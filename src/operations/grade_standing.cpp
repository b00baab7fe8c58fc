#include "operations/grade_standing.hpp"

#include "criteria/provenance.hpp"
#include "measure/text.hpp"
#include "operations/rule_words.hpp"
#include "records/described_since.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// The criteria that the coupon names, as they read now.
struct NamedNow {
    /// Where somebody changed them under the same edition since then. A new edition is another matter: what
    /// was graded by the old one stays so.
    std::shared_ptr<const CriteriaSet> changed;
    std::string unreadable; ///< a file of one's own that nobody can look at any more
};

NamedNow named_now(Office &office, const CouponState &coupon, const CriteriaSet &then) {
    const std::string name = coupon.record.get("criteria");
    if (auto now = office.criteria_or_none(name)) {
        const bool in_place =
            now->name == then.name && now->edition == then.edition && now->hash != then.hash;
        return {in_place ? now : nullptr, ""};
    }
    const bool by_it = means_file(name) && !is_shipped_set(then.name, then.hash);
    return {nullptr, by_it ? name : ""};
}

/// Of a class that the set no longer has nobody can say anything.
ClassJudgement judged_for(const std::string &class_id, const CouponState &coupon,
                          const std::shared_ptr<const CriteriaSet> &set) {
    if (const auto index = set->class_index(class_id)) return judge_by(coupon, set).judgement.classes[*index];
    ClassJudgement out;
    out.verdict = Verdict::cannot_say;
    return out;
}

/// The newest entry about a find that keeps it from an accept; 0: none does.
std::int64_t newest_reason(const CouponState &coupon, const ClassJudgement &judged) {
    std::int64_t out = 0;
    for (const auto &finding : judged.findings)
        for (const int number : finding.indications)
            if (const auto at = coupon.indication_seq.find(number); at != coupon.indication_seq.end())
                out = std::max(out, at->second);
    return out;
}

/// Whether something keeps it from an accept that did not then, or is farther out than it was.
bool has_new_reason(const ClassJudgement &now, const ClassJudgement &then) {
    return std::any_of(now.findings.begin(), now.findings.end(), [&](const Finding &one) {
        return std::none_of(then.findings.begin(), then.findings.end(), [&](const Finding &was) {
            return was.kind == one.kind && was.effect == one.effect && was.rule == one.rule &&
                   was.clause == one.clause && was.indications == one.indications && was.ratio >= one.ratio;
        });
    });
}

/// What was said of the weld when it was graded, and is said otherwise now. What was filled in since is no
/// other weld.
std::vector<std::string> described_since_grade(Book &book, const CouponState &coupon) {
    std::vector<std::string> out;
    for (const auto &[name, was, is] :
         said_otherwise_since(book.history(coupon.record.id), coupon.grade->seq))
        if (!was.empty() && (name == "welder" || describes_weld(name))) out.push_back(name);
    return out;
}

/// Exams that were on record when it was graded, and were withdrawn since.
std::vector<std::string> withdrawn_since_grade(Book &book, const CouponState &coupon) {
    std::vector<std::string> out;
    if (coupon.last_exam == static_cast<int>(coupon.exams.size())) return out; // none ever was
    std::set<int> stood;
    for (const auto &entry : book.history(coupon.record.id)) {
        if (entry.kind != "exam" || !entry.exam) continue;
        if (entry.seq < coupon.grade->seq) stood.insert(*entry.exam);
        if (is_withdrawal(entry) && entry.seq > coupon.grade->seq && stood.contains(*entry.exam))
            out.push_back(std::to_string(*entry.exam));
    }
    return out;
}

/// Of a pass by other criteria or for another class: that its own do not accept it.
void take_own_verdict(Office &office, const CouponState &coupon, GradeStanding &into) {
    if (!coupon.grade->passed ||
        (into.by_other.empty() && coupon.record.get("class") == coupon.grade->class_id))
        return;
    const JudgedOrNot own = judge_or_tell(office, coupon);
    if (!own.judged || !own.judged->sought || own.judged->verdict() == Verdict::accept) return;
    into.own = own.judged->verdict();
    into.own_class = own.judged->set->classes[*own.judged->sought].id;
}

} // namespace

std::string described_words(const std::vector<std::string> &fields) {
    return "it is described otherwise since it was graded: " + listed(fields, "and");
}

std::string against_words(const std::string &class_id, const std::string &now, const std::string &by,
                          const std::string &on, const std::string &remark) {
    return "the verdict for class " + class_id + " is '" + now + "', and " + by + " graded it passed on " +
           on + (remark.empty() ? "" : ": " + remark);
}

std::string grade_moved_words(const std::string &class_id, const std::string &was, const std::string &now) {
    if (was.empty()) return "the verdict that it was given on is not on record";
    if (was == now)
        return "what was said of the coupon then is not what is said now, though the verdict for class " +
               class_id + " is '" + now + "' as it was";
    return "the verdict for class " + class_id + " was '" + was + "' when it was given and is '" + now +
           "' now";
}

GradeStanding standing_of_grade(Office &office, const CouponState &coupon) {
    GradeStanding out;
    if (!coupon.grade) return out;
    const Grade &grade = *coupon.grade;
    out.state = GradeStanding::State::again;
    out.moved = true;
    if (!coupon.record.withdrawn.empty()) {
        out.why = "the coupon is withdrawn: " + coupon.record.withdrawn;
        return out;
    }
    const StoredVerdict *then = coupon.graded_on();
    const auto set =
        then ? office.with_copy(office.catalogue().kept_criteria(office.ledger(), then->hash)) : nullptr;
    if (!set || !set->class_index(grade.class_id)) {
        out.why = grade_moved_words(grade.class_id, "", "");
        return out;
    }
    const ClassJudgement judged = judged_for(grade.class_id, coupon, set);
    out.now = judged.verdict;
    out.newest_reason = newest_reason(coupon, judged);
    if (const auto own = office.criteria_or_none(coupon.record.get("criteria"));
        own && own->name != set->name)
        out.by_other = set->name;
    out.was = then->verdict_of(grade.class_id);
    const std::string now(name_of(out.now));
    out.moved = out.was != now;
    if (!out.moved)
        out.state = GradeStanding::State::stands;
    else
        out.why = grade_moved_words(grade.class_id, out.was, now);
    const auto again = [&](const std::string &why) {
        out.state = GradeStanding::State::again;
        out.moved = true;
        out.why += (out.why.empty() ? "" : "; ") + why;
    };
    // What a person passed against the verdict was passed for the reasons that it had then.
    if (grade.passed && out.now != Verdict::accept && out.was == now &&
        (out.newest_reason > grade.seq ||
         has_new_reason(judged, judged_for(grade.class_id, office.coupon(coupon.record.id, grade.seq), set))))
        again("the verdict for class " + grade.class_id + " is '" + now +
              "' as it was, and for a reason that is new or worse since it was given");
    const auto [changed, unreadable] = named_now(office, coupon, *set);
    if (!unreadable.empty())
        again("its criteria file " + shown(unreadable) +
              " is gone or cannot be read, so nobody can say whether it was changed; put it back");
    if (changed) {
        const Verdict by_changed = judged_for(grade.class_id, coupon, changed).verdict;
        if (by_changed != out.now)
            again("the text of " + set->name + " was changed under the same edition, and by it class " +
                  grade.class_id + " is '" + std::string(name_of(by_changed)) + "' and not '" + now + "'");
        out.now = by_changed;
    }
    take_own_verdict(office, coupon, out);
    // Who passed it all the same knew that they did not accept it.
    if (!out.own_class.empty() && !grade.against_verdict)
        again("the verdict for class " + out.own_class + ", for which it is registered, is '" +
              std::string(name_of(out.own)) + "' now");
    if (grade.passed && coupon.sought_changed > grade.seq)
        again("the coupon is registered for other criteria or another class since");
    if (grade.passed && coupon.bends_failed_once(grade.seq))
        again("its mechanical tests were said to have failed after it was given");
    // A grade that was given in spite of them says so; one that does not speak of them is to be given again.
    if (grade.passed && !grade.against_mechanical && coupon.record.bends_failed())
        again("its mechanical tests failed");
    if (grade.passed)
        if (const auto gone = withdrawn_since_grade(office.book(), coupon); !gone.empty())
            again("exam " + listed(gone, "and") + (gone.size() == 1 ? " is" : " are") +
                  " withdrawn since it was given");
    if (grade.passed && coupon.record_seq > grade.seq)
        out.described = described_since_grade(office.book(), coupon);
    if (!out.described.empty()) {
        out.state = GradeStanding::State::again;
        out.why += (out.why.empty() ? "" : "; ") + described_words(out.described);
    }
    return out;
}

} // namespace beadbook
