// What the program tells of itself, and the options that come with every command.
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "run.hpp"
#include "terminal/command.hpp"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

void write(const std::string &path, const std::string &text) { std::ofstream(path) << text; }

} // namespace

TEST_CASE("completions and manual pages name every command and each of its options") {
    const Program run;
    const std::string bash = run.ok({"completion", "bash"}), zsh = run.ok({"completion", "zsh"}),
                      fish = run.ok({"completion", "fish"}), all = run.ok({"manual"});
    for (const auto &command : commands()) {
        INFO(command.name());
        const std::string page = run.ok({"manual", command.name()});
        CHECK(bash.find("    " + command.name() + ") words=") != std::string::npos);
        CHECK(zsh.find("'" + command.name() + ":") != std::string::npos);
        CHECK(fish.find(" -a " + command.name() + " -d ") != std::string::npos);
        CHECK(all.find("beadbook\\-" + command.name() + " (1)") != std::string::npos);
        for (const auto &option : command.options) {
            INFO(option.name);
            CHECK(bash.find("--" + option.name) != std::string::npos);
            CHECK(zsh.find("--" + option.name) != std::string::npos);
            CHECK(fish.find(" -l " + option.name) != std::string::npos);
            std::string in_page = "--" + option.name;
            for (std::size_t at = 0; (at = in_page.find('-', at)) != std::string::npos; at += 2)
                in_page.insert(at, "\\");
            CHECK(page.find(in_page) != std::string::npos);
        }
    }
    CHECK(bash.find("passed") != std::string::npos);
    CHECK(run({"completion", "tcsh"}).code == 2);
    CHECK(run({"manual", "jugde"}).err.find("did you mean 'judge'?") != std::string::npos);
}

TEST_CASE("bash takes the completion, and man the pages") {
    const Program run;
    write(run.file("completion"), run.ok({"completion", "bash"}));
    CHECK(std::system(("bash -n '" + run.file("completion") + "'").c_str()) == 0);
    write(run.file("words"), "source '" + run.file("completion") +
                                 "'\nCOMP_WORDS=(beadbook grade T-1 pa); COMP_CWORD=3\n_beadbook\n"
                                 "[ \"${COMPREPLY[*]}\" = passed ] || exit 1\n"
                                 "COMP_WORDS=(beadbook register T-1 --joint gr); COMP_CWORD=4\n_beadbook\n"
                                 "[ \"${COMPREPLY[*]}\" = groove ]\n");
    CHECK(std::system(("bash '" + run.file("words") + "'").c_str()) == 0);
}

TEST_CASE("a dry run tells what it would do, and stores nothing") {
    const Program run;
    const Run first = run({"register", "T-1", "--dry-run"});
    CHECK(first.code == 0);
    CHECK(first.out.find("it would be so (--dry-run):\ncoupon T-1 registered") == 0);
    CHECK(first.err.find("nothing was stored: --dry-run") != std::string::npos);
    CHECK_FALSE(std::filesystem::exists(run.book()));
    run.ok({"register", "T-1"});
    CHECK(run({"exam", "T-1", "VT", "-n"}).code == 0);
    CHECK(run({"register", "T-1", "-n"}).code == 3); // refused as it would be
    CHECK(run.ok({"show", "T-1"}).find("VT") == std::string::npos);
    CHECK(run({"exam", "T-1", "VT", "-n", "--json"}).out.find("nothing was stored") != std::string::npos);
    for (const auto &command : commands()) {
        const auto options = command.options;
        INFO(command.name());
        CHECK(command.enters == std::any_of(options.begin(), options.end(),
                                            [](const Option &o) { return o.name == "dry-run"; }));
    }
}

