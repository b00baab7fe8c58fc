// Keeping the record: verify, backup.
#include "operations/keeping.hpp"
#include "cli/command.hpp"
#include "render/json_keeping.hpp"

namespace beadbook {
namespace {

ExitCode run_verify(Call &call) {
    const Verified verified = verify(call.office(), {call.has("replay"), call.text("head")});
    if (verified.holds() || call.json()) call.tell(verified);
    for (const auto &fault : faults_of(verified)) call.session().err << "beadbook: error: " << fault << "\n";
    return verified.holds() ? ExitCode::done : ExitCode::store;
}

ExitCode run_backup(Call &call) { return call.tell(back_up(call.office(), call.at(0))); }

} // namespace

std::vector<Command> keeping_commands() {
    return {
        looks(For::keeper, run_verify, R"(verify
prove that nothing on record was changed
verify --replay
Recomputes the chain of hashes and names the first entry that does not hold. Note the head that it prints
elsewhere: --head HASH later also proves that nothing was cut off.)",
              {{"replay", "", "also judge every stored verdict again by the criteria it was taken by"},
               {"head", "HASH", "the head noted earlier; the record must end with it"}}),
        looks(For::keeper, run_backup, R"(backup FILE
a consistent, verified copy of the record
backup /media/stick/book-2026-11-25.db)"),
    };
}

} // namespace beadbook
