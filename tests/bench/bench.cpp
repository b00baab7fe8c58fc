// Speed, printed and never asserted: the judge's rate, its growth with the number of indications, loading of
// the criteria, one verdict from a cold start of the program, and planning; what a stack costs to type, and
// how soon a command answers on a large record.
#include "at_the_bench.hpp"
#include "criteria/load.hpp"
#include "criteria/shipped.hpp"
#include "judge/judgement.hpp"
#include "qualify/plan.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <random>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;

namespace {

double seconds_of(const auto &work) {
    const auto begin = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

double median(std::vector<double> all) {
    std::sort(all.begin(), all.end());
    return all[all.size() / 2];
}

Coupon coupon_of(std::int64_t inches) {
    Coupon c;
    c.facts.fill(1);
    for (std::size_t q = 0; q < coupon_quantities; ++q)
        c.values.set(static_cast<Quantity>(q), Exact(nm_per_inch / 4));
    c.values.set(Quantity::weld_length, Exact(inches * nm_per_inch));
    c.line.length = Length{inches * nm_per_inch};
    return c;
}

std::vector<Indication> indications_of(std::mt19937 &random, int count, std::int64_t inches, Exam exam) {
    const Vocabulary &v = Vocabulary::shipped();
    const TypeId types[] = {*v.find("gas pore"), *v.find("slag inclusion")};
    std::vector<Indication> out;
    for (int n = 0; n < count; ++n) {
        Indication i;
        i.number = n + 1;
        i.exam = exam;
        i.type = types[random() % 2];
        i.measures.set(Quantity::size,
                       Exact(static_cast<std::int64_t>(1 + random() % 60) * nm_per_inch / 1000));
        const std::int64_t at = static_cast<std::int64_t>(random() % 1'000'000) *
                                (inches * nm_per_inch - nm_per_inch) / 1'000'000;
        i.place = Span{{at}, {at}};
        i.across = Span{{0}, {0}};
        i.complete(v);
        out.push_back(std::move(i));
    }
    return out;
}

const std::vector<ExamDone> all_exams{
    {Exam::VT, true, ""}, {Exam::MT, true, ""}, {Exam::PT, true, ""}, {Exam::RT, true, ""}};

void judge_rate(const std::string &name) {
    constexpr int coupons = 100'000;
    const auto set = shipped_criteria(name);
    std::mt19937 random(1);
    std::vector<std::vector<Indication>> found;
    for (int n = 0; n < coupons; ++n) found.push_back(indications_of(random, 5, 8, Exam::RT));
    const Coupon coupon = coupon_of(8);
    std::size_t rejected = 0;
    const double seconds = seconds_of([&] {
        for (const auto &f : found)
            for (const auto &c : judge(*set, coupon, all_exams, f).classes)
                rejected += c.verdict == Verdict::reject;
    });
    const double verdicts = coupons * static_cast<double>(set->classes.size());
    std::printf("judge    %-24s %9.0f coupon-class verdicts/s (%d coupons of 5 indications, %zu classes, %zu "
                "rejected)\n",
                name.c_str(), verdicts / seconds, coupons, set->classes.size(), rejected);
}

void growth() {
    const auto set = shipped_criteria("mil-hdbk-1890-table-3");
    for (const int n : {1'000, 10'000, 100'000}) {
        std::mt19937 random(2);
        const auto found = indications_of(random, n, n, Exam::RT);
        const Coupon coupon = coupon_of(n);
        std::vector<double> times;
        for (int run = 0; run < 5; ++run)
            times.push_back(seconds_of([&] { judge(*set, coupon, all_exams, found); }));
        std::printf("growth   %7d indications on one weld: %8.2f ms, %6.0f ns each\n", n, median(times) * 1e3,
                    median(times) / n * 1e9);
    }
}

void loading() {
    for (const auto &name : shipped_sets()) {
        const std::string &text = shipped_file(name + ".yaml");
        std::vector<double> times;
        for (int run = 0; run < 21; ++run) times.push_back(seconds_of([&] { load_criteria(text); }));
        std::printf("load     %-24s %6.2f ms (%zu bytes)\n", name.c_str(), median(times) * 1e3, text.size());
    }
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
void cold_start() {
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
    std::printf(
        "cold     median of 101 new processes: starting %.1f ms; one verdict %.1f ms; one verdict, stored "
        "durably %.1f ms\n",
        median(nothing) * 1e3, median(judged) * 1e3, median(stored) * 1e3);
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

void planning() {
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
        std::printf(
            "plan     %-24s 200 welds: median %.0f ms, worst of 11 %.0f ms (%zu coupons in the last)\n",
            rules.c_str(), times[5] * 1e3, times.back() * 1e3, coupons);
    }
}

} // namespace

int main() {
    cold_start(); // first: forking a process that has grown large is slow and would be measured too
    for (const char *name : {"mil-hdbk-1890-table-3", "ufgs-15216n", "iso-5817"}) judge_rate(name);
    growth();
    loading();
    planning();
    bench::typing();
    bench::first_output();
}