TEST_CASE("quiet prints mistakes alone, and colour is as it is asked for") {
    const Program run;
    CHECK(run.ok({"register", "T-1", "--quiet"}).empty());
    CHECK(run.ok({"coupons", "-q"}).empty());
    const Run twice = run({"register", "T-1", "-q"});
    CHECK(twice.code == 3);
    CHECK_FALSE(twice.err.empty());
    CHECK(run.ok({"coupons", "--color", "always"}).find("\x1b[") != std::string::npos);
    CHECK(run.ok({"coupons", "--color", "never"}).find("\x1b[") == std::string::npos);
    CHECK(run({"coupons", "--color", "blue"}).code == 2);
}

TEST_CASE("settings are habits: what a person states is said in each call") {
    const Program run;
    for (const char *statement :
         {"exam: {found: none}", "log: {sure: yes}", "log: {finish: yes}", "correct: {why: slip}",
          "grade: {remark: fine}", "sheet: {again: yes}", "qualify: {override: known}",
          "exam: {incomplete: broke off}", "register: {thickness: 1in}", "register: {mechanical: passed}",
          "exam: {examiner: A. Field}", "exam: {level: II}", "change: {class: A}",
          "judge: {criteria: iso-5817}", "every: {criteria: iso-5817}", "every: {why: slip}"}) {
        INFO(statement);
        write(run.settings(), std::string(statement) + "\n");
        const Run bad = run({"coupons"});
        CHECK(bad.code == 3);
        CHECK(bad.err.find("is said in each call by whoever acts") != std::string::npos);
    }
    write(run.settings(), "exam: {procedure: VT-1}\n");
    run.ok({"settings"});
}

TEST_CASE("a habit of the settings does not go before what --like takes over") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "ufgs-15216n", "--units", "in"});
    write(run.settings(), "register: {criteria: iso-5817, class: B, units: mm}\n");
    run.ok({"register", "T-2", "--like", "T-1"});
    const std::string shown = run.ok({"show", "T-2"});
    CHECK(shown.find("ufgs-15216n") != std::string::npos);
    CHECK(shown.find("iso-5817") == std::string::npos);
    CHECK(shown.find("mm") == std::string::npos);
}

TEST_CASE("settings hold where a call does not say it, and each tells where it comes from") {
    const Program run;
    const std::string file = run.settings();
    CHECK_THAT(run.ok({"settings"}), says("is not there"));
    write(file, "every: {by: somebody, color: always}\n"
                "register:\n  criteria: ufgs-15216n\n  units: in\n"
                "coupons: {color: never}\n");
    run.ok({"register", "T-1", "--thickness", "0.25"}); // in inches, by the settings
    const std::string shown = run.ok({"show", "T-1", "--color", "never"});
    CHECK(shown.find("ufgs-15216n") != std::string::npos);
    run.ok({"register", "T-2", "--criteria", "iso-5817"}); // the call's word goes before
    CHECK(run.ok({"show", "T-2", "--color", "never"}).find("iso-5817") != std::string::npos);
    CHECK(run.ok({"coupons"}).find("\x1b[") == std::string::npos); // a command's own before every one's
    CHECK(run.ok({"show", "T-1"}).find("\x1b[") != std::string::npos);
    const std::string all = run.ok({"settings", "--color", "never"});
    CHECK(all.find("ufgs-15216n") != std::string::npos);
    CHECK(all.find(file + ":3)") != std::string::npos);
    CHECK(all.find("(BEADBOOK_USER)") != std::string::npos);
    // A variable of the environment goes before the file: the test's is "tester".
    CHECK(run.ok({"history", "T-1", "--color", "never"}).find("tester") != std::string::npos);
    write(file, "every: {colour: never}\nregster: {units: in}\nexam: {ask: no}\n");
    const Run bad = run({"coupons"});
    CHECK(bad.code == 3);
    for (const char *fault : {"there is no option 'colour'; did you mean 'color'?", ":1:", ":2:", ":3:",
                              "there is no command 'regster'; did you mean 'register'?", "expected yes"}) {
        INFO(fault << " in " << bad.err);
        CHECK(bad.err.find(fault) != std::string::npos);
    }
}
