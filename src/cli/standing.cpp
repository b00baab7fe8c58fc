// How qualifications stand: due, extend, revoke, record.
#include "operations/standing.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "render/html.hpp"
#include "render/json_standing.hpp"

#include <filesystem>
#include <fstream>

namespace beadbook {
namespace {

ExitCode run_due(const Args &args, Session &session) {
    const int days = args.has("days") ? whole_number(args.text("days"), "number of days") : 60;
    Shop shop(args, session);
    tell(args, session, due(shop.office(), days, day_given(args, "on")));
    return ExitCode::done;
}

ExitCode run_extend(const Args &args, Session &session) {
    const ExtendRequest request{args.at(0),
                                whole_number(args.at(1), "qualification"),
                                day_given(args, "date"),
                                args.all("weld"),
                                args.all("coupon"),
                                args.text("override")};
    Shop shop(args, session);
    tell(args, session, shop.write([&](Writing &w) { return extend(w, request); }));
    return ExitCode::done;
}

ExitCode run_revoke(const Args &args, Session &session) {
    const RevokeRequest request{args.at(0), whole_number(args.at(1), "qualification"),
                                day_given(args, "date"), args.text("why")};
    Shop shop(args, session);
    tell(args, session, shop.write([&](Writing &w) { return revoke(w, request); }));
    return ExitCode::done;
}

ExitCode run_record(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "qualification");
    Shop shop(args, session);
    if (args.has("document")) {
        const std::string to = args.text("document");
        const Ledger::Document paper = paper_of(shop.office(), args.at(0), number);
        write_new_file(to, paper.bytes);
        tell(args, session, PaperWritten{paper.name, to});
        return ExitCode::done;
    }
    const RecordSheet sheet = record_sheet(shop.office(), args.at(0), number, day_given(args, "on"));
    if (args.has("html")) {
        write_new_file(args.text("html"), html(document_of(sheet)));
        tell(args, session, PaperWritten{"the page", args.text("html")});
    } else {
        tell(args, session, sheet);
    }
    return ExitCode::done;
}

} // namespace

Command due_command() {
    return {
        "due",
        "",
        "qualifications that end or must be used in the coming days, and those that are over",
        "A period that ends on a day holds through that day. A month is counted to the same day of a later\n"
        "month, or to its last day if it is shorter: 2026-08-31 and 6 months is 2027-02-28.",
        "beadbook due --days 90",
        0,
        0,
        options(Option{"days", "N", "days to look ahead (default 60)"}, on_option(), json_option()),
        run_due};
}

Command extend_command() {
    return {
        "extend",
        "WELDER NUMBER",
        "extend a qualification by examined welds of the work, where its rules allow that",
        "Each --weld states its day, the methods, that it was accepted, and by whom; the rules say how many, "
        "and\n"
        "how recent. A --coupon of the record\n"
        "counts as one, if it stands up to what 'qualify' asks.",
        "beadbook extend L1 2 --weld \"2026-10-05 RT accepted by A. Field, line 4 weld 17\" --weld "
        "\"2026-11-12 RT accepted by A. Field, line 4 weld 30\"",
        2,
        2,
        options(Option{"weld", "TEXT", "day, methods, accepted by whom, and weld; may be repeated", 0, true},
                Option{"coupon", "COUPON", "a coupon of the record; may be repeated", 0, true},
                Option{"override", "TEXT", "why what the rules ask of a coupon is set aside"},
                happened_option(), by_option(), json_option()),
        run_extend};
}

Command revoke_command() {
    return {"revoke",
            "WELDER NUMBER",
            "revoke a qualification for a reason to doubt the skill",
            "",
            "beadbook revoke L1 2 --why \"three repairs in one week, same fault\"",
            2,
            2,
            options(why_option(), happened_option(), by_option(), json_option()),
            run_revoke};
}

Command record_command() {
    return {"record",
            "WELDER NUMBER",
            "the qualification record of one welder and test: text, JSON, or a page to print",
            "What was welded, examined and graded, by which criteria and rules (edition and hash), what it\n"
            "qualifies, how it stands, and the hashes that prove it.",
            "beadbook record L1 2 --html L1-2.html",
            2,
            2,
            options(Option{"html", "FILE", "write a page to print"},
                    Option{"document", "FILE", "write the paper that it was carried in with"}, on_option(),
                    json_option()),
            run_record};
}

} // namespace beadbook
