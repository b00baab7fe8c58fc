// The bench: the same operations as pages.
#include "pages/bench.hpp"

#include "measure/text.hpp"
#include "render/json_bench.hpp"
#include "terminal/call.hpp"
#include "web/bench.hpp"
#include "web/server.hpp"
#include "web/tablet_door.hpp"

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

} // namespace

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

} // namespace beadbook
