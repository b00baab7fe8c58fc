#include "qualify/allowed.hpp"

#include "qualify/cells.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Traits of the work that some range looks at.
std::vector<Trait> asked_by(const std::vector<TestRange> &ranges) {
    std::set<Trait> out;
    for (const auto &range : ranges)
        for (const auto &one : range) {
            out.insert(one.variable->of);
            add_traits(one.variable->work, out);
            for (const auto &part : one.parts) add_traits(part.rule->work, out);
        }
    return {out.begin(), out.end()};
}

/// The first that covers it, of those in use already if there is one; and uses it.
bool use_one(const std::vector<TestRange> &ranges, const Weld &work, std::vector<std::size_t> &used) {
    const auto does = [&](std::size_t i) { return covers(ranges[i], work).covered == Truth::yes; };
    if (std::any_of(used.begin(), used.end(), does)) return true;
    for (std::size_t i = 0; i < ranges.size(); ++i)
        if (does(i)) {
            used.push_back(i);
            return true;
        }
    return false;
}

/// Of a weld that nothing covers: whether only data are missing, and which, for the one that wants the least.
Truth best_of(const std::vector<TestRange> &ranges, const Weld &work, std::vector<Lack> &lacks) {
    std::optional<std::vector<Lack>> fewest;
    for (const auto &range : ranges) {
        const Cover cover = covers(range, work);
        if (cover.covered != Truth::unknown) continue;
        std::vector<Lack> one;
        for (const auto &variable : cover.variables)
            for (const auto &lack : variable.lacks)
                if (std::find(one.begin(), one.end(), lack) == one.end()) one.push_back(lack);
        if (!fewest || one.size() < fewest->size()) fewest = std::move(one);
    }
    if (!fewest) return Truth::no;
    for (const auto &lack : *fewest)
        if (std::find(lacks.begin(), lacks.end(), lack) == lacks.end()) lacks.push_back(lack);
    return Truth::unknown;
}

} // namespace

std::vector<JobAnswer> answers_of(const std::vector<Job> &jobs, const HeldRanges &held) {
    std::vector<JobAnswer> out(jobs.size());
    std::vector<TestRange> all = held.valid;
    all.insert(all.end(), held.renewable.begin(), held.renewable.end());
    all.insert(all.end(), held.doubted.begin(), held.doubted.end());
    if (all.empty()) return out;
    for (auto &answer : out) answer.allowed = Truth::yes;
    std::vector<bool> renewed(jobs.size(), true);
    for (const auto &need : needs_of(jobs, edges_of(all), asked_by(all))) {
        JobAnswer &answer = out[need.job];
        if (use_one(held.valid, need.work, answer.by)) continue;
        Truth open = best_of(held.valid, need.work, answer.lacks);
        if (use_one(held.doubted, need.work, answer.doubted)) open = std::max(open, Truth::unknown);
        answer.allowed = both(answer.allowed, open);
        if (renewed[need.job]) renewed[need.job] = use_one(held.renewable, need.work, answer.renewals);
    }
    for (std::size_t j = 0; j < jobs.size(); ++j) {
        if (out[j].allowed != Truth::unknown) {
            out[j].lacks.clear();
            out[j].doubted.clear();
        }
        if (out[j].allowed != Truth::yes) out[j].by.clear();
        if (!renewed[j]) out[j].renewals.clear();
    }
    return out;
}

} // namespace beadbook
