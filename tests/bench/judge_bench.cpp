#include "judge_bench.hpp"

#include "by_hand.hpp"
#include "by_node.hpp"
#include "by_sqlite.hpp"
#include "criteria/load.hpp"
#include "criteria/shipped.hpp"
#include "judge/bound_set.hpp"

#include <bit>
#include <cstdio>
#include <cstdlib>

namespace beadbook::bench {
namespace {

constexpr std::size_t coupons = 100'000;

JobDone done(std::size_t rejected, double seconds, std::size_t of) {
    return {rejected, seconds * 1e9 / static_cast<double>(of)};
}

/// Runs `judge_one` over all of `list`; it tells how many classes were rejected.
template <class List, class F>
JobDone over_all(const List &list, F judge_one) {
    std::size_t rejected = 0;
    const double seconds = processor_seconds_of([&] {
        for (const auto &one : list) rejected += judge_one(one);
    });
    return done(rejected, seconds, list.size());
}

std::size_t rejected_of(const Judgement &judgement) {
    std::size_t out = 0;
    for (const auto &c : judgement.classes) out += c.verdict == Verdict::reject;
    return out;
}

std::vector<Indication> finds(std::mt19937 &random, int count, std::int64_t inches) {
    const Vocabulary &v = Vocabulary::shipped();
    const TypeId types[] = {*v.find("gas pore"), *v.find("slag inclusion")};
    std::vector<Indication> out;
    for (int n = 0; n < count; ++n) {
        Indication i;
        i.number = n + 1;
        i.exam = Exam::RT;
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

std::string head(const std::string &rules) {
    return "set: bench\ntitle: Bench\nedition: bench\nunits: in\nclasses: [A]\n" + rules;
}

/// A set with one rule for each shape of growth.
std::string hostile_set(const std::string &of) {
    const std::string tail = ", clause: c, standing: {house: x}}\n";
    if (of == "merging")
        return head("merge:\n  - {id: m, types: any, exams: RT, when: gap under larger size" + tail +
                    "rules:\n  - {id: r, types: any, exams: RT, measure: size, at most: {A: 1000 in}" + tail);
    if (of == "one place")
        return head("rules:\n  - {id: r, types: any, exams: RT, measure: size, at most: {A: 1000 in}" + tail);
    if (of == "area")
        return head(
            "rules:\n  - {id: r, types: any, exams: RT, measure: count, window: \"6 in2, longest side "
            "6 in\", at most: {A: 10}" +
            tail);
    return head("rules:\n  - {id: r, types: any, exams: RT, measure: sum of length, window: 6 in, at most: "
                "{A: 1 in}" +
                tail);
}

void grow(Figures &figures, const std::string &name, const CriteriaSet &set,
          const std::vector<Indication> &found, std::int64_t inches) {
    const Coupon coupon = known_coupon(job_thickness, inches * nm_per_inch);
    const double seconds = processor_seconds_of([&] { judge(set, coupon, all_exams, found); });
    figures.add("growth/" + name + "/" + std::to_string(found.size()),
                seconds * 1e9 / static_cast<double>(found.size()), "ns a find");
}

/// Engines that take a thousand times as long judge fewer, and must reject as many of these as we do by hand.
bool rule_engines(Figures &figures, std::vector<PoresOfCoupon> pores) {
    const char *folder = std::getenv("BEADBOOK_PEERS");
    if (!folder) {
        std::fprintf(stderr, "rule engines of npm are left out: tests/bench/run brings them\n");
        return true;
    }
    pores.resize(coupons / 10);
    std::size_t rejected = 0;
    for (const auto &one : pores) rejected += static_cast<std::size_t>(std::popcount(judge_by_hand(one)));
    for (const auto &[name, one] : judge_by_node(folder, pores)) {
        figures.add("pores/" + name, one.ns_each / 1e3, "us a coupon",
                    std::to_string(one.rejected) + " classes rejected, of a tenth of the coupons");
        figures.ratio("pores/" + name, "pores/judge, bound once");
        if (one.rejected == rejected) continue;
        std::fprintf(stderr, "they do not agree: %s\n", name.c_str());
        return false;
    }
    return true;
}

} // namespace

bool judge_beside_peers(Figures &figures) {
    const auto pores = random_pores(coupons);
    std::vector<std::vector<Indication>> found;
    for (const auto &one : pores) found.push_back(as_indications(one));
    const auto set = shipped_criteria(job_set);
    const Coupon coupon = known_coupon(job_thickness, job_weld);
    const BoundSet bound(*set, coupon, Vocabulary::shipped(), engine_number);

    std::vector<std::pair<std::string, JobDone>> all;
    all.emplace_back("by hand, verdicts alone", over_all(pores, [](const PoresOfCoupon &p) {
                         return static_cast<std::size_t>(std::popcount(judge_by_hand(p)));
                     }));
    all.emplace_back("by hand, with reasons", over_all(pores, [](const PoresOfCoupon &p) {
                         std::size_t out = 0;
                         for (const auto &c : judge_by_hand_with_reasons(p)) out += c.rejected;
                         return out;
                     }));
    all.emplace_back("judge, bound once", over_all(found, [&](const std::vector<Indication> &f) {
                         return rejected_of(judge(bound, all_exams, f));
                     }));
    all.emplace_back("judge, bound each time", over_all(found, [&](const std::vector<Indication> &f) {
                         return rejected_of(judge(*set, coupon, all_exams, f));
                     }));
    all.emplace_back("SQLite", judge_by_sqlite(pores));
    for (const auto &[name, one] : all)
        figures.add("pores/" + name, one.ns_each / 1e3, "us a coupon",
                    std::to_string(one.rejected) + " classes rejected");
    figures.ratio("pores/judge, bound once", "pores/by hand, with reasons");
    figures.ratio("pores/SQLite", "pores/judge, bound once");
    for (const auto &[name, one] : all)
        if (one.rejected != all.front().second.rejected) {
            std::fprintf(stderr, "they do not agree: %s\n", name.c_str());
            return false;
        }
    return rule_engines(figures, pores);
}

void judge_by_sets(Figures &figures) {
    for (const char *name : {"mil-hdbk-1890-table-3", "ufgs-15216n", "iso-5817"}) {
        const auto set = shipped_criteria(name);
        std::mt19937 random(1);
        std::vector<std::vector<Indication>> found;
        for (std::size_t n = 0; n < coupons; ++n) found.push_back(finds(random, 5, 8));
        const Coupon coupon = known_coupon(job_thickness, job_weld);
        const BoundSet bound(*set, coupon, Vocabulary::shipped(), engine_number);
        const auto classes = static_cast<double>(set->classes.size());
        const auto once = over_all(
            found, [&](const std::vector<Indication> &f) { return rejected_of(judge(bound, all_exams, f)); });
        const auto each = over_all(found, [&](const std::vector<Indication> &f) {
            return rejected_of(judge(*set, coupon, all_exams, f));
        });
        figures.add(std::string("judge/") + name + ", bound once", classes * 1e9 / once.ns_each,
                    "verdicts a second", std::to_string(set->classes.size()) + " classes a coupon");
        figures.add(std::string("judge/") + name + ", bound each time", classes * 1e9 / each.ns_each,
                    "verdicts a second");
    }
}

void judge_growth(Figures &figures) {
    const auto shipped = shipped_criteria(job_set);
    for (const int n : {1'000, 10'000, 100'000, 1'000'000}) {
        std::mt19937 random(2);
        const int inches = std::min(n, 15'000);
        auto found = finds(random, n, inches);
        grow(figures, "as they come", *shipped, found, inches);
        // As dense as a million on the longest weld: reasons a find stay as many, which is most of the work.
        const int as_dense = 2 + static_cast<int>(std::int64_t{n} * 15'000 / 1'000'000);
        grow(figures, "as dense", *shipped, finds(random, n, as_dense), as_dense);
        for (const std::string of : {"worst window", "merging", "area", "one place"}) {
            if (of == "one place")
                for (auto &i : found) {
                    i.place = Span{{0}, {i.measures[Quantity::length]}};
                    i.across = Span{{0}, {0}};
                }
            if (of == "area") {
                // So far apart across that no rectangle ever holds too many, which would end the search. A
                // million on the longest weld there is lie too close along for that.
                if (n > 100'000) continue;
                for (auto &i : found) {
                    const std::int64_t across = (i.number * 7919 % 97 - 48) * nm_per_inch;
                    i.across = Span{{across}, {across}};
                }
            }
            const auto loaded = load_criteria(hostile_set(of));
            if (!loaded.set) {
                std::fprintf(stderr, "%s: %s\n", of.c_str(), loaded.issues.front().text.c_str());
                continue;
            }
            grow(figures, of, *loaded.set, found, inches);
        }
    }
}

} // namespace beadbook::bench
