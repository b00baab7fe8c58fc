#include "qualify/cover_search.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::size_t bound_picks = 4'000, bound_work = 10'000'000;
constexpr double pick_growth = 1.04; ///< how fast a set that holds many picks becomes dear

std::size_t up(std::size_t a, std::size_t b) { return (a + b - 1) / b; }

class Search {
public:
    Search(const CoverProblem &problem, std::size_t most_steps)
        : problem_(problem), contents_(problem.contents()), steps_left_(most_steps) {
        found_.chosen = greedy_cover(problem);
        found_.at_least = std::min(cover_bound(problem), found_.chosen.size());
    }

    CoverSearch run() {
        if (found_.at_least < found_.chosen.size()) {
            Bits open(problem_.holders.size()), allowed(problem_.sets);
            open.set();
            allowed.set();
            branch(open, allowed);
            if (steps_left_ > 0) found_.at_least = found_.chosen.size();
        }
        std::sort(found_.chosen.begin(), found_.chosen.end());
        return found_;
    }

private:
    /// Sets that are needed for what is open, at least: elements of which no two share a set.
    std::size_t apart(const Bits &open, const Bits &allowed) const {
        std::vector<std::pair<std::size_t, std::size_t>> order;
        for (auto e = open.find_first(); e != Bits::npos; e = open.find_next(e))
            order.emplace_back((problem_.holders[e] & allowed).count(), e);
        std::sort(order.begin(), order.end());
        Bits used(problem_.sets);
        std::size_t out = 0;
        for (const auto &[few, e] : order) {
            const Bits holders = problem_.holders[e] & allowed;
            if (holders.intersects(used)) continue;
            used |= holders;
            ++out;
        }
        return out;
    }

    /// The same by shares: an element weighs one over the size of the largest set that holds it. In
    /// whole numbers, rounded down, so that no set weighs more than `whole`.
    std::size_t shares(const Bits &open, const Bits &allowed) const {
        constexpr std::size_t whole = 720'720;
        std::vector<std::size_t> largest(problem_.holders.size(), 0);
        for (auto s = allowed.find_first(); s != Bits::npos; s = allowed.find_next(s)) {
            const Bits mine = contents_[s] & open;
            const std::size_t size = mine.count();
            for (auto e = mine.find_first(); e != Bits::npos; e = mine.find_next(e))
                largest[e] = std::max(largest[e], size);
        }
        std::size_t sum = 0;
        for (auto e = open.find_first(); e != Bits::npos; e = open.find_next(e))
            if (largest[e] > 0) sum += whole / largest[e];
        return up(sum, whole);
    }

    /// False when that was the last of them. A step is one set of bits looked at.
    bool spend(std::size_t steps) {
        steps_left_ -= std::min(steps, steps_left_);
        return steps_left_ > 0;
    }

    /// Tries every way to cover what is open with the sets that are allowed. Ends early without steps.
    void branch(const Bits &open, Bits allowed) {
        if (open.none()) {
            if (taken_.size() < found_.chosen.size()) found_.chosen = taken_;
            return;
        }
        if (!spend(1)) return;
        if (taken_.size() + 1 >= found_.chosen.size()) return;
        if (!spend(allowed.count()) || taken_.size() + shares(open, allowed) >= found_.chosen.size()) return;
        if (!spend(2 * open.count()) || taken_.size() + apart(open, allowed) >= found_.chosen.size()) return;
        // One of the few sets that hold the hardest element is in; those tried are out for the rest.
        Bits few = problem_.holders[open.find_first()] & allowed;
        for (auto e = open.find_next(open.find_first()); e != Bits::npos; e = open.find_next(e)) {
            Bits holders = problem_.holders[e] & allowed;
            if (holders.count() < few.count()) few = std::move(holders);
        }
        std::vector<std::pair<std::size_t, std::size_t>> order;
        for (auto s = few.find_first(); s != Bits::npos; s = few.find_next(s))
            order.emplace_back(open.size() - (contents_[s] & open).count(), s);
        std::sort(order.begin(), order.end());
        for (const auto &[rest, s] : order) {
            taken_.push_back(s);
            allowed.reset(s);
            branch(open - contents_[s], allowed);
            taken_.pop_back();
            if (steps_left_ == 0 || found_.chosen.size() == found_.at_least) return;
        }
    }

    const CoverProblem &problem_;
    std::vector<Bits> contents_;
    std::size_t steps_left_;
    std::vector<std::size_t> taken_;
    CoverSearch found_;
};

} // namespace

std::vector<std::size_t> greedy_cover(const CoverProblem &problem) {
    const auto contents = problem.contents();
    Bits open(problem.holders.size());
    open.set();
    std::vector<std::size_t> out;
    while (open.any()) {
        std::size_t best = 0, most = 0;
        for (std::size_t s = 0; s < problem.sets; ++s)
            if (const std::size_t size = (contents[s] & open).count(); size > most) {
                best = s;
                most = size;
            }
        if (most == 0) return {}; // an element that no set holds
        out.push_back(best);
        open -= contents[best];
    }
    for (std::size_t i = 0; i < out.size();) {
        std::vector<std::size_t> without = out;
        without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
        if (problem.covered_by(without))
            out = std::move(without);
        else
            ++i;
    }
    return out;
}

std::size_t cover_bound(const CoverProblem &problem) {
    const std::size_t elements = problem.holders.size();
    const auto contents = problem.contents();
    // Each pick is the element whose sets are cheapest, and makes them dearer. The prices only guide: what
    // comes of it is counted.
    std::vector<double> set_price(problem.sets, 1.0), element_price(elements, 0.0);
    std::vector<std::size_t> load(problem.sets, 0);
    for (std::size_t e = 0; e < elements; ++e)
        element_price[e] = static_cast<double>(problem.holders[e].count());
    std::size_t heaviest = 0, out = 0, work = 0;
    for (std::size_t picks = 1; elements > 0 && picks <= bound_picks && work < bound_work; ++picks) {
        const auto e = static_cast<std::size_t>(std::min_element(element_price.begin(), element_price.end()) -
                                                element_price.begin());
        const Bits &holders = problem.holders[e];
        for (auto s = holders.find_first(); s != Bits::npos; s = holders.find_next(s)) {
            const double more = set_price[s] * (pick_growth - 1.0);
            set_price[s] += more;
            for (auto o = contents[s].find_first(); o != Bits::npos; o = contents[s].find_next(o), ++work)
                element_price[o] += more;
            heaviest = std::max(heaviest, ++load[s]);
        }
        work += elements;
        if (heaviest == 0) return out; // an element that no set holds
        out = std::max(out, up(picks, heaviest));
    }
    return out;
}

CoverSearch search_cover(const CoverProblem &problem, std::size_t most_steps) {
    return Search(problem, most_steps).run();
}

} // namespace beadbook
