#include "at_the_bench.hpp"

#include "journeys/typed.hpp"
#include "large_record.hpp"
#include "temporary.hpp"

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace beadbook::bench {
namespace {

using namespace beadbook::test;

void typed_script(Figures &figures, const std::string &name, const std::string &bar) {
    const TemporaryFolder folder;
    std::string table = "mark\n";
    for (int n = 1; n <= 60; ++n) table += "L" + std::to_string(n) + "\n";
    write_file(folder.file("class.csv"), table);
    const auto all = typed_in(read_file(BEADBOOK_SOURCE "/tests/journeys/typed/" + name + ".txt"));
    for (const auto &one : all)
        if (const Typing done = type(one, folder.file(""), BEADBOOK_PROGRAM);
            done.code != 0 && done.code != 1) {
            std::printf("typed    %s: %s: %s\n", name.c_str(), one.line.c_str(), done.out.c_str());
            return;
        }
    const TypingCost cost = counted(all);
    figures.add("typed/" + name, static_cast<double>(cost.keys), "keys", "bar " + bar);
    figures.add("typed/" + name + "/commands", static_cast<double>(cost.commands), "commands");
}

/// Milliseconds until a command prints its first byte.
double until_first_byte(std::vector<std::string> words) {
    int ends[2];
    if (pipe(ends) != 0) return -1;
    const auto begin = std::chrono::steady_clock::now();
    const pid_t child = fork();
    if (child == 0) {
        dup2(ends[1], STDOUT_FILENO);
        close(ends[0]);
        close(ends[1]);
        std::vector<char *> argv{const_cast<char *>(BEADBOOK_PROGRAM)};
        for (auto &word : words) argv.push_back(word.data());
        argv.push_back(nullptr);
        execv(BEADBOOK_PROGRAM, argv.data());
        _exit(127);
    }
    close(ends[1]);
    char byte = 0;
    const bool came = read(ends[0], &byte, 1) == 1;
    const double out =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
    close(ends[0]);
    kill(child, SIGKILL);
    int status = 0;
    waitpid(child, &status, 0);
    return came ? out : -1;
}

} // namespace

void typing(Figures &figures) {
    typed_script(figures, "stack-by-commands", "900 keys");
    typed_script(figures, "stack-at-prompt", "700 keys");
    typed_script(figures, "class-of-60", "12 commands");
}

void first_output(Figures &figures) {
    const TemporaryFolder folder;
    setenv("BEADBOOK_BOOK", folder.file("book.db").c_str(), 1);
    if (!fill_record(folder.file(""), 20'000)) return;
    const std::vector<std::vector<std::string>> calls{
        {"show", "C-9999"},
        {"judge", "C-9999", "--no-record"},
        {"why", "C-9999"},
        {"coupons"},
        {"coupons", "--cohort", "class-7"},
        {"coupons", "--welder", "L77"},
        {"judge", "--all", "--no-record"},
        {"summary", "--cohort", "class-7"},
        {"welders"},
        {"due"},
        {"history", "C-9999"},
    };
    for (const auto &words : calls) {
        std::vector<double> times;
        for (int n = 0; n < 5; ++n) times.push_back(until_first_byte(words));
        std::string call;
        for (const auto &word : words) call += (call.empty() ? "" : " ") + word;
        figures.add("first output/" + call, median(times), "ms", "of 20,000 coupons; bar 100");
    }
    unsetenv("BEADBOOK_BOOK");
}

} // namespace beadbook::bench
