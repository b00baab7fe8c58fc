#include "faults/child.hpp"

#include "catch.hpp"
#include "cli/run.hpp"
#include "records/ledger.hpp"

#include <cstdlib>
#include <fcntl.h>
#include <limits>
#include <set>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace beadbook::test {
namespace {

/// In the child: never returns.
[[noreturn]] void become(const Child &child, const std::string &out, const std::string &err) {
    const int in = open("/dev/null", O_RDONLY), to = open(out.c_str(), O_WRONLY | O_CREAT, 0600),
              errors = open(err.c_str(), O_WRONLY | O_CREAT, 0600);
    if (in < 0 || to < 0 || errors < 0) _exit(125);
    dup2(in, 0);
    dup2(to, 1);
    dup2(errors, 2);
    setenv("BEADBOOK_BOOK", child.book.c_str(), 1);
    setenv("BEADBOOK_USER", "tester", 1);
    setenv("BEADBOOK_SETTINGS", "/nonexistent/settings.yaml", 1);
    for (const auto &[name, value] : child.environment) setenv(name.c_str(), value.c_str(), 1);
    std::vector<std::string> words{"beadbook"};
    words.insert(words.end(), child.words.begin(), child.words.end());
    std::vector<char *> pointers;
    for (auto &word : words) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    execv(BEADBOOK_PROGRAM, pointers.data());
    _exit(126);
}

} // namespace

Ended run(const Child &child) {
    const TemporaryFolder folder;
    const std::string out = child.out.empty() ? folder.file("out") : child.out, err = folder.file("err");
    const pid_t process = fork();
    REQUIRE(process >= 0);
    if (process == 0) become(child, out, err);
    if (child.kill_after_us >= 0) {
        std::this_thread::sleep_for(std::chrono::microseconds(child.kill_after_us));
        kill(process, SIGKILL);
    }
    int status = 0;
    REQUIRE(waitpid(process, &status, 0) == process);
    Ended ended;
    if (WIFEXITED(status)) ended.code = WEXITSTATUS(status);
    if (WIFSIGNALED(status)) ended.signal = WTERMSIG(status);
    if (child.out.empty()) ended.out = read_file(out);
    ended.err = read_file(err);
    return ended;
}

bool says_stored(const Ended &ended) {
    return ended.code == 0 || ended.code == 1 || ended.code == 5 || ended.code == 7;
}

std::size_t faults_wanted(std::size_t otherwise) {
    const char *set = std::getenv("BEADBOOK_FAULTS");
    if (!set) return otherwise;
    if (std::string(set) == "all") return std::numeric_limits<std::size_t>::max();
    return std::strtoul(set, nullptr, 10);
}

std::vector<std::size_t> spread(std::size_t end, std::size_t wanted) {
    std::vector<std::size_t> out;
    if (wanted >= end) {
        for (std::size_t i = 0; i < end; ++i) out.push_back(i);
        return out;
    }
    std::set<std::size_t> chosen;
    for (std::size_t i = 0; i < wanted; ++i) chosen.insert(wanted == 1 ? 0 : i * (end - 1) / (wanted - 1));
    return {chosen.begin(), chosen.end()};
}

Template::Template() {
    const Program run;
    run.ok({"register", "T-1", "--thickness", "0.065in", "--weld-length", "8in"});
    run.ok({"exam", "T-1", "RT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", "T-1", "gas pore 0.04 at 1", "gas pore 0.02 at 5"});
    run.ok({"register", "T-2", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.150in", "--weld-length", "8in", "--magnetic", "yes", "--material", "steel",
            "--process", "GTAW"});
    run.ok({"exam", "T-2", "VT", "--examiner", "A. Field", "--level", "II", "--practice", "asme-v-vt",
            "--found", "none"});
    REQUIRE(run({"judge", "T-2"}).code == 5);
    run.ok({"exam", "T-2", "RT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", "T-2", "crack 0.2 at 1"}); // so that its verdict comes out anew
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    run.ok({"remark", "T-1", "the last one"});
    bytes = read_file(run.book());
    const Verification v = Ledger(run.book(), Ledger::Mode::read).verify();
    entries = v.entries;
    head = v.head;
}

std::int64_t sound_entries(const std::string &path) {
    Ledger ledger(path, Ledger::Mode::read);
    const Verification v = ledger.verify();
    INFO((v.faults.empty() ? "" : v.faults.front()));
    REQUIRE(v.faults.empty());
    return v.entries;
}

} // namespace beadbook::test
