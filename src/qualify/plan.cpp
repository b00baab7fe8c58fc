#include "qualify/plan.hpp"

#include "measure/parse.hpp"
#include "qualify/cover_table.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

constexpr std::size_t most_candidates = 200'000;
constexpr std::size_t most_tests_told = 5'000; ///< that are looked through for the nearest one

class Planner {
public:
    Planner(const Work &work, const std::vector<std::vector<VariableRange>> &held)
        : work_(work), rules_(*work.rules), held_(held) {
        for (const auto &variable : rules_.variables) tables_.emplace_back(rules_, variable, work.jobs);
        for (const auto &one : rules_.unread) tables_.emplace_back(rules_, one.variable, work.jobs);
        for (const auto &table : tables_) {
            used_.insert(table.test_traits().begin(), table.test_traits().end());
            asked_.insert(table.work_traits().begin(), table.work_traits().end());
        }
        collect_values();
    }

    Plan plan(const CoverSolver &solver, std::chrono::milliseconds patience) {
        prune();
        find_needs();
        enumerate();
        Plan out;
        out.candidates = candidates_.size();
        out.held_jobs = held_jobs_;
        out.missed = missed_;
        const SetCover cover = smallest_cover(covers_, solver, patience);
        out.minimal = cover.proven;
        out.at_least = cover.at_least;
        out.notes = cover.notes;
        Bits covered(needs_.size());
        std::vector<Weld> chosen;
        for (const std::size_t c : cover.chosen) {
            covered |= covers_[c];
            chosen.push_back(candidates_[c]);
        }
        ease(chosen);
        for (const auto &coupon : chosen) out.coupons.push_back({coupon, jobs_of(coupon)});
        out.uncertain = uncertain(out.coupons);
        explain_rest(covered, out);
        return out;
    }

private:
    /// What the candidates' traits may be: the rules' words, or the work's; the stock, or the work's and the
    /// usual sizes.
    void collect_values() {
        for (const Trait trait : used_) {
            const std::size_t i = index_of(trait);
            if (is_size(trait)) {
                auto &sizes = values_.sizes[i];
                sizes = work_.stock[i];
                if (sizes.empty()) {
                    sizes = rules_.usual_sizes[i];
                    for (const auto &job : work_.jobs)
                        if (job.sizes[i]) sizes.insert(sizes.end(), {job.sizes[i]->from, job.sizes[i]->to});
                }
                std::sort(sizes.begin(), sizes.end());
                sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
                continue;
            }
            auto &words = values_.words[i];
            words = rules_.test_words[i];
            if (!words.empty()) continue;
            for (const auto &job : work_.jobs)
                for (const auto &word : job.words[i])
                    if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
        }
        kept_ = values_;
    }

    /// Calls `tell` with each combination of the kept values of `traits`, the rest of `weld` as it is.
    template <class F>
    void combine(const std::vector<Trait> &traits, std::size_t at, Weld &weld, const F &tell) const {
        if (at == traits.size()) return tell(weld);
        const Trait trait = traits[at];
        const auto each = [&](const auto &values, auto &place) {
            for (const auto &value : values) {
                place = value;
                combine(traits, at + 1, weld, tell);
            }
            if (values.empty()) combine(traits, at + 1, weld, tell);
            weld.forget(trait);
        };
        if (is_size(trait))
            each(kept_.sizes[index_of(trait)], weld.size(trait));
        else
            each(kept_.words[index_of(trait)], weld.word(trait));
    }

    /// Whether a coupon with `b` covers at least what the same with `a` does, whatever the rest of it is.
    template <class Value>
    bool dominates(Trait trait, const Value &b, const Value &a) {
        for (auto &table : tables_) {
            std::vector<Trait> others = table.test_traits();
            const auto here = std::find(others.begin(), others.end(), trait);
            if (here == others.end()) continue;
            others.erase(here);
            bool all = true;
            Weld weld;
            combine(others, 0, weld, [&](Weld &w) {
                if (!all) return;
                put(w, trait, a);
                const Bits &with_a = table.row(w);
                put(w, trait, b);
                all = with_a.is_subset_of(table.row(w));
                w.forget(trait);
            });
            if (!all) return false;
        }
        return true;
    }
    static void put(Weld &weld, Trait trait, const std::string &word) { weld.word(trait) = word; }
    static void put(Weld &weld, Trait trait, const Exact &size) { weld.size(trait) = size; }

