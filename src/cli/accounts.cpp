// How a person on record signs in at the bench of the tablets.
#include "cli/deeds.hpp"
#include "render/json_account.hpp"

#include <termios.h>
#include <unistd.h>

namespace beadbook {
namespace {

/// From a terminal it is not shown while it is typed; else it is the first line of standard input.
std::string password_read(Session &session) {
    const bool asks = session.in_is_terminal;
    termios before{};
    const bool hidden = asks && tcgetattr(STDIN_FILENO, &before) == 0;
    if (hidden) {
        termios quiet = before;
        quiet.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        tcsetattr(STDIN_FILENO, TCSAFLUSH, &quiet);
    }
    if (asks) session.err << "Password: " << std::flush;
    std::string out;
    const bool came = static_cast<bool>(std::getline(session.in, out));
    if (hidden) tcsetattr(STDIN_FILENO, TCSAFLUSH, &before);
    if (asks) session.err << "\n";
    if (!came) throw UsageError("no password came on standard input");
    return out;
}

ExitCode run_account(Call &call) {
    AccountFile accounts(book_path(call.args(), call.session()));
    AccountRequest request{call.at(0), {}, {}, call.actor()};
    if (call.has("lock") && call.has("unlock")) throw UsageError("--lock or --unlock, not both");
    if (call.has("lock")) request.locked = true;
    if (call.has("unlock")) request.locked = false;
    if (call.has("set-password")) request.password = password_read(call.session());
    if (!request.password && !request.locked)
        return call.tell(show_account(call.office(), accounts, request.name));
    return call.tell(write_account(call.office(), accounts, request));
}

} // namespace

Deeds account_deeds() { return {{"account", run_account}}; }

} // namespace beadbook
