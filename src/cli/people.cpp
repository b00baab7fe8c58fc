// People and equipment: person, people, equipment.
#include "cli/deeds.hpp"
#include "render/json_people.hpp"

namespace beadbook {
namespace {

ExitCode run_person(Call &call) {
    PersonRequest request;
    request.name = call.at(0);
    request.roles = call.all("role");
    request.certificates = call.all("certificate");
    request.without = call.all("without");
    request.vision = call.all("vision");
    request.note = call.text_if_given("note");
    request.why = call.text("why");
    request.sure = call.has("sure");
    if (!request.says_something()) {
        if (call.has("why")) throw UsageError("what is to be changed? --why alone says nothing");
        return call.tell(show_person(call.office(), request.name, call.day("on")));
    }
    if (call.has("on")) throw UsageError("--on is for showing; an entry is of today");
    return call.tell(call.write([&](Writing &w) { return write_person(w, request); }, Ledger::Mode::create));
}

ExitCode run_people(Call &call) { return call.tell(list_people(call.office(), call.day("on"))); }

ExitCode run_equipment(Call &call) {
    EquipmentRequest request;
    request.kind = call.text_if_given("kind");
    request.note = call.text_if_given("note");
    request.calibrations = call.all("calibration");
    request.without = call.text("without");
    request.withdraw = call.text("withdraw");
    request.back = call.has("back");
    request.day = call.day("date");
    request.why = call.text("why");
    request.sure = call.has("sure");
    if (call.has("date") && !call.has("withdraw") && !call.has("back"))
        throw UsageError(
            "--date is the day of a withdrawal or a return; a calibration stands with its own day");
    if (call.has("withdraw") && request.withdraw.empty())
        throw UsageError("--withdraw wants the reason why it is used no more");
    if (call.words().empty()) {
        if (request.says_something() || call.has("why")) throw UsageError("which equipment? give its SERIAL");
        return call.tell(list_equipment(call.office(), call.day("on")));
    }
    request.serial = call.at(0);
    if (!request.says_something()) {
        if (call.has("why")) throw UsageError("what is to be changed? --why alone says nothing");
        return call.tell(show_equipment(call.office(), request.serial, call.day("on")));
    }
    if (call.has("on")) throw UsageError("--on is for showing; an entry is of today");
    return call.tell(
        call.write([&](Writing &w) { return write_equipment(w, request); }, Ledger::Mode::create));
}

} // namespace

Deeds people_deeds() {
    return {{"person", run_person}, {"people", run_people}, {"equipment", run_equipment}};
}

} // namespace beadbook
