#include "cli/shared.hpp"

#include <filesystem>

namespace beadbook {
namespace {

/// Takes every field that was given, and checks criteria and class.
void take_fields(CouponRecord &coupon, const Args &args) {
    take_coupon_fields(coupon, args);
    const std::string criteria = coupon.get("criteria");
    if (criteria.empty() || !(args.has("criteria") || args.has("class"))) return;
    const auto set = open_criteria(criteria);
    // A file is found again from any folder.
    if (criteria_is_file(criteria))
        coupon.set("criteria", std::filesystem::absolute(criteria).lexically_normal());
    if (const std::string c = coupon.get("class"); !c.empty() && !set->class_index(c)) {
        CouponState state;
        state.record = coupon;
        class_of(args, state, *set); // says which classes there are
    }
}

ExitCode run_register(const Args &args, Session &session) {
    CouponRecord coupon;
    coupon.id = args.at(0);
    check_coupon_id(coupon.id);
    take_fields(coupon, args);
    Book book = open_book(args, session, Ledger::Mode::create);
    book.ledger().transact([&] { book.register_coupon(coupon, stamp_of(args, session)); });
    session.out << "coupon " << coupon.id << " registered; next: beadbook exam " << coupon.id
                << " VT --examiner NAME\n";
    return ExitCode::done;
}

ExitCode run_change(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        CouponRecord coupon = book.coupon(args.at(0)).record;
        const CouponRecord before = coupon;
        if (args.has("forget")) {
            const std::string name = args.text("forget");
            if (coupon.fields.erase(name) == 0)
                throw DataError("coupon " + coupon.id + " has no '" + name + "' to forget");
        }
        take_fields(coupon, args);
        if (coupon == before) throw DataError("this changes nothing");
        book.change_coupon(coupon, stamp_of(args, session), args.text("why"));
    });
    session.out << "coupon " << args.at(0) << " changed; the old entry is kept\n";
    return ExitCode::done;
}

} // namespace

Command register_command() {
    return {"register",
            "COUPON",
            "register a test coupon: joint, sizes, metal, criteria and class",
            "Sizes take a unit (0.063in, 3/16 in, 1.2 mm, 45 thou); bare numbers take --units. What is not "
            "known is\n"
            "left out: a rule that needs it then says so instead of passing the coupon.",
            "beadbook register T-7 --criteria ufgs-15216n --joint groove --form tube --seam girth --diameter "
            "2in --thickness 0.065in",
            1,
            1,
            options(coupon_field_options(), by_option()),
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
                    Option{"forget", "FIELD", "drop a field that should not be there"}, why_option(),
                    by_option()),
            run_change};
}

} // namespace beadbook
