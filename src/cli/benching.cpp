// The bench: the same operations as pages.
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "render/json_account.hpp"
#include "render/json_bench.hpp"
#include "web/bench.hpp"
#include "web/server.hpp"
#include "web/tablet_door.hpp"

#include <termios.h>
#include <unistd.h>

namespace beadbook {
namespace {

/// The same each time: a browser keeps what was not sent yet by the address that it was entered at.
constexpr int usual_port = 8423;

ExitCode write_way_in(Call &call, int bench_port) {
    if (!call.has("host"))
        throw UsageError("--nginx needs --host: the name by which tablets ask for this machine");
    const int port = call.number("tls-port", "port of the proxy", 443);
    if (port > 65535 || bench_port > 65535) throw UsageError("a port is a number up to 65535");
    return call.tell(write_door(call.text("nginx"), {call.text("host"), port, bench_port, ""}));
}

ExitCode run_bench(Call &call) {
    Session &session = call.session();
    const bool any = call.text("port") == "any";
    const int port = any ? 0 : call.number("port", "port, nor 'any'", usual_port);
    if (port > 65535) throw UsageError("--port is a number up to 65535");
    if (call.has("nginx")) return write_way_in(call, any ? usual_port : port);
    BenchWorld world{book_path(call.args(), session), call.catalogue().outside(),
                     call.has("as") ? call.text("as") : call.actor()};
    if (call.has("sign-in")) {
        if (call.has("as")) throw UsageError("who is at the bench is who signed in: --sign-in takes no --as");
        world.door = read_door(call.text("sign-in"));
        if (const int of_door = world.door->bench_port; call.has("port") && port != of_door)
            throw UsageError("--port: the proxy of " + shown(call.text("sign-in")) +
                             " asks the bench at port " + std::to_string(of_door) +
                             "; leave --port out, or write the folder anew with "
                             "--nginx and --port");
    }
    Bench bench(std::move(world));
    std::optional<StopSignal> signal;
    if (!session.until_stopped) signal.emplace();
    Server server([&](const Request &request) { return bench.answer(request); });
    const auto &door = bench.world().door;
    bench.reached_by(server.bind(door ? door->bench_port : port));
    const std::string link = door ? door->origin() + "/" : bench.link();
    server.start();
    call.tell(BenchOpen{link, door ? "" : bench.world().person});
    session.out.flush();
    if (session.open && !door && !call.has("no-open") && !call.json()) session.open(link);
    if (session.until_stopped)
        session.until_stopped(link);
    else
        signal->wait();
    server.stop();
    return ExitCode::done;
}

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

Deeds bench_deeds() { return {{"bench", run_bench}, {"account", run_account}}; }

} // namespace beadbook
