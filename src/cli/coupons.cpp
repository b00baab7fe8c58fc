// Coupons: register, change, restore, remark; and looking at them.
#include "operations/coupons.hpp"
#include "cli/deeds.hpp"
#include "operations/looking.hpp"
#include "operations/many.hpp"
#include "operations/marks.hpp"
#include "operations/selecting.hpp"
#include "operations/to_examine.hpp"
#include "render/json_coupons.hpp"
#include "render/json_list.hpp"
#include "report/coupon_document.hpp"
#include "terminal/page.hpp"
#include "terminal/selection_options.hpp"

#include <algorithm>

namespace beadbook {
namespace {

CouponRequest coupon_request(const Call &call) {
    return {call.at(0), call.coupon_fields(), call.has("sure")};
}

ExitCode run_register(Call &call) {
    // Read before the record is opened, so that a bad word begins none.
    const CouponsRequest request{marks_in(call.at(0)), call.coupon_fields(), call.text("like"),
                                 call.has("sure"), call.coupon_fields_by_settings()};
    if (request.marks.size() == 1 && request.like.empty()) described(call.catalogue(), coupon_request(call));
    std::string next;
    auto done = call.write(
        [&](Writing &w) {
            auto out = register_coupons(w, request);
            if (out.value.size() == 1) next = first_exam(w.office(), w.coupon(out.value.front().id));
            return out;
        },
        Ledger::Mode::create);
    for (auto &note : call.notes_on_settings()) done.notes.push_back(std::move(note));
    if (done.value.size() > 1) return call.tell(as<RegisteredMany>(std::move(done)));
    return call.tell(Registered{done.value.front(), next}, done.notes);
}

ExitCode run_change(Call &call) {
    const CouponChange request{coupon_request(call), call.all("forget"), call.text("why")};
    const auto marks = marks_in(request.said.mark);
    auto done = call.write([&](Writing &w) { return change_coupons(w, marks, request); });
    if (marks.size() == 1) return call.tell(Changed{done.value.front()}, done.notes);
    return call.tell(as<ChangedMany>(std::move(done)));
}

ExitCode run_restore(Call &call) {
    return call.tell(as<CouponRestored>(
        call.write([&](Writing &w) { return restore_coupon(w, call.at(0), call.text("why")); })));
}

ExitCode run_remark(Call &call) {
    return call.tell(call.write([&](Writing &w) { return remark_on(w, call.at(0), call.at(1)); }));
}

/// Some lines at a time, so that the first are seen at once however many there are, and that all of them are
/// never in memory.
ExitCode print_coupons_as_they_come(Call &call, const Selection &of) {
    constexpr std::size_t some = 200;
    auto &out = call.session().out;
    TextInParts text(call.session().paint());
    JsonListInParts json;
    CouponList part{{}, of.all()};
    bool any = false;
    const auto print = [&] {
        out << (call.json() ? json.all_of(json_text(part)) : text(document_of(part))) << std::flush;
        part.coupons.clear();
        any = true;
    };
    select(call.shops(), of, [&](CouponAtHand &one) {
        part.coupons.push_back(one.line());
        if (part.coupons.size() == some) print();
    });
    call.say(notes_on_empty(call, of, !any && part.coupons.empty()));
    if (!any || !part.coupons.empty()) print();
    if (call.json()) out << json.end();
    return ExitCode::done;
}

ExitCode run_coupons(Call &call) {
    const Selection of = selection_of(call);
    const Shops shops = call.shops();
    if (std::any_of(shops.all().begin(), shops.all().end(),
                    [](const Shops::Shop &shop) { return KeptLines(*shop.office).miss_many(); }))
        call.say(
            {"coupons are judged afresh for this list, because another version of the program kept what it "
             "says of them; 'refresh' makes it quick again"});
    const int most = call.number("newest", "number of coupons");
    if (most == 0 && (call.json() || call.session().height == 0)) return print_coupons_as_they_come(call, of);
    CouponList list{{}, of.all()};
    if (most == 0) {
        list.coupons = list_coupons(shops, of);
    } else if (shops.all().size() > 1) {
        throw UsageError(
            "--newest goes by the order of registration, which the records of several shops do not share");
    } else {
        Newest found = newest(*shops.all().front().office, of, static_cast<std::size_t>(most));
        for (auto &one : found.coupons) list.coupons.push_back(std::move(one.coupon));
        list.more = found.more;
    }
    return call.tell(list, notes_on_empty(call, of, list.coupons.empty()));
}

ExitCode run_show(Call &call) {
    const CouponSheet sheet = show_coupon(call.office(), call.at(0));
    return wants_page(call)
               ? tell_page(call, document_of(sheet), sets_of(call.office(), {sheet.coupon.record}))
               : call.tell(sheet);
}

ExitCode run_history(Call &call) {
    return call.tell(call.has("welder") ? history_of_welder(call.office(), call.at(0))
                                        : history_of_coupon(call.office(), call.at(0)));
}

} // namespace

Deeds coupon_deeds() {
    return {{"register", run_register}, {"change", run_change},   {"restore", run_restore},
            {"remark", run_remark},     {"coupons", run_coupons}, {"show", run_show},
            {"history", run_history}};
}

} // namespace beadbook
