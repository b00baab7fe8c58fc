// Coupons: register, change, remark; and looking at them.
#include "operations/coupons.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "operations/looking.hpp"
#include "render/json_coupons.hpp"
#include "report/coupon_document.hpp"

namespace beadbook {
namespace {

ExitCode run_register(const Args &args, Session &session) {
    Shop shop(args, session);
    // Read before the record is opened, so that a bad word begins none.
    const CouponRequest request{args.at(0), coupon_fields_given(args), args.flag("sure")};
    described(shop.catalogue(), request);
    const auto done =
        shop.write([&](Writing &w) { return register_coupon(w, request); }, Ledger::Mode::create);
    tell(args, session, Registered{done.value}, done.notes);
    return ExitCode::done;
}

ExitCode run_change(const Args &args, Session &session) {
    Shop shop(args, session);
    const CouponChange request{
        {args.at(0), coupon_fields_given(args), args.flag("sure")}, args.all("forget"), args.text("why")};
    const auto done = shop.write([&](Writing &w) { return change_coupon(w, request); });
    tell(args, session, Changed{done.value}, done.notes);
    return ExitCode::done;
}

ExitCode run_restore(const Args &args, Session &session) {
    Shop shop(args, session);
    const auto done = shop.write([&](Writing &w) { return restore_coupon(w, args.at(0), args.text("why")); });
    tell(args, session, CouponRestored{done.value}, done.notes);
    return ExitCode::done;
}

ExitCode run_remark(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session, shop.write([&](Writing &w) { return remark_on(w, args.at(0), args.at(1)); }));
    return ExitCode::done;
}

ExitCode run_coupons(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session, list_coupons(shop.office(), {args.text("welder")}));
    return ExitCode::done;
}

ExitCode run_show(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session, show_coupon(shop.office(), args.at(0)));
    return ExitCode::done;
}

ExitCode run_history(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session,
         args.flag("welder") ? history_of_welder(shop.office(), args.at(0))
                             : history_of_coupon(shop.office(), args.at(0)));
    return ExitCode::done;
}

} // namespace

Command register_command() {
    return {
        "register",
        "COUPON",
        "register a test coupon: joint, sizes, metal, criteria and class",
        "Sizes take a unit (0.063in, 3/16 in, 1.2 mm, 45 thou); bare numbers take --units, else the unit of "
        "the other sizes.\n"
        "What is not known is left out: a rule that needs it then says so instead of passing the coupon.\n"
        "A number that nobody would believe at first sight is refused without --sure.",
        "beadbook register T-7 --criteria ufgs-15216n --joint groove --form tube --seam girth --diameter "
        "2in --thickness 0.065in",
        1,
        1,
        options(coupon_field_options(), sure_option(), by_option(), json_option()),
        run_register};
}

Command change_command() {
    return {"change",
            "COUPON",
            "correct what was registered about a coupon",
            "",
            "beadbook change T-7 --thickness 0.071in --why \"measured again\"",
            1,
            1,
            options(coupon_field_options(),
                    Option{"forget", "FIELD", "drop a field that should not be there", 0, true}, why_option(),
                    sure_option(), by_option(), json_option()),
            run_change};
}

Command restore_command() {
    return {"restore",
            "COUPON",
            "bring a withdrawn coupon back",
            "",
            "beadbook restore T-7 --why \"it was the other piece\"",
            1,
            1,
            options(why_option(), by_option(), json_option()),
            run_restore};
}

Command remark_command() {
    return {"remark",
            "COUPON TEXT",
            "add a remark to a coupon",
            "",
            "beadbook remark T-7 \"restart at 4 o'clock looks cold\"",
            2,
            2,
            options(by_option(), json_option()),
            run_remark};
}

Command coupons_command() {
    return {"coupons",
            "",
            "all coupons at a glance, with verdict and grade",
            "",
            "beadbook coupons --welder W3",
            0,
            0,
            options(Option{"welder", "NAME", "only this welder's"}, json_option()),
            run_coupons};
}

Command show_command() {
    return {"show",
            "COUPON",
            "one coupon: what is known, exams, indications, verdict, grade",
            "",
            "beadbook show T-7",
            1,
            1,
            options(json_option()),
            run_show};
}

Command history_command() {
    return {
        "history",
        "COUPON",
        "every entry ever made about a coupon, or a welder: who, when, why, and the values before and after",
        "",
        "beadbook history T-7",
        1,
        1,
        options(Option{"welder", "", "the word is a welder's mark"}, json_option()),
        run_history};
}

} // namespace beadbook
