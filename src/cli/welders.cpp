// Welders: enrol, welder, welders, used, trained, retract.
#include "operations/welders.hpp"
#include "cli/command.hpp"
#include "operations/enrolling.hpp"
#include "render/json_standing.hpp"

namespace beadbook {
namespace {

ExitCode run_enrol(Call &call) {
    if (call.has("file") == !call.words().empty()) throw UsageError("give one WELDER or --file");
    if (call.has("file")) {
        const WelderTable table{call.input(call.text("file")), call.text("file"), call.has("sure")};
        return call.tell(as<EnrolledMany>(
            call.write([&](Writing &w) { return enrol_all(w, table); }, Ledger::Mode::create)));
    }
    const WelderRequest request{call.at(0),
                                call.text_if_given("name"),
                                call.text_if_given("employer"),
                                call.text_if_given("note"),
                                call.text("why"),
                                call.has("sure")};
    if (call.has("why"))
        return call.tell(
            as<WelderChanged>(call.write([&](Writing &w) { return change_welder(w, request); })));
    check_mark(request.mark, "welder"); // before it begins a record
    return call.tell(
        as<Enrolled>(call.write([&](Writing &w) { return enrol(w, request); }, Ledger::Mode::create)));
}

ExitCode run_welder(Call &call) { return call.tell(standing_of(call.office(), call.at(0), call.day("on"))); }

ExitCode run_welders(Call &call) { return call.tell(standing_of_all(call.office(), call.day("on"))); }

ExitCode run_used(Call &call) {
    const ProcessRequest request{call.at(0), call.at(1), call.day("date"), call.text("work"),
                                 call.text("override")};
    return call.tell(call.write([&](Writing &w) { return log_use(w, request); }));
}

ExitCode run_trained(Call &call) {
    const ProcessRequest request{call.at(0), call.at(1), call.day("date"), call.text("text")};
    return call.tell(call.write([&](Writing &w) { return log_training(w, request); }));
}

ExitCode run_retract(Call &call) {
    const int entry = whole_number(call.at(1), "number of an entry");
    return call.tell(call.write([&](Writing &w) { return retract(w, call.at(0), entry, call.text("why")); }));
}

} // namespace

std::vector<Command> welder_commands() {
    return {
        enters(For::instructor, run_enrol, R"(enrol [WELDER]
register a welder by mark (stencil), or change the entry with --why
enrol L1 --name "J. Reef" --employer "the yard"
--file takes a whole class from a table: a row each below the columns mark,name,employer,note. Only mark must be
there; one bad row stores nothing, and the bad ones are named.)",
               {{"name", "NAME", "the welder's name"},
                {"employer", "TEXT", "who employs the welder"},
                {"note", "TEXT", "anything else"},
                {"file", "FILE", "a table of welders (CSV), - for standard input", 'f'},
                why_option(),
                sure_option()}),
        looks(For::welder, run_welder, R"(welder WELDER
one welder: qualifications, how each stands and until when, and what was logged
welder L1)",
              {on_option()}),
        looks(For::instructor, run_welders, R"(welders
all welders with what they hold
welders)",
              {on_option()}),
        enters(For::instructor, run_used, R"(used WELDER PROCESS
log that a welder used a process, or was confirmed, for continuity
used L1 GTAW --date 2026-11-20 --work "frame 12, joints 4 to 9")",
               {{"work", "TEXT", "the work that shows it"},
                {"override", "TEXT", "why a use that was entered late may revive what had lapsed"},
                happened_option()}),
        enters(For::instructor, run_trained, R"(trained WELDER PROCESS
log further training; after it the retest rules ask for a full test only
trained L1 GTAW --text "two days of root runs")",
               {{"text", "TEXT", "what was trained"}, happened_option()}),
        enters(For::keeper, run_retract, R"(retract WELDER ENTRY
take a wrong entry about a welder back; it stays in the history
retract L1 41 --why "logged on the wrong welder"
'welder' and 'history --welder' show the entries' numbers.)",
               {why_option()}),
    };
}

} // namespace beadbook
