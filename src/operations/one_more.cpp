#include "operations/one_more.hpp"

#include "operations/carried_in.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

constexpr std::size_t most = 5;

/// How a coupon differs from the one that is held.
enum class Other : std::uint8_t { position, joint, form, thinner, thicker };
struct Candidate {
    Other other;
    Weld coupon;
};

void add_words(std::vector<Candidate> &out, const HeldQualification &held, Trait trait, Other other) {
    for (const auto &word : held.rules->test_words[index_of(trait)]) {
        if (word == held.weld.word(trait)) continue;
        Weld coupon = held.weld;
        coupon.word(trait) = word;
        out.push_back({other, std::move(coupon)});
    }
}

void add_wall(std::vector<Candidate> &out, const HeldQualification &held, const Exact &wall, Other other) {
    Weld coupon = held.weld;
    // What is welded through stays so.
    if (coupon.size(Trait::weld_thickness) == coupon.size(Trait::thickness))
        coupon.size(Trait::weld_thickness) = wall;
    coupon.size(Trait::thickness) = wall;
    if (const auto &weld = coupon.size(Trait::weld_thickness); weld && *weld > wall) return;
    out.push_back({other, std::move(coupon)});
}

std::vector<Candidate> near(const HeldQualification &held) {
    std::vector<Candidate> out;
    add_words(out, held, Trait::position, Other::position);
    add_words(out, held, Trait::joint, Other::joint);
    add_words(out, held, Trait::form, Other::form);
    const auto &wall = held.weld.size(Trait::thickness);
    if (!wall) return out;
    std::optional<Exact> thinner, thicker;
    for (const auto &size : held.rules->usual_sizes[index_of(Trait::thickness)]) {
        if (size < *wall && (!thinner || size > *thinner)) thinner = size;
        if (size > *wall && (!thicker || size < *thicker)) thicker = size;
    }
    if (thinner) add_wall(out, held, *thinner, Other::thinner);
    if (thicker) add_wall(out, held, *thicker, Other::thicker);
    return out;
}

/// A weld of the work that is covered: like the test, but where work is called otherwise (6G, and then F).
std::optional<Weld> covered_work(const RangeRules &rules, const std::vector<VariableRange> &range,
                                 const Weld &test) {
    Weld work = test;
    for (const auto &one : range) {
        const Trait of = one.variable->of;
        const auto fits = [&] {
            const auto cover = cover_of(one, work);
            return !cover || cover->covered == Truth::yes;
        };
        if (is_size(of) || fits()) continue;
        for (const auto &word : rules.work_words[index_of(of)]) {
            work.word(of) = word;
            if (fits()) break;
        }
    }
    return covers(range, work).covered == Truth::yes ? std::optional(work) : std::nullopt;
}

/// Values of a trait that are tried: words of the work; of a size what shops weld, and where the range ends.
std::vector<Weld> tried(const RangeRules &rules, const VariableRange &range, const Weld &work) {
    const Trait of = range.variable->of;
    std::vector<Weld> out;
    if (!is_size(of)) {
        auto words = rules.work_words[index_of(of)];
        for (const auto &part : range.parts) words.insert(words.end(), part.words.begin(), part.words.end());
        for (const auto &word : words) {
            out.push_back(work);
            out.back().word(of) = word;
        }
        return out;
    }
    auto sizes = rules.usual_sizes[index_of(of)];
    for (const auto &part : range.parts)
        for (const auto &[compare, edge] : part.edges) sizes.push_back(edge);
    for (const auto &size : sizes) {
        out.push_back(work);
        out.back().size(of) = size;
    }
    return out;
}

/// What a coupon would add to a weld that is covered already, one trait at a time, and how many values in
/// all.
std::pair<std::vector<AddedRange>, std::size_t> added(const RangeRules &rules, const Weld &coupon,
                                                      const Weld &work,
                                                      const std::vector<const HeldQualification *> &held) {
    std::vector<AddedRange> out;
    std::size_t count = 0;
    const auto range = range_of(rules, coupon);
    for (const auto &one : range) {
        AddedRange added{one.variable->of, {}, {}};
        for (const Weld &weld : tried(rules, one, work)) {
            if (covers(range, weld).covered != Truth::yes) continue;
            if (std::any_of(held.begin(), held.end(), [&](const HeldQualification *q) {
                    return covers(q->range, weld).covered == Truth::yes;
                }))
                continue;
            const auto known = [&](const RangePart &part) {
                return std::any_of(added.parts.begin(), added.parts.end(),
                                   [&](const RangePart &other) { return other.rule == part.rule; });
            };
            if (!is_size(added.of) &&
                std::find(added.words.begin(), added.words.end(), weld.word(added.of)) == added.words.end()) {
                added.words.push_back(weld.word(added.of));
                ++count;
            }
            for (const auto &part : one.parts)
                if (is_size(added.of) && part.allows(added.of, weld) == Truth::yes && !known(part)) {
                    added.parts.push_back(part);
                    ++count;
                }
        }
        if (!added.words.empty() || !added.parts.empty()) out.push_back(std::move(added));
    }
    return {std::move(out), count};
}

} // namespace

std::vector<OneMore> one_more_coupon(Office &office, const WelderStanding &standing) {
    std::vector<const HeldQualification *> valid;
    for (const auto &one : standing.held)
        if (one.validity.state == Validity::State::valid && one.unreadable.empty()) valid.push_back(&one);
    struct Scored {
        OneMore more;
        std::size_t count;
    };
    std::map<Other, Scored> best;
    std::vector<std::pair<std::string, Weld>> seen; // of several coupons alike one is enough
    for (const auto *base : valid) {
        const RangeRules &rules = *base->rules;
        if (std::find(seen.begin(), seen.end(), std::pair(rules.hash, base->weld)) != seen.end()) continue;
        seen.emplace_back(rules.hash, base->weld);
        const auto work = covered_work(rules, base->range, base->weld);
        if (!work) continue;
        std::vector<const HeldQualification *> beside;
        std::copy_if(valid.begin(), valid.end(), std::back_inserter(beside),
                     [&](const auto *one) { return one->rules->hash == rules.hash; });
        for (auto &candidate : near(*base)) {
            auto [adds, count] = added(rules, candidate.coupon, *work, beside);
            const auto found = best.find(candidate.other);
            if (count == 0 || (found != best.end() && found->second.count >= count)) continue;
            best.insert_or_assign(
                candidate.other,
                Scored{
                    {base->rules, base->record.test.unit(), std::move(candidate.coupon), std::move(adds), {}},
                    count});
        }
    }
    std::vector<Scored> sorted;
    for (auto &[other, one] : best) sorted.push_back(std::move(one));
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Scored &a, const Scored &b) { return a.count > b.count; });
    std::vector<OneMore> out;
    for (auto &one : sorted)
        if (out.size() < most) out.push_back(std::move(one.more));
    if (out.empty()) return out;
    const GradedTests tests(office, standing.welder);
    for (auto &one : out) one.asked = retest_lack(tests.retest_of({}, standing.on, one.coupon, *one.rules));
    return out;
}

} // namespace beadbook
