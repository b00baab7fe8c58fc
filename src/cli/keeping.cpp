// Keeping the record: verify, backup.
#include "operations/keeping.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "render/json_keeping.hpp"

namespace beadbook {
namespace {

ExitCode run_verify(const Args &args, Session &session) {
    Shop shop(args, session);
    const Verified verified = verify(shop.office(), {args.flag("replay"), args.text("head")});
    if (verified.holds() || args.flag("json")) tell(args, session, verified);
    for (const auto &fault : faults_of(verified)) session.err << "beadbook: error: " << fault << "\n";
    return verified.holds() ? ExitCode::done : ExitCode::store;
}

ExitCode run_backup(const Args &args, Session &session) {
    Shop shop(args, session);
    tell(args, session, back_up(shop.office(), args.at(0)));
    return ExitCode::done;
}

} // namespace

Command verify_command() {
    return {
        "verify",
        "",
        "prove that nothing on record was changed",
        "Recomputes the chain of hashes and names the first entry that does not hold. Note the head that it "
        "prints\n"
        "elsewhere: --head HASH later also proves that nothing was cut off.",
        "beadbook verify --replay",
        0,
        0,
        options(Option{"replay", "", "also judge every stored verdict again by the criteria it was taken by"},
                Option{"head", "HASH", "the head noted earlier; the record must end with it"}, json_option()),
        run_verify};
}

Command backup_command() {
    return {"backup",
            "FILE",
            "a consistent, verified copy of the record",
            "",
            "beadbook backup /media/stick/book-2026-11-25.db",
            1,
            1,
            options(json_option()),
            run_backup};
}

} // namespace beadbook
