// The bench: the same operations as pages.
#include "cli/command.hpp"
#include "render/json_bench.hpp"
#include "web/bench.hpp"
#include "web/server.hpp"

namespace beadbook {
namespace {

/// The same each time: a browser keeps what was not sent yet by the address that it was entered at.
constexpr int usual_port = 8423;

ExitCode run_bench(Call &call) {
    Session &session = call.session();
    const bool any = call.text("port") == "any";
    const int port = any ? 0 : call.number("port", "port, nor 'any'", usual_port);
    if (port > 65535) throw UsageError("--port is a number up to 65535");
    Bench bench({book_path(call.args(), session), call.catalogue().outside(),
                 call.has("as") ? call.text("as") : call.actor()});
    std::optional<StopSignal> signal;
    if (!session.until_stopped) signal.emplace();
    Server server([&](const Request &request) { return bench.answer(request); });
    bench.reached_by(server.bind(port));
    const std::string link = bench.link();
    server.start();
    call.tell(BenchOpen{link, bench.world().person});
    session.out.flush();
    if (session.open && !call.has("no-open") && !call.json()) session.open(link);
    if (session.until_stopped)
        session.until_stopped(link);
    else
        signal->wait();
    server.stop();
    return ExitCode::done;
}

} // namespace

std::vector<Command> bench_commands() {
    return {looks(For::technician, run_bench, R"(bench
pages in the browser of this machine: what is to be examined, coupons, finds and verdicts
bench --as "A. Field"
It prints a link and answers until Ctrl-C. The link lets one browser in, once, so that nobody else on this machine gets
at the record. Everything that is entered there is entered by the same operations as here. The pages ask nothing of any
other computer.)",
                  {{"port", "N|any", "port on this machine (default 8423)"},
                   {"no-open", "", "only print the link, open no browser"},
                   {"as", "NAME", "who is at the bench (else BEADBOOK_USER, else your login)"}})};
}

} // namespace beadbook
