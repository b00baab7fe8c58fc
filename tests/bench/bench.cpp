// Speed, printed and never asserted: the judge beside its peers, by several sets and as finds grow in number,
// loading of the criteria, one verdict from a cold start of the program, and planning; what a stack costs to
// type, and how soon a command answers on a large record; appends, and the bench under load. With --json as
// one object to keep.
#include "append_bench.hpp"
#include "at_the_bench.hpp"
#include "criteria/load.hpp"
#include "criteria/shipped.hpp"
#include "judge_bench.hpp"
#include "load_bench.hpp"
#include "qualify/plan.hpp"
#include "scale_bench.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <random>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::bench;

namespace {

/// A rule for every thousandth of an inch of thickness, each with a limit of its own.
std::string set_of_rules(int rules) {
    std::string out =
        "set: many\ntitle: Many\nedition: bench\nunits: in\nclasses: [A, B, C]\nordered: no\nquantities:\n"
        "  T: weld thickness\nscope: not read\nrules:\n";
    for (int n = 0; n < rules; ++n) {
        const auto inches = [](int thousandths) { return std::to_string(thousandths) + "/1000 in"; };
        out += "  - {id: r" + std::to_string(n) + ", types: gas pore, exams: RT, when: \"T over " +
               inches(n) + " up to " + inches(n + 1) + "\", measure: size, at most: {A: " + inches(n + 1) +
               ", B: 0.2 x T, C: 0.3 x T}, clause: c, standing: {house: x}}\n";
    }
    return out;
}

void loading(Figures &figures) {
    for (const auto &name : shipped_sets()) {
        const std::string &text = shipped_file(name + ".yaml");
        std::vector<double> times;
        for (int run = 0; run < 21; ++run) times.push_back(seconds_of([&] { load_criteria(text); }));
        figures.add("load/" + name, median(times) * 1e3, "ms", std::to_string(text.size()) + " bytes");
    }
    figures.add("load/all shipped sets", seconds_of([] {
                                             for (const auto &name : shipped_sets())
                                                 load_criteria(shipped_file(name + ".yaml"));
                                         }) * 1e3,
                "ms; bar 300");
    const std::string many = set_of_rules(1000);
    std::vector<double> times;
    for (int run = 0; run < 11; ++run) times.push_back(seconds_of([&] { load_criteria(many); }));
    figures.add("load/1,000 rules", median(times) * 1e3, "ms; bar 100",
                std::to_string(many.size()) + " bytes");
}

int run(std::vector<std::string> words) {
    const pid_t child = fork();
    if (child == 0) {
        std::freopen("/dev/null", "w", stdout);
        std::vector<char *> argv{const_cast<char *>(BEADBOOK_PROGRAM)};
        for (auto &word : words) argv.push_back(word.data());
        argv.push_back(nullptr);
        execv(BEADBOOK_PROGRAM, argv.data());
        _exit(127);
    }
    int status = 0;
    waitpid(child, &status, 0);
    return WEXITSTATUS(status);
}

/// The program itself: process start, store opened, criteria loaded, judged, stored. Each on a coupon of its
/// own, so that what earlier runs stored is not read again.
void cold_start(Figures &figures) {
    const std::string book = "/tmp/beadbook-bench-" + std::to_string(getpid()) + ".db";
    setenv("BEADBOOK_BOOK", book.c_str(), 1);
    std::vector<double> nothing, judged, stored;
    for (int n = 0; n < 101; ++n) {
        const std::string id = "T-" + std::to_string(n);
        if (run({"register", id, "--criteria", "mil-hdbk-1890-table-3", "--joint", "groove", "--thickness",
                 "0.25in", "--magnetic", "yes", "--material", "steel", "--process", "GTAW"}) != 0 ||
            run({"exam", id, "RT"}) != 0 ||
            run({"log", id, "pore 0.04 at 1", "pore 0.05 at 2", "slag .1x.02 at 3"}) != 0)
            return;
        nothing.push_back(seconds_of([] { run({"--version"}); }));
        judged.push_back(seconds_of([&] { run({"judge", id, "--no-record"}); }));
        stored.push_back(seconds_of([&] { run({"judge", id}); }));
    }
    figures.add("cold start/program", median(nothing) * 1e3, "ms", "median of 101 new processes");
    figures.add("cold start/one verdict", median(judged) * 1e3, "ms");
    figures.add("cold start/one verdict, stored durably", median(stored) * 1e3, "ms");
    unlink(book.c_str());
}

/// 200 production welds that differ in everything the rules look at.
std::string shop_of_200(const std::string &rules, std::mt19937 &random) {
    const auto of = [&](const std::vector<std::string> &list) {
        return list[std::uniform_int_distribution<std::size_t>(0, list.size() - 1)(random)];
    };
    const bool iso = rules == "iso-9606-1";
    std::string out = "rules: " + rules + "\nunits: " + (iso ? "mm" : "in") + "\nwork:\n";
    for (int i = 0; i < 200; ++i) {
        const std::string joint = of({"groove", "fillet"}), form = of({"sheet", "plate", "tube"});
        const std::string from =
            iso ? of({"1.5", "2", "2.6", "3.2", "4", "6", "8", "10", "12.5"})
                : of({"0.025", "0.035", "0.049", "0.065", "0.083", "0.12", "0.188", "0.28"});
        const std::string to = iso ? of({"12.5", "16", "20", "25"}) : of({"0.28", "0.375", "0.432", "0.5"});
        out += "  - {id: w" + std::to_string(i) + ", joint: " + joint + ", form: " + form +
               ", thickness: " + from + " to " + to + ", weld thickness: " + from + " to " + to;
        if (form == "tube")
            out += ", diameter: " +
                   (iso ? of({"21.3", "33.7", "60.3", "114.3"}) + " to " + of({"114.3", "219.1"})
                        : of({"0.84", "1.315", "2.375", "4.5"}) + " to " + of({"4.5", "8.625"}));
        if (iso)
            out += ", process: \"" + of({"135", "141", "138"}) + "\", transfer: " + of({"S", "D"}) +
                   ", filler group: " + of({"FM1", "FM2", "FM3", "FM5"}) +
                   ", filler type: " + of({"S", "M"}) + ", backing: " + of({"ss nb", "ss mb", "bs"}) +
                   ", runs: " + of({"sl", "ml"}) + ", rotated: " + of({"\"yes\"", "\"no\""}) +
                   ", position: [" +
                   (joint == "groove" ? of({"PA", "PA, PC", "PF, PH", "PE"})
                                      : of({"PA", "PA, PB", "PF", "PH"})) +
                   "]}\n";
        else
            out += ", process: " + of({"GTAW", "GMAW", "SMAW"}) +
                   ", transfer: " + of({"spray", "short-circuit"}) + ", metal group: " +
                   (rules == "asme-ix" ? of({"P1", "P8"}) : of({"Ia", "IIa", "IV", "VI"})) +
                   ", filler group: " + of({"F3", "F4", "F6"}) + ", backing: " + of({"with", "without"}) +
                   ", progression: " + of({"up", "down"}) + ", position: [" +
                   of({"F", "F, H", "V", "F, H, V, O"}) + "]}\n";
    }
    return out;
}

void planning(Figures &figures) {
    for (const std::string rules : {"aws-d17.1", "asme-ix", "iso-9606-1"}) {
        std::mt19937 random(7);
        std::vector<double> times;
        std::size_t coupons = 0;
        for (int n = 0; n < 11; ++n) {
            std::string text = shop_of_200(rules, random);
            if (rules == "aws-d17.1") // its words are fewer
                for (const char *extra : {", transfer: spray", ", transfer: short-circuit"})
                    for (std::size_t at; (at = text.find(extra)) != std::string::npos;)
                        text.erase(at, std::strlen(extra));
            const LoadedWork loaded = load_work(text, "", shipped_range_rules);
            if (!loaded.work) {
                std::printf("plan     %s: %s\n", rules.c_str(), loaded.issues.front().text.c_str());
                return;
            }
            times.push_back(seconds_of([&] { coupons = plan_tests(*loaded.work).coupons.size(); }));
        }
        std::sort(times.begin(), times.end());
        figures.add("plan/" + rules + ", 200 welds, median", times[5] * 1e3, "ms",
                    std::to_string(coupons) + " coupons in the last");
        figures.add("plan/" + rules + ", 200 welds, worst of 11", times.back() * 1e3, "ms");
    }
}

} // namespace

int main(int count, char **words) {
    const std::vector<std::string> asked(words + 1, words + count);
    const auto is_asked = [&](const char *word) {
        return std::find(asked.begin(), asked.end(), word) != asked.end();
    };
    Figures figures(is_asked("--json"));
    if (const auto scale = std::find(asked.begin(), asked.end(), "--scale"); scale != asked.end()) {
        at_scale(figures, scale + 1 == asked.end() ? 100'000 : std::atoi((scale + 1)->c_str()));
        figures.finish();
        return 0;
    }
    if (is_asked("--load")) {
        appends(figures);
        under_load(figures);
        figures.finish();
        return 0;
    }
    // First: forking a process that has grown large is slow and would be measured too.
    if (!is_asked("--judge")) {
        cold_start(figures);
        first_output(figures);
        appends(figures);
        under_load(figures);
    }
    const bool agree = judge_beside_peers(figures);
    judge_by_sets(figures);
    judge_growth(figures);
    if (!is_asked("--judge")) {
        loading(figures);
        planning(figures);
        typing(figures);
    }
    figures.finish();
    return agree ? 0 : 1;
}
