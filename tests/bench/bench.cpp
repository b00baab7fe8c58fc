// Speed, printed and never asserted: the judge's rate, its growth with the number of indications, loading of
// the criteria, and one verdict from a cold start of the program.
#include "criteria/load.hpp"
#include "criteria/shipped.hpp"
#include "judge/judgement.hpp"
#include "report/judgement_json.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
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
                 "0.25", "--magnetic", "yes"}) != 0 ||
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

} // namespace

int main() {
    cold_start(); // first: forking a process that has grown large is slow and would be measured too
    for (const char *name : {"mil-hdbk-1890-table-3", "ufgs-15216n", "iso-5817"}) judge_rate(name);
    growth();
    loading();
}
