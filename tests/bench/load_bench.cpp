#include "load_bench.hpp"

#include "bench_client.hpp"
#include "large_record.hpp"
#include "temporary.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <map>
#include <random>
#include <string>
#include <thread>

namespace beadbook::bench {
namespace {

constexpr int coupons = 20'000;
constexpr int browsers = 20;
constexpr int exams_each = 4, finds_each = 5;

/// What one browser met.
struct Met {
    std::map<std::string, std::vector<double>> reads; ///< milliseconds, by the kind of page
    std::vector<double> writes;
    std::vector<std::string> errors;

    void add(const Met &other) {
        for (const auto &[kind, times] : other.reads)
            reads[kind].insert(reads[kind].end(), times.begin(), times.end());
        writes.insert(writes.end(), other.writes.begin(), other.writes.end());
        errors.insert(errors.end(), other.errors.begin(), other.errors.end());
    }
    std::vector<double> all_reads() const {
        std::vector<double> out;
        for (const auto &[kind, times] : reads) out.insert(out.end(), times.begin(), times.end());
        return out;
    }
};

/// Somebody who carries exams through, one coupon after the other.
class Technician {
public:
    Technician(BenchClient client, int number, std::chrono::milliseconds breath)
        : client_(std::move(client)), number_(number), breath_(breath),
          random_(static_cast<unsigned>(number)) {}

    /// `from`: the first of the waiting coupons that this run takes.
    Met work(int from) {
        for (int exam = 0; exam < exams_each; ++exam)
            carry_through("C-" + std::to_string(4 * (from + exam * browsers + number_ + 1)));
        return std::move(met_);
    }

private:
    void carry_through(const std::string &mark) {
        look("list", "/");
        look("coupon", "/coupon/" + mark);
        const std::string exam = write("/coupon/" + mark + "/exam", {{"method", "MT"}, {"level", "II"}});
        if (exam.empty()) return;
        look("exam", exam);
        for (int n = 1; n <= finds_each; ++n) {
            write(exam + "/log", {{"line", "crack 0.0" + std::to_string(n) + " at " + std::to_string(n)}});
            look("exam", exam);
            look("board", "/class?cohort=class-" + std::to_string(any(40)));
            look("coupon", "/coupon/C-" + std::to_string(1 + any(coupons)));
        }
        write(exam + "/finish", {{"found", std::to_string(finds_each)}});
        look("exam", exam);
    }

    void look(const std::string &kind, const std::string &path) {
        breathe();
        BenchClient::Got got;
        met_.reads[kind].push_back(seconds_of([&] { got = client_.get(path); }) * 1e3);
        if (got.status != 200) fail(path, got);
    }

    /// Where the browser is sent on to.
    std::string write(const std::string &path, const BenchClient::Fields &fields) {
        breathe();
        BenchClient::Got got;
        met_.writes.push_back(seconds_of([&] { got = client_.post(path, fields); }) * 1e3);
        if (got.status != 303) fail(path, got);
        return got.next;
    }

    void fail(const std::string &path, const BenchClient::Got &got) {
        met_.errors.push_back(path + ": " + std::to_string(got.status) + "\n" + got.body);
    }

    int any(int below) { return std::uniform_int_distribution<int>(0, below - 1)(random_); }

    void breathe() {
        if (breath_.count() > 0)
            std::this_thread::sleep_for(
                std::chrono::milliseconds(any(2 * static_cast<int>(breath_.count()))));
    }

    BenchClient client_;
    int number_;
    std::chrono::milliseconds breath_;
    std::mt19937 random_;
    Met met_;
};

double at(std::vector<double> all, double share) {
    std::sort(all.begin(), all.end());
    return all.empty() ? -1
                       : all[std::min(all.size() - 1,
                                      static_cast<std::size_t>(share * static_cast<double>(all.size())))];
}

Met all_at_once(BenchClient &first, int from, std::chrono::milliseconds breath) {
    std::vector<Technician> all;
    for (int n = 0; n < browsers; ++n) all.emplace_back(BenchClient(first.new_link()), n, breath);
    std::vector<Met> met(all.size());
    std::vector<std::thread> threads;
    for (std::size_t n = 0; n < all.size(); ++n)
        threads.emplace_back([&, n] {
            try {
                met[n] = all[n].work(from);
            } catch (const std::exception &e) {
                met[n].errors.emplace_back(e.what());
            }
        });
    for (auto &thread : threads) thread.join();
    Met out;
    for (const auto &one : met) out.add(one);
    return out;
}

void tell(Figures &figures, const std::string &name, const Met &met, double seconds, bool barred) {
    const auto bar = [&](const char *text) {
        return std::string("ms") + (barred ? std::string("; bar ") + text : "");
    };
    const auto reads = met.all_reads();
    for (const auto &[kind, times] : met.reads)
        figures.add(name + "/" + kind + ", p50", at(times, 0.5), "ms");
    figures.add(name + "/reads, p50", at(reads, 0.5), "ms");
    figures.add(name + "/reads, p99", at(reads, 0.99), bar("50"), "of " + std::to_string(reads.size()));
    figures.add(name + "/writes, p50", at(met.writes, 0.5), "ms");
    figures.add(name + "/writes, p99", at(met.writes, 0.99), bar("150"),
                "of " + std::to_string(met.writes.size()));
    figures.add(name + "/requests", static_cast<double>(reads.size() + met.writes.size()) / seconds,
                "a second");
    figures.add(name + "/errors", static_cast<double>(met.errors.size()), "errors; bar 0");
    if (!met.errors.empty()) std::fprintf(stderr, "%s\n", met.errors.front().c_str());
}

} // namespace

void under_load(Figures &figures) {
    const test::TemporaryFolder folder;
    setenv("BEADBOOK_BOOK", folder.file("book.db").c_str(), 1);
    if (!fill_record(folder.file(""), coupons)) return;
    const BenchServer server;
    BenchClient first(server.link());
    BenchClient::Got page;
    const double cold = seconds_of([&] { page = first.get("/"); });
    figures.add("load/first page, cold", cold * 1e3, "ms", "of 20,000 coupons");
    figures.add("load/first page", static_cast<double>(page.body.size()) / 1e3, "kB; bar 100");
    int from = 0;
    for (const auto &[name, breath] : {std::pair("load/20 people", 500), std::pair("load/flat out", 0)}) {
        Met met;
        const double seconds =
            seconds_of([&] { met = all_at_once(first, from, std::chrono::milliseconds(breath)); });
        tell(figures, name, met, seconds, breath > 0);
        from += exams_each * browsers;
    }
    figures.add("load/memory of the server", server.most_megabytes(), "MB; bar 200");
    unsetenv("BEADBOOK_BOOK");
}

} // namespace beadbook::bench
