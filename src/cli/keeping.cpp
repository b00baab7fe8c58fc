// Keeping the record: verify, backup.
#include "operations/keeping.hpp"
#include "cli/command.hpp"
#include "measure/text.hpp"
#include "render/json_keeping.hpp"

namespace beadbook {
namespace {

ExitCode run_verify(Call &call) {
    const Verified verified =
        verify(call.office(Ledger::Mode::inspect), {call.has("replay"), call.text("head")});
    std::vector<std::string> notes;
    if (verified.entries_after.value_or(0) > 0)
        notes.push_back("the head that was given is on record, and " +
                        std::to_string(*verified.entries_after) +
                        (*verified.entries_after == 1 ? " entry" : " entries") + " came after it");
    if (verified.holds() || call.json()) call.tell(verified, notes);
    for (const auto &fault : faults_of(verified))
        call.session().err << "beadbook: error: " << visible(fault) << "\n";
    return verified.holds() ? ExitCode::done : ExitCode::store;
}

ExitCode run_refresh(Call &call) { return call.tell(refresh_lines(call.office(Ledger::Mode::write))); }

ExitCode run_backup(Call &call) { return call.tell(back_up(call.office(), call.at(0))); }

} // namespace

std::vector<Command> keeping_commands() {
    return {
        looks(For::keeper, run_verify, R"(verify
prove that nothing on record was changed
verify --replay
Recomputes the chain of hashes and names the first entry that does not hold; looks at the tables, texts and documents
too. Note the head that it prints elsewhere: --head HASH later also proves that nothing up to there was cut off or written
anew, and tells how many entries came after.)",
              {{"replay", "", "also judge every stored verdict again by the criteria it was taken by"},
               {"head", "HASH", "the head noted earlier; it must still be on record"}}),
        looks(For::keeper, run_refresh, R"(refresh
work out again what lists say of every coupon
refresh
Lists keep what was judged once. What another version of the program kept they do not take, and judge afresh, which is
slow with thousands of coupons until this is run once. Nothing on record changes.)"),
        looks(For::keeper, run_backup, R"(backup FILE
a consistent, verified copy of the record
backup /media/stick/book-2026-11-25.db)"),
    };
}

} // namespace beadbook
