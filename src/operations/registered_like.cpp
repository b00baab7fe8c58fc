#include "operations/registered_like.hpp"

#include "measure/text.hpp"
#include "operations/marks.hpp"

#include <set>

namespace beadbook {
namespace {

/// Who welded it, when and in which class, no coupon has of another; what else it says may be a slip that was
/// taken along.
bool may_be_taken_along(const std::string &field) {
    return field != "welder" && field != "welded" && field != "mechanical" && field != "cohort";
}

/// Fields of `before` that another says so still, though `now` says them otherwise.
std::vector<std::string> still_said(const CouponRecord &before, const CouponRecord &now,
                                    const CouponRecord &other) {
    std::vector<std::string> out;
    for (const auto &[field, value] : before.fields)
        if (may_be_taken_along(field) && now.get(field) != value.text && other.get(field) == value.text)
            out.push_back(field);
    return out;
}

/// All that were registered like it, or like one of these. Of all that were, each stands behind the one that
/// it is like, as they do on the record.
std::vector<std::string> alike(const std::vector<std::pair<std::string, std::string>> &all,
                               const std::string &mark) {
    std::set<std::string> known{mark};
    std::vector<std::string> out;
    for (const auto &[like, one] : all)
        if (known.contains(like) && known.insert(one).second) out.push_back(one);
    return out;
}

void note_those_like(Office &office, const CouponRecord &old, const std::vector<std::string> &others,
                     std::vector<std::string> &notes) {
    const CouponRecord now = office.book().coupon(old.id).record;
    std::map<std::vector<std::string>, std::vector<std::string>> by_fields;
    for (const auto &mark : others) {
        const CouponRecord other = office.book().coupon(mark).record;
        if (!other.withdrawn.empty()) continue;
        if (auto fields = still_said(old, now, other); !fields.empty())
            by_fields[std::move(fields)].push_back(mark);
    }
    for (const auto &[fields, marks] : by_fields) {
        std::vector<std::string> said;
        for (const auto &field : fields) said.push_back(field + " " + shown(old.get(field)));
        const bool one = marks.size() == 1;
        notes.push_back("coupon" + std::string(one ? " " : "s ") + marks_text(marks) +
                        (one ? " was" : " were") + " registered like " + old.id + " and still " +
                        (one ? "says " : "say ") + listed(said, "and") + "; where that is wrong of " +
                        (one ? "it" : "them") + " too, change it there");
    }
}

} // namespace

void note_registered_like(Office &office, const std::vector<CouponRecord> &changed,
                          std::vector<std::string> &notes) {
    const auto all = office.ledger().registered_like();
    if (all.empty()) return;
    for (const auto &old : changed) note_those_like(office, old, alike(all, old.id), notes);
}

std::string said_before_correction(Office &office, const CouponRecord &coupon) {
    std::vector<std::string> out;
    std::set<std::string> seen{coupon.id}, told;
    std::string child = coupon.id;
    for (std::string mark = coupon.like;
         !mark.empty() && office.book().knows_coupon(mark) && seen.insert(mark).second;) {
        const CouponRecord before =
                               office.book().coupon(mark, office.book().history(child).front().seq).record,
                           now = office.book().coupon(mark).record;
        for (const auto &field : still_said(before, now, coupon))
            if (now.withdrawn.empty() && told.insert(field).second)
                out.push_back(field + " " + shown(coupon.get(field)) + " (" + mark +
                              " now: " + (now.get(field).empty() ? "nothing" : shown(now.get(field))) + ")");
        child = mark;
        mark = now.like;
    }
    return out.empty() ? "" : "registered like " + coupon.like + " and still says " + listed(out, "and");
}

void note_said_before_correction(Office &office, const CouponRecord &coupon,
                                 std::vector<std::string> &notes) {
    if (std::string said = said_before_correction(office, coupon); !said.empty())
        notes.push_back("coupon " + coupon.id + " was " + said);
}

} // namespace beadbook
