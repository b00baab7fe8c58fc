#include "operations/writing.hpp"

#include "facts/reason.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/people.hpp"
#include "records/fold.hpp"

namespace beadbook {
namespace {

std::string checked_name(Office &office, const std::string &who) {
    std::string name = checked_text(who, "name");
    if (name.empty()) throw refused("who does this?").give("by");
    check_names_one(office, name, "by");
    return name;
}

} // namespace

Writing::Writing(Office &office, const std::string &who, Known known)
    : office_(office), stamp_{"", checked_name(office, who), known == Known::by_sign_in} {
    begin();
}

void Writing::begin() {
    transaction_.emplace(ledger());
    // Not before it is its turn: of several that waited, each is later than the one before it.
    stamp_.at = outside().now();
}

bool Writing::refuse() {
    transaction_.reset();
    coupons_.clear();
    touched_.clear();
    const auto kept = std::exchange(if_refused_, {});
    if (kept.empty()) return false;
    begin();
    for (const auto &what : kept) what(*this);
    return !touched_.empty();
}

const CouponState &Writing::coupon(const std::string &id) {
    const auto found = coupons_.find(id);
    if (found != coupons_.end()) return found->second;
    CouponState coupon = office_.coupon(id);
    check_line_follows(office_, coupon);
    return coupons_.emplace(id, std::move(coupon)).first->second;
}

Entry Writing::add(Entry entry) {
    entry.at = stamp_.at;
    entry.who = stamp_.who;
    if (stamp_.signed_in) entry.body = signed_in(entry.body);
    // One door for all: whoever writes about a coupon has looked at it first.
    if (const auto known = coupons_.find(entry.subject); family_of(entry.kind) == Family::coupon &&
                                                         entry.kind != "coupon" && known != coupons_.end() &&
                                                         !known->second.record.withdrawn.empty())
        throw is_withdrawn(known->second.record);
    entry = ledger().append(std::move(entry));
    if (family_of(entry.kind) != Family::coupon) return entry;
    touched_.insert(entry.subject);
    const auto found = coupons_.find(entry.subject);
    if (found == coupons_.end()) return entry;
    CouponState &state = found->second;
    const auto touched = exams_touched(state, entry);
    if (!take_entry(state, entry))
        coupons_.erase(found);
    else
        for (auto &exam : state.exams)
            if (touched.contains(exam.number)) {
                office_.check_exam_of(state, exam);
                office_.check_means_of(state.record, exam);
            }
    return entry;
}

Refusal is_withdrawn(const CouponRecord &coupon) {
    return refused("coupon " + coupon.id + " is withdrawn: " + coupon.withdrawn)
        .mend({"restore", {coupon.id}, {"why"}});
}

std::string needed_reason(const std::string &reason) {
    std::string text = checked_reason(reason, "reason");
    if (text.empty()) throw refused("a correction needs a reason").give("why");
    return text;
}

Entry withdrawal_of(std::int64_t entry, const std::string &kind, const std::string &subject,
                    std::optional<int> number, const std::string &why) {
    Entry out;
    out.kind = kind;
    out.subject = subject;
    out.supersedes = entry;
    out.reason = needed_reason(why);
    out.body = withdrawal(number);
    return out;
}

} // namespace beadbook