    /// A tube's wall is less than half its diameter, and so is a groove weld in it (common practice,
    /// geometry).
    static bool fits_in(const Exact &thick, const Exact &diameter) { return thick + thick < diameter; }
    static bool possible(const Weld &weld) {
        const auto &diameter = weld.size(Trait::diameter);
        if (!diameter || weld.word(Trait::form) != "tube") return true;
        const auto fits = [&](Trait trait) {
            const auto &thick = weld.size(trait);
            return !thick || fits_in(*thick, *diameter);
        };
        return fits(Trait::thickness) && (weld.word(Trait::joint) == "fillet" || fits(Trait::weld_thickness));
    }
    /// As it can be made, if at all: where no wall is in stock any is to be had, so that one which makes no
    /// tube is left free.
    std::optional<Weld> made(Weld test) const {
        if (possible(test)) return test;
        test.forget(Trait::thickness);
        if (!work_.stock[index_of(Trait::thickness)].empty() || !possible(test)) return std::nullopt;
        return test;
    }
    /// What can be made with value `a` must be possible with `b`, whatever the rest of it is.
    bool may_stand_in(Trait trait, std::size_t b, std::size_t a) const {
        const auto &welds = kept_.sizes[index_of(Trait::weld_thickness)],
                   &diameters = kept_.sizes[index_of(Trait::diameter)];
        switch (trait) {
        case Trait::form: return false;
        case Trait::diameter: return b > a;
        case Trait::thickness: return b < a;
        case Trait::weld_thickness:
            return std::none_of(diameters.begin(), diameters.end(), [&](const Exact &diameter) {
                return fits_in(welds[a], diameter) && !fits_in(welds[b], diameter);
            });
        case Trait::joint:
            return diameters.empty() || std::all_of(welds.begin(), welds.end(), [&](const Exact &weld) {
                       return fits_in(weld, diameters.front());
                   });
        default: return true;
        }
    }

