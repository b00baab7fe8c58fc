#include "judge/end_to_end.hpp"

#include "judge/family.hpp"
#include "judge/judgement.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::int64_t length_of(const Indication &found) {
    for (const Quantity q : {Quantity::length, Quantity::size})
        if (found.measures.has(q)) return found.measures[q];
    return 0;
}

/// Finds of one family and exam whose words do not speak against each other's.
struct Kind {
    std::vector<Words> words;
    std::vector<const Indication *> placed, unplaced;
};

/// Kinds that nothing keeps apart become one.
void unite(std::vector<Kind> &kinds) {
    const auto meet = [](const Kind &a, const Kind &b) {
        return std::any_of(a.words.begin(), a.words.end(), [&](const Words &x) {
            return std::any_of(b.words.begin(), b.words.end(), [&](const Words &y) { return agree(x, y); });
        });
    };
    const auto move_all = [](auto &to, auto &from) { to.insert(to.end(), from.begin(), from.end()); };
    for (std::size_t i = 0; i < kinds.size(); ++i)
        for (std::size_t k = i + 1; k < kinds.size();) {
            if (!meet(kinds[i], kinds[k])) {
                ++k;
                continue;
            }
            move_all(kinds[i].words, kinds[k].words);
            move_all(kinds[i].placed, kinds[k].placed);
            move_all(kinds[i].unplaced, kinds[k].unplaced);
            kinds.erase(kinds.begin() + static_cast<std::ptrdiff_t>(k));
            k = i + 1; // words are more now
        }
}

/// What has a place, as stretches that do not overlap.
struct Covered {
    std::int64_t from, to;
    std::vector<const Indication *> parts;
};

std::vector<Covered> stretches_of(std::vector<const Indication *> placed,
                                  std::optional<std::int64_t> around) {
    std::vector<Covered> line;
    for (const Indication *one : placed) {
        const std::int64_t from =
            around ? (one->place->from.nm % *around + *around) % *around : one->place->from.nm;
        line.push_back({from, from + one->place->to.nm - one->place->from.nm, {one}});
    }
    // What lies over the datum is met again a turn further on.
    if (around)
        for (std::size_t i = 0, once = line.size(); i < once; ++i)
            line.push_back({line[i].from + *around, line[i].to + *around, line[i].parts});
    std::sort(line.begin(), line.end(), [](const Covered &a, const Covered &b) { return a.from < b.from; });
    std::vector<Covered> out;
    for (auto &one : line) {
        if (!out.empty() && one.from <= out.back().to) {
            out.back().to = std::max(out.back().to, one.to);
            out.back().parts.push_back(one.parts.front());
        } else {
            out.push_back(std::move(one));
        }
    }
    return out;
}

/// The stretches between which `free` can fill all gaps, and that are longest together.
std::span<const Covered> longest_with(const std::vector<Covered> &line, std::int64_t free) {
    std::span<const Covered> best;
    std::int64_t best_length = -1, gaps = 0, length = 0;
    for (std::size_t first = 0, last = 0; last < line.size(); ++last) {
        if (last > first) gaps += line[last].from - line[last - 1].to;
        length += line[last].to - line[last].from;
        for (; gaps > free; ++first) {
            gaps -= line[first + 1].from - line[first].to;
            length -= line[first].to - line[first].from;
        }
        if (length > best_length) {
            best_length = length;
            best = std::span(line).subspan(first, last + 1 - first);
        }
    }
    return best;
}

OneOf longest_of(const Kind &kind, std::optional<std::int64_t> around) {
    OneOf out{kind.unplaced, {}};
    for (const Indication *one : kind.unplaced) out.extent.length += length_of(*one);
    const std::vector<Covered> line = stretches_of(kind.placed, around);
    for (const Covered &one : longest_with(line, out.extent.length)) {
        out.extent.length += one.to - one.from;
        out.parts.insert(out.parts.end(), one.parts.begin(), one.parts.end());
    }
    if (around) out.extent.length = std::min(out.extent.length, *around);
    // On a closed weld one may have been met twice.
    std::sort(out.parts.begin(), out.parts.end());
    out.parts.erase(std::unique(out.parts.begin(), out.parts.end()), out.parts.end());
    return out;
}

} // namespace

Groups end_to_end(const BoundSet &bound, const std::vector<Indication> &indications) {
    if (std::all_of(indications.begin(), indications.end(), [](const Indication &i) { return i.place; }))
        return {};
    std::map<std::pair<Exam, TypeId>, std::map<Words, Kind>> kinds;
    for (const auto &one : indications) {
        const auto family = family_of(bound, one);
        if (!family || bound.vocabulary[one.type].shape == Shape::rounded) continue;
        Kind &kind = kinds[{one.exam, *family}][one.words];
        kind.words = {one.words};
        (one.place ? kind.placed : kind.unplaced).push_back(&one);
    }
    Groups out;
    std::vector<bool> taken(indications.size());
    for (auto &[key, by_words] : kinds) {
        std::vector<Kind> of_family;
        for (auto &[words, kind] : by_words) of_family.push_back(std::move(kind));
        unite(of_family);
        for (const Kind &kind : of_family) {
            if (kind.unplaced.empty() || kind.unplaced.size() + kind.placed.size() < 2) continue;
            OneOf several = longest_of(kind, bound.coupon.around());
            const auto first = static_cast<std::size_t>(several.parts.front() - indications.data());
            for (const Indication *part : several.parts)
                taken[static_cast<std::size_t>(part - indications.data())] = true;
            out.emplace(first, std::move(several));
        }
    }
    if (out.empty()) return {};
    for (std::size_t i = 0; i < indications.size(); ++i)
        if (!taken[i]) out.emplace(i, OneOf{{&indications[i]}, {}});
    return out;
}

} // namespace beadbook
