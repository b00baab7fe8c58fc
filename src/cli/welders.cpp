// Welders: enrol, welder, welders, used, trained, retract.
#include "operations/welders.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "render/json_standing.hpp"

namespace beadbook {
namespace {

std::optional<std::string> text_given(const Args &args, const std::string &option) {
    return args.has(option) ? std::optional(args.text(option)) : std::nullopt;
}

ExitCode run_enrol(const Args &args, Session &session) {
    Shop shop(args, session);
    const WelderRequest request{args.at(0), text_given(args, "name"), text_given(args, "employer"),
                                text_given(args, "note"), args.text("why")};
    if (args.has("why")) {
        const auto done = shop.write([&](Writing &w) { return change_welder(w, request); });
        tell(args, session, WelderChanged{done.value}, done.notes);
    } else {
        check_mark(request.mark, "welder"); // before it begins a record
        const auto done = shop.write([&](Writing &w) { return enrol(w, request); }, Ledger::Mode::create);
        tell(args, session, Enrolled{done.value}, done.notes);
    }
    return ExitCode::done;
}

ExitCode run_welder(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session, standing_of(shop.office(), args.at(0), day_given(args, "on")));
    return ExitCode::done;
}

ExitCode run_welders(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session, standing_of_all(shop.office(), day_given(args, "on")));
    return ExitCode::done;
}

ExitCode run_used(const Args &args, Session &session) {
    Shop shop(args, session);
    const ProcessRequest request{args.at(0), args.at(1), day_given(args, "date"), args.text("work")};
    tell(args, session, shop.write([&](Writing &w) { return log_use(w, request); }));
    return ExitCode::done;
}

ExitCode run_trained(const Args &args, Session &session) {
    Shop shop(args, session);
    const ProcessRequest request{args.at(0), args.at(1), day_given(args, "date"), args.text("text")};
    tell(args, session, shop.write([&](Writing &w) { return log_training(w, request); }));
    return ExitCode::done;
}

ExitCode run_retract(const Args &args, Session &session) {
    const int entry = whole_number(args.at(1), "entry");
    Shop shop(args, session);
    tell(args, session,
         shop.write([&](Writing &w) { return retract(w, args.at(0), entry, args.text("why")); }));
    return ExitCode::done;
}

} // namespace

Command enrol_command() {
    return {"enrol",
            "WELDER",
            "register a welder by mark (stencil), or change the entry with --why",
            "",
            "beadbook enrol L1 --name \"J. Reef\" --employer \"the yard\"",
            1,
            1,
            options(Option{"name", "NAME", "the welder's name"},
                    Option{"employer", "TEXT", "who employs the welder"},
                    Option{"note", "TEXT", "anything else"}, why_option(), by_option(), json_option()),
            run_enrol};
}

Command welder_command() {
    return {"welder",
            "WELDER",
            "one welder: qualifications, how each stands and until when, and what was logged",
            "",
            "beadbook welder L1",
            1,
            1,
            options(on_option(), json_option()),
            run_welder};
}

Command welders_command() {
    return {"welders", "", "all welders with what they hold",   "",         "beadbook welders",
            0,         0,  options(on_option(), json_option()), run_welders};
}

Command used_command() {
    return {"used",
            "WELDER PROCESS",
            "log that a welder used a process, or was confirmed, for continuity",
            "",
            "beadbook used L1 GTAW --date 2026-11-20 --work \"frame 12, joints 4 to 9\"",
            2,
            2,
            options(Option{"work", "TEXT", "the work that shows it"}, happened_option(), by_option(),
                    json_option()),
            run_used};
}

Command trained_command() {
    return {
        "trained",
        "WELDER PROCESS",
        "log further training; after it the retest rules ask for a full test only",
        "",
        "beadbook trained L1 GTAW --text \"two days of root runs\"",
        2,
        2,
        options(Option{"text", "TEXT", "what was trained"}, happened_option(), by_option(), json_option()),
        run_trained};
}

Command retract_command() {
    return {"retract",
            "WELDER ENTRY",
            "take a wrong entry about a welder back; it stays in the history",
            "'welder' and 'history --welder' show the entries' numbers.",
            "beadbook retract L1 41 --why \"logged on the wrong welder\"",
            2,
            2,
            options(why_option(), by_option(), json_option()),
            run_retract};
}

} // namespace beadbook