    /// Drops values that another one stands in for. Each variable is asked about its own few cases of the
    /// work.
    void prune() {
        const auto edges = edges_of(rules_, values_);
        for (auto &table : tables_) table.set_needs(needs_of(work_.jobs, edges, table.work_traits()));
        const auto drop = [&](Trait trait, auto &kept) {
            // From the end, so that of equal ones the first, which is the easiest, stays.
            for (std::size_t i = kept.size(); i-- > 0;) {
                bool covered = false;
                for (std::size_t j = 0; j < kept.size() && !covered; ++j)
                    covered = j != i && may_stand_in(trait, j, i) && dominates(trait, kept[j], kept[i]);
                if (covered) kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(i));
            }
        };
        for (const Trait trait : used_) {
            if (is_size(trait))
                drop(trait, kept_.sizes[index_of(trait)]);
            else
                drop(trait, kept_.words[index_of(trait)]);
        }
    }

    /// The welds that are left to cover, cut by the candidates that are left, and by what is held.
    void find_needs() {
        auto edges = edges_of(rules_, kept_);
        for (auto &group : edges_of(held_)) edges.push_back(std::move(group));
        std::vector<bool> open(work_.jobs.size(), false);
        for (auto &need : needs_of(work_.jobs, edges, {asked_.begin(), asked_.end()})) {
            const bool has = std::any_of(held_.begin(), held_.end(), [&](const auto &range) {
                return covers(range, need.work).covered == Truth::yes;
            });
            if (has) continue;
            if (!open[need.job] && !held_.empty()) missed_.push_back(missed(need));
            open[need.job] = true;
            needs_.push_back(std::move(need));
        }
        for (std::size_t j = 0; j < open.size(); ++j)
            if (!open[j]) held_jobs_.push_back(j);
        for (auto &table : tables_) table.set_needs(needs_);
    }

    static std::vector<VariableCover> fails(const std::vector<VariableRange> &range, const Weld &work) {
        std::vector<VariableCover> out;
        for (auto &v : covers(range, work).variables)
            if (v.covered != Truth::yes) out.push_back(std::move(v));
        return out;
    }

    /// How far away that is: what only wants a datum is nearer than what is refused.
    static std::size_t distance(const std::vector<VariableCover> &why) {
        std::size_t out = 0;
        for (const auto &fail : why) out += fail.covered == Truth::no ? 2 : 1;
        return out;
    }

    /// The held qualification that comes nearest.
    Missed missed(const Need &need) const {
        Missed out{need.job, need.work, 0, {}};
        for (std::size_t h = 0; h < held_.size(); ++h) {
            auto why = fails(held_[h], need.work);
            if (h > 0 && distance(why) >= distance(out.fails)) continue;
            out.held = h;
            out.fails = std::move(why);
        }
        return out;
    }

    Bits covered_by(const Weld &test) {
        Bits out(needs_.size());
        out.set();
        for (auto &table : tables_) {
            out &= table.row(test);
            if (out.none()) break;
        }
        return out;
    }

    void enumerate() {
        std::set<Bits> seen;
        Weld weld;
        combine({used_.begin(), used_.end()}, 0, weld, [&](const Weld &tried) {
            const auto test = made(tried);
            if (!test) return;
            Bits bits = covered_by(*test);
            if (bits.none() || !seen.insert(bits).second) return;
            if (candidates_.size() >= most_candidates)
                throw InputError(
                    "there are too many coupons to weigh; plan the work in parts, or name the stock");
            candidates_.push_back(*test);
            covers_.push_back(std::move(bits));
        });
    }

    /// Values with those that the jobs have themselves first: a shop welds its coupons in the metal at hand.
    std::vector<std::string> in_favour(Trait trait, const std::vector<std::size_t> &jobs) const {
        const auto &all = values_.words[index_of(trait)];
        std::vector<std::string> out;
        for (const std::size_t j : jobs)
            for (const auto &word : work_.jobs[j].words[index_of(trait)])
                if (std::find(all.begin(), all.end(), word) != all.end()) out.push_back(word);
        out.insert(out.end(), all.begin(), all.end());
        return out;
    }
    std::vector<Exact> sizes_in_favour(Trait trait, const std::vector<std::size_t> &jobs) const {
        const auto &all = values_.sizes[index_of(trait)];
        std::vector<Exact> out;
        for (const std::size_t j : jobs)
            if (const auto &sizes = work_.jobs[j].sizes[index_of(trait)])
                for (const auto &size : {sizes->from, sizes->to})
                    if (std::find(all.begin(), all.end(), size) != all.end()) out.push_back(size);
        out.insert(out.end(), all.begin(), all.end());
        return out;
    }

    /// Makes each chosen coupon as plain as it can be while all that is covered stays covered: traits that do
    /// not matter are left free, the rest goes by the jobs' own words and sizes, then by the rules' order
    /// (the easiest first) and the smallest size.
    void ease(std::vector<Weld> &chosen) {
        for (std::size_t c = 0; c < chosen.size(); ++c) {
            Bits must = covered_by(chosen[c]);
            for (std::size_t o = 0; o < chosen.size(); ++o)
                if (o != c) must -= covered_by(chosen[o]);
            const auto jobs = jobs_of(chosen[c]);
            for (const Trait trait : used_) {
                // People ask for joint and form first, so these are never left free.
                const bool named = trait == Trait::joint || trait == Trait::form;
                const auto first_that_does = [&](const auto &values) {
                    const Weld before = chosen[c];
                    const auto does = [&] {
                        return possible(chosen[c]) && must.is_subset_of(covered_by(chosen[c]));
                    };
                    chosen[c].forget(trait);
                    if (!named && does()) return;
                    for (const auto &value : values) {
                        put(chosen[c], trait, value);
                        if (does()) return;
                    }
                    chosen[c] = before;
                };
                if (is_size(trait))
                    first_that_does(sizes_in_favour(trait, jobs));
                else
                    first_that_does(in_favour(trait, jobs));
            }
        }
    }

    std::vector<std::size_t> jobs_of(const Weld &test) {
        const Bits bits = covered_by(test);
        std::set<std::size_t> out;
        for (auto n = bits.find_first(); n != Bits::npos; n = bits.find_next(n)) out.insert(needs_[n].job);
        return {out.begin(), out.end()};
    }

    std::vector<UncertainJob> uncertain(const std::vector<PlannedCoupon> &coupons) const {
        std::set<std::size_t> planned;
        for (const auto &coupon : coupons) planned.insert(coupon.jobs.begin(), coupon.jobs.end());
        std::vector<UncertainJob> out;
        for (const std::size_t j : planned)
            for (const auto &one : rules_.unread)
                if (work_.jobs[j].spans(one.variable.of) &&
                    beadbook::possible(one.variable.work, work_.jobs[j]))
                    out.push_back({j, &one});
        return out;
    }

    void explain_rest(const Bits &covered, Plan &out) const {
        std::set<std::size_t> told;
        std::vector<Weld> tests;
        std::vector<std::vector<VariableRange>> ranges;
        for (std::size_t n = 0; n < needs_.size(); ++n) {
            if (covered[n] || !told.insert(needs_[n].job).second) continue;
            if (tests.empty()) {
                Weld weld;
                combine({used_.begin(), used_.end()}, 0, weld, [&](const Weld &tried) {
                    const auto test = made(tried);
                    if (tests.size() >= most_tests_told || !test) return;
                    tests.push_back(*test);
                    ranges.push_back(range_of(rules_, *test));
                });
            }
            UncoveredJob one{needs_[n].job, needs_[n].work, std::nullopt, {}};
            for (std::size_t t = 0; t < tests.size(); ++t) {
                auto why = fails(ranges[t], needs_[n].work);
                if (one.nearest && distance(why) >= distance(one.fails)) continue;
                one.nearest = tests[t];
                one.fails = std::move(why);
            }
            out.uncovered.push_back(std::move(one));
        }
    }

    const Work &work_;
    const RangeRules &rules_;
    const std::vector<std::vector<VariableRange>> &held_;
    std::vector<CoverTable> tables_; ///< one a variable
    std::set<Trait> used_, asked_;   ///< traits of tests, of work, that matter
    TestValues values_, kept_;       ///< all that a coupon could have; those worth weighing
    std::vector<Need> needs_;
    std::vector<std::size_t> held_jobs_;
    std::vector<Missed> missed_;
    std::vector<Weld> candidates_;
    std::vector<Bits> covers_;
};

} // namespace

Plan plan_tests(const Work &work, const std::vector<std::vector<VariableRange>> &held,
                const CoverSolver &solver, std::chrono::milliseconds patience) {
    return Planner(work, held).plan(solver, patience);
}

} // namespace beadbook
