// The solver as a program of its own: the real one, and ones that misbehave.
#include "catch.hpp"
#include "operations/outside_solver.hpp"
#include "qualify/cover_search.hpp"
#include "qualify/covers.hpp"
#include "qualify/set_cover.hpp"
#include "temporary.hpp"

#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;
using std::chrono::milliseconds;

namespace {

constexpr milliseconds plenty{60'000};

/// A shell script in the solver's place.
class Script {
public:
    explicit Script(const std::string &lines) {
        write_file(path(), "#!/bin/sh\n" + lines + "\n");
        chmod(path().c_str(), 0755);
    }
    std::string path() const { return folder_.file("solver"); }
    std::string file(const std::string &name) const { return folder_.file(name); }

private:
    TemporaryFolder folder_;
};

CoverProblem ring() { // any two of three
    return {3, {Bits(std::string("011")), Bits(std::string("101")), Bits(std::string("110"))}};
}

std::string print_answer(const std::string &state, const std::string &rest) {
    return "printf 'cover 1\\n" + state + "\\n" + rest + "\\nend\\n'";
}

std::size_t open_descriptors() {
    std::size_t out = 0;
    for (const auto &one : std::filesystem::directory_iterator("/proc/self/fd")) {
        static_cast<void>(one);
        ++out;
    }
    return out;
}

} // namespace

TEST_CASE("the real solver solves hard covers, and never worse than greed") {
    const CoverSolver solver = outside_solver(BEADBOOK_COVER);
    std::mt19937 random(40);
    for (int round = 0; round < 3; ++round) {
        const CoverProblem problem = random_cover(random, 40, 80, 10);
        const CoverAnswer answer = solver(problem, plenty);
        INFO(answer.note);
        REQUIRE_FALSE(answer.chosen.empty());
        CHECK(answer.note.empty());
        CHECK(problem.covered_by(answer.chosen));
        CHECK(answer.chosen.size() <= greedy_cover(problem).size());
        CHECK(answer.at_least <= answer.chosen.size());
        // The search here goes another way, and proves the same.
        const SetCover own = smallest_cover(problem.contents());
        REQUIRE(own.proven);
        CHECK(answer.chosen.size() == own.chosen.size());
        CHECK(answer.at_least == own.chosen.size());
    }
}

TEST_CASE("the real solver's bound is true even when its time is short", "[properties]") {
    const CoverSolver solver = outside_solver(BEADBOOK_COVER);
    std::mt19937 random(41);
    for (const int milli : {60, 70, 80, 100, 120, 150, 200, 300}) {
        const CoverProblem problem = random_cover(random, 40, 60, 12);
        const SetCover own = smallest_cover(problem.contents());
        REQUIRE(own.proven);
        const CoverAnswer answer = solver(problem, milliseconds(milli)); // may well have none
        CHECK(answer.at_least <= own.chosen.size());
        CHECK(answer.chosen.empty() == !answer.note.empty());
        if (!answer.chosen.empty()) CHECK(problem.covered_by(answer.chosen));
    }
}

TEST_CASE("a deadline far too short gives a cover that is not called proven") {
    std::mt19937 random(42);
    const CoverProblem problem = random_cover(random, 200, 400, 5);
    const SetCover cover =
        smallest_cover(problem.contents(), outside_solver(BEADBOOK_COVER), milliseconds(200));
    CHECK(problem.covered_by(cover.chosen));
    CHECK(cover.chosen.size() <= greedy_cover(problem).size());
    CHECK_FALSE(cover.proven);
    CHECK(cover.at_least >= 15); // each set holds few of the 200 elements, the dual prices say
    CHECK(cover.at_least < cover.chosen.size());
}

TEST_CASE("what goes wrong with a solver is an answer without sets, and a sentence") {
    const std::string sets = "at least 2\\nchosen 2\\n";
    const std::vector<std::pair<std::string, std::string>> rows{
        {"kill -SEGV $$", "broke off (signal 11)"},
        {"kill -ABRT $$", "broke off (signal 6)"},
        {print_answer("proven", sets + "0 1") + "\nkill -ABRT $$", "broke off (signal 6)"},
        {"exit 3", "failed (exit code 3)"},
        {"exit 0", "gave no answer that can be read"},
        {"echo Coin: hello", "gave no answer that can be read"},
        {"echo Coin: hello\n" + print_answer("proven", sets + "0 1"), "gave no answer that can be read"},
        {print_answer("proven", sets + "0 1") + "\necho", "gave no answer that can be read"},
        {print_answer("perhaps", sets + "0 1"), "gave no answer that can be read"},
        {print_answer("proven", sets + "0"), "gave no answer that can be read"},
        {print_answer("proven", sets + "0 1 2"), "gave no answer that can be read"},
        {print_answer("proven", sets + "0 3"), "gave no answer that can be read"},
        {print_answer("proven", sets + "0 -1"), "gave no answer that can be read"},
        {print_answer("proven", "at least 1\\nchosen 2\\n0 1"), "gave no answer that can be read"},
        {print_answer("best", "at least 3\\nchosen 2\\n0 1"), "gave no answer that can be read"},
        {print_answer("best", "at least 0\\nchosen 99999999999999999999\\n"),
         "gave no answer that can be read"},
        {print_answer("best", "at least 0\\nchosen 0\\n"), "found no plan in its time"},
        {"printf 'cover 1\\nproven\\nat least 2\\nchosen 2\\n0 1\\n'", "gave no answer that can be read"},
        {"while :; do echo 0 1 2 3 4 5 6 7 8 9; done", "said more than an answer can be"},
    };
    for (const auto &[lines, expected] : rows) {
        INFO(lines);
        const Script script(lines);
        const CoverAnswer answer = outside_solver(script.path())(ring(), plenty);
        CHECK(answer.chosen.empty());
        CHECK(answer.at_least == 0);
        CHECK(answer.note == "The solver " + expected + "; this is the best plan found without it.");
    }
    // The same script with an answer that is in order is believed, so that the rows above prove something.
    const CoverAnswer good =
        outside_solver(Script(print_answer("proven", sets + "0 1")).path())(ring(), plenty);
    CHECK(good.note.empty());
    CHECK(good.chosen == std::vector<std::size_t>{0, 1});
    CHECK(good.at_least == 2);
}

TEST_CASE("a solver that hangs is ended, before its answer, after it, and with its output closed") {
    for (const std::string lines : {"exec sleep 1000", "printf 'cover 1\\n'\nexec sleep 1000",
                                    "exec sleep 1000 >/dev/null", "trap '' TERM INT HUP\nexec sleep 1000"}) {
        INFO(lines);
        const Script script(lines);
        const CoverAnswer answer = outside_solver(script.path())(ring(), milliseconds(200));
        CHECK(answer.chosen.empty());
        CHECK_THAT(answer.note, says("The solver did not end in its time"));
        CHECK(waitpid(-1, nullptr, WNOHANG) == -1); // no child is left, not even a dead one
        CHECK(errno == ECHILD);
    }
}

TEST_CASE("a solver that is missing or cannot be run is said, and the plan is made without it") {
    const TemporaryFolder folder;
    const CoverAnswer none = outside_solver(folder.file("none"))(ring(), plenty);
    CHECK_THAT(none.note, says("The solver could not be started: No such file or directory"));
    write_file(folder.file("text"), "no program");
    CHECK_THAT(outside_solver(folder.file("text"))(ring(), plenty).note,
               says("could not be started: Permission denied"));
    // The tests' own folder holds no beadbook-cover.
    CHECK_THAT(outside_solver()(ring(), plenty).note,
               says("The solver is missing: there is no program beadbook-cover beside beadbook"));
    const SetCover cover = smallest_cover(lines_to_meet(4).contents(), outside_solver(folder.file("none")));
    CHECK(lines_to_meet(4).covered_by(cover.chosen));
    CHECK_FALSE(cover.proven);
    CHECK(cover.at_least >= 27);
    CHECK(cover.at_least <= 61);
    REQUIRE(cover.notes.size() == 1);
    CHECK_THAT(cover.notes.front(), says("this is the best plan found without it"));
}

TEST_CASE("the solver gets its question and three descriptors, and leaves none here") {
    // An open descriptor that a careless caller does not close on exec.
    const TemporaryFolder folder;
    const int open_one = open("/dev/null", O_RDONLY);
    REQUIRE(open_one >= 0);
    const int high = fcntl(open_one, F_DUPFD, 77);
    const Script script("cat >\"$0.question\"\nif [ -e /proc/self/fd/" + std::to_string(high) +
                        " ]; then exit 9; fi\n" + print_answer("best", "at least 1\\nchosen 2\\n1 2"));
    const std::size_t before = open_descriptors();
    const CoverAnswer answer = outside_solver(script.path())(ring(), milliseconds(10'000));
    CHECK(open_descriptors() == before);
    close(open_one);
    close(high);
    CHECK(answer.note.empty());
    CHECK(answer.chosen == std::vector<std::size_t>{1, 2});
    CHECK(answer.at_least == 1);
    CHECK(read_file(script.file("solver.question")) == "cover 1\nmilliseconds 8950\nsets 3\nelements 3\n"
                                                       "0 1\n0 2\n1 2\nend\n");
    const Script broken("exit 3");
    CHECK_FALSE(outside_solver(broken.path())(ring(), plenty).note.empty());
    CHECK_FALSE(outside_solver(folder.file("none"))(ring(), plenty).note.empty());
    CHECK(open_descriptors() == before - 2);
    CHECK(waitpid(-1, nullptr, WNOHANG) == -1);
}

TEST_CASE("a solver that does not read ends nobody by a broken pipe") {
    // The default action of SIGPIPE would end the tests.
    const auto old = std::signal(SIGPIPE, SIG_DFL);
    std::mt19937 random(43);
    const CoverProblem large = random_cover(random, 2'000, 400, 50); // more than a pipe holds
    CHECK_THAT(outside_solver(Script("exec <&-\nexit 3").path())(large, plenty).note,
               says("failed (exit code 3)"));
    // And the solver itself gets it as usual, even if it is ignored here.
    std::signal(SIGPIPE, SIG_IGN);
    CHECK_THAT(outside_solver(Script("kill -PIPE $$").path())(ring(), plenty).note,
               says("broke off (signal 13)"));
    std::signal(SIGPIPE, old);
}

TEST_CASE("beadbook-cover takes nothing but a set cover") {
    const TemporaryFolder folder;
    const auto run = [&](const std::string &input) {
        write_file(folder.file("in"), input);
        const int status = std::system(
            (BEADBOOK_COVER " <" + folder.file("in") + " >" + folder.file("out") + " 2>" + folder.file("err"))
                .c_str());
        return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    };
    const std::string start = "cover 1\nmilliseconds 1000\n";
    REQUIRE(run(start + "sets 4\nelements 2\n0 3\n1 2 3\nend\n") == 0);
    CHECK(read_file(folder.file("out")) == "cover 1\nproven\nat least 1\nchosen 1\n3\nend\n");
    const std::vector<std::string> wrong{
        "",
        "cover 2\nmilliseconds 1000\nsets 1\nelements 1\n0\nend\n",
        "cover 1\nmilliseconds 0\nsets 1\nelements 1\n0\nend\n",
        "cover 1\nmilliseconds 600001\nsets 1\nelements 1\n0\nend\n",
        start + "sets 0\nelements 1\n0\nend\n", // CBC would ask for commands
        start + "sets 1\nelements 0\nend\n",
        start + "sets 100001\nelements 1\n0\nend\n",
        start + "sets -1\nelements 1\n0\nend\n",
        start + "sets 4\nelements 1\n\nend\n",
        start + "sets 4\nelements 1\n4\nend\n",
        start + "sets 4\nelements 1\n1 1\nend\n",
        start + "sets 4\nelements 1\n2 1\nend\n",
        start + "sets 4\nelements 1\n1 x\nend\n",
        start + "sets 4\nelements 1\n1  2\nend\n",
        start + "sets 4\nelements 1\n99999999999\nend\n",
        start + "sets 4\nelements 1\n1\n",
        start + "sets 4\nelements 1\n1\nend",
        start + "sets 4\nelements 1\n1\nend\nmore\n",
        start + "sets 4\nelements 2\n1\nend\n",
    };
    for (const auto &input : wrong) {
        INFO(input);
        CHECK(run(input) == 2);
        CHECK(read_file(folder.file("out")).empty());
        CHECK_THAT(read_file(folder.file("err")), says("standard input is no set cover"));
    }
}
