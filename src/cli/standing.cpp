// How qualifications stand: due, extend, revoke, record.
#include "operations/standing.hpp"
#include "cli/command.hpp"
#include "cli/page.hpp"
#include "records/files.hpp"
#include "render/json_standing.hpp"

namespace beadbook {
namespace {

ExitCode run_due(Call &call) { return call.tell(due(call.office(), call.days(60), call.day("on"))); }

ExitCode run_extend(Call &call) {
    const ExtendRequest request{call.at(0),         whole_number(call.at(1), "number of a qualification"),
                                call.day("date"),   call.all("weld"),
                                call.all("coupon"), call.text("override")};
    return call.tell(call.write([&](Writing &w) { return extend(w, request); }));
}

ExitCode run_revoke(Call &call) {
    const RevokeRequest request{call.at(0), whole_number(call.at(1), "number of a qualification"),
                                call.day("date"), call.text("why")};
    return call.tell(call.write([&](Writing &w) { return revoke(w, request); }));
}

ExitCode run_record(Call &call) {
    const int number = whole_number(call.at(1), "number of a qualification");
    if (const std::string to = call.text("document"); !to.empty()) {
        const Ledger::Document paper = paper_of(call.office(), call.at(0), number);
        write_new_file(to, paper.bytes);
        return call.tell(PaperWritten{paper.name, to});
    }
    const RecordSheet sheet = record_sheet(call.office(), call.at(0), number, call.day("on"));
    if (!wants_page(call)) return call.tell(sheet);
    std::vector<std::shared_ptr<const CriteriaSet>> sets;
    for (const auto &test : sheet.tests) sets.push_back(test.set);
    return tell_page(call, document_of(sheet), sets);
}

} // namespace

std::vector<Command> standing_commands() {
    return {
        looks(For::instructor, run_due, R"(due
qualifications that end or must be used in the coming days, and those that are over
due --days 90
A period that ends on a day holds through that day. A month is counted to the same day of a later
month, or to its last day if it is shorter: 2026-08-31 and 6 months is 2027-02-28.)",
              {{"days", "N", "days to look ahead (default 60)"}, on_option()}),
        enters(For::instructor, run_extend, R"(extend WELDER NUMBER
extend a qualification by examined welds of the work, where its rules allow that
extend L1 2 --weld "2026-10-05 RT accepted by A. Field, line 4" --weld "2026-11-12 RT accepted by A. Field, line 7"
Each --weld states its day, the methods, that it was accepted, and by whom; the rules say how many, and how
recent. A --coupon of the record counts as one, if it stands up to what 'qualify' asks.)",
               {{"weld", "TEXT", "day, methods, accepted by whom, and weld; may be repeated", 0, true},
                {"coupon", "COUPON", "a coupon of the record; may be repeated", 0, true},
                {"override", "TEXT", "why what the rules ask of a coupon is set aside"},
                happened_option()}),
        enters(For::instructor, run_revoke, R"(revoke WELDER NUMBER
revoke a qualification for a reason to doubt the skill
revoke L1 2 --why "three repairs in one week, same fault")",
               {why_option(), happened_option()}),
        looks(For::welder, run_record, R"(record WELDER NUMBER
the qualification record of one welder and test: text, JSON, or a page to print
record L1 2 --html L1-2.html
What was welded, examined and graded, by which criteria and rules (edition and hash), what it
qualifies, how it stands, and the hashes that prove it.)",
              options(page_options(),
                      Option{"document", "FILE", "write the paper that it was carried in with"},
                      on_option())),
    };
}

} // namespace beadbook
