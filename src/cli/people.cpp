// People and equipment: person, people, equipment.
#include "cli/command.hpp"
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

std::string kinds_text() {
    std::string out;
    for (const auto &kind : equipment_kinds()) out += (out.empty() ? "" : ", ") + kind.name;
    return out;
}

} // namespace

std::vector<Command> people_commands() {
    return {
        enters(For::keeper, run_person, R"(person NAME
put a person on record, change that with --why, or show it
person "A. Field" --role technician --certificate "MT II until 2027-05-01 number 4711" --vision "2026-03-01 J1"
A certificate: method and level, then any of since DAY, until DAY, number TEXT, scheme TEXT. One of the same method,
level and number takes the place of the old one; others stay beside it, so that an exam of last year is held
against what was in force then. An exam by somebody on record takes level, certificate and vision test from
here; one by somebody whose certificates do not cover it is refused without --sure, and does not count.
Without options it shows the person, with the history.)",
               {{"role", "ROLE", "technician, instructor, welder or keeper; may be repeated", 0, true},
                {"certificate", "TEXT", "a certificate of an examination method; may be repeated", 0, true},
                {"without", "TEXT",
                 "take this one off: \"MT II 4711\", \"vision 2026-03-01\"; may be repeated", 0, true},
                {"vision", "DAY", "day of a vision test, and the letters read; may be repeated", 0, true},
                {"note", "TEXT", "anything else"},
                why_option(),
                sure_option(),
                on_option()}),
        looks(For::keeper, run_people, R"(people
all people on record with their certificates and vision tests
people
What ends soon stands in 'due'.)",
              {on_option()}),
        enters(For::keeper, run_equipment,
               R"(equipment [SERIAL]
put equipment on record, change that with --why, show it, or list all
equipment LM-7 --kind "light meter" --calibration "2026-05-01 until 2027-05-01"
Kinds: )" + kinds_text() +
                   R"(.
Without SERIAL it lists all. 'exam --equipment SERIAL' says that it was used: what its calibration answers (of a
light or UV meter the condition "meter due", of a yoke or an ammeter when it was checked) goes into the exam
and is held against the practice. With equipment whose calibration was over by then an exam does not count; equipment
that is not on record, or of which nobody said that it was calibrated by then, is told as a caution (common practice,
no source).)",
               {{"kind", "KIND", "what it is"},
                {"calibration", "DAY",
                 "day of a calibration: \"2026-05-01 until 2027-05-01\"; may be repeated", 0, true},
                {"without", "DAY", "take the calibration of this day off"},
                {"withdraw", "TEXT", "it is used no more, and why"},
                {"back", "", "it is used again (with --why); exams of while it was out stay in doubt"},
                {"date", "DAY", "day of the withdrawal, or of its return (default today)"},
                {"note", "TEXT", "anything else"},
                why_option(),
                sure_option(),
                on_option()}),
    };
}

} // namespace beadbook
