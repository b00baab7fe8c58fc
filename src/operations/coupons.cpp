#include "operations/coupons.hpp"

#include "measure/text.hpp"
#include "operations/known_words.hpp"
#include "records/codecs/bodies.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The criteria are found, and the class is one of theirs; a file is found again from any folder.
void check_criteria(Catalogue &catalogue, CouponRecord &coupon) {
    const std::string criteria = coupon.get("criteria");
    if (criteria.empty()) {
        if (coupon.get("class").empty()) return;
        throw refused("class '" + shown(coupon.get("class")) + "' of which criteria?").give("criteria");
    }
    const auto set = catalogue.criteria(criteria);
    if (means_file(criteria)) coupon.set("criteria", catalogue.outside().absolute(criteria));
    if (const std::string c = coupon.get("class"); !c.empty() && !set->class_index(c))
        throw refused("criteria " + set->name + " have no class '" + shown(c) + "'; they have " +
                      listed(set->class_names()))
            .at("class");
}

/// What was logged must still lie on the weld as it is now described.
void check_still_on_weld(const CouponState &old, const CouponRecord &now) {
    const Coupon facts = now.facts();
    for (const auto &i : old.indications) {
        try {
            replaced_on(i, facts.line, now.unit());
        } catch (const InputError &e) {
            throw refused("with this change indication #" + std::to_string(i.number) +
                          " would not fit: " + e.what());
        }
    }
}

} // namespace

CouponRecord described(Catalogue &catalogue, const CouponRequest &request, CouponRecord base,
                       const RangeRules *by) {
    base.id = request.mark;
    check_coupon_id(base.id);
    // `units` first, because the others are read in it.
    if (const auto units = request.fields.find("units"); units != request.fields.end())
        base.set("units", units->second);
    for (const auto &[name, value] : request.fields) base.set(name, value);
    if (request.fields.contains("criteria") || request.fields.contains("class"))
        check_criteria(catalogue, base);
    if (request.fields.contains("process") || request.fields.contains("position"))
        take_known_words(catalogue, base, by);
    return base;
}

void check_new(Book &book, const std::string &mark) {
    if (book.knows_coupon(mark))
        throw refused("coupon " + mark + " is registered already").mend({"change", {mark}, {}});
}

Done<CouponRecord> register_coupon(Writing &writing, const CouponRequest &request) {
    Done<CouponRecord> out{described(writing.catalogue(), request), {}};
    check_new(writing.book(), out.value.id);
    writing.add(codec::entry_of(out.value));
    return out;
}

Done<CouponRecord> change_coupon(Writing &writing, const CouponChange &request) {
    const CouponState old = writing.coupon(request.said.mark);
    CouponRecord now = old.record;
    for (const auto &name : request.forget)
        if (now.fields.erase(name) == 0)
            throw refused("coupon " + now.id + " has no '" + shown(name) + "' to forget").at("forget");
    now = described(writing.catalogue(), request.said, std::move(now));
    if (std::find(request.forget.begin(), request.forget.end(), "criteria") != request.forget.end())
        check_criteria(writing.catalogue(), now);
    if (now == old.record) throw refused("this changes nothing");
    check_still_on_weld(old, now);
    Entry e = codec::entry_of(now);
    e.supersedes = old.record_seq;
    e.reason = needed_reason(request.why);
    writing.add(std::move(e));
    return {now, {}};
}

Done<Remark> remark_on(Writing &writing, const std::string &mark, const std::string &text) {
    writing.coupon(mark);
    const Remark out{checked_text(text, "remark"), writing.stamp()};
    if (out.text.empty()) throw refused("the remark is empty");
    Entry e;
    e.kind = "remark";
    e.subject = mark;
    e.body = codec::body_of(out);
    writing.add(std::move(e));
    return {out, {}};
}

} // namespace beadbook
