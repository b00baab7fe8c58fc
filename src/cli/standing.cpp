// How qualifications stand: due, extend, revoke, record.
#include "operations/standing.hpp"
#include "cli/deeds.hpp"
#include "records/files.hpp"
#include "render/json_standing.hpp"
#include "terminal/page.hpp"

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

Deeds standing_deeds() {
    return {{"due", run_due}, {"extend", run_extend}, {"revoke", run_revoke}, {"record", run_record}};
}

} // namespace beadbook
