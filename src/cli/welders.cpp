// Welders: enrol, welder, welders, used, trained, retract.
#include "operations/welders.hpp"
#include "cli/deeds.hpp"
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
    check_welder_mark(request.mark); // before it begins a record
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

Deeds welder_deeds() {
    return {{"enrol", run_enrol}, {"welder", run_welder},   {"welders", run_welders},
            {"used", run_used},   {"trained", run_trained}, {"retract", run_retract}};
}

} // namespace beadbook
