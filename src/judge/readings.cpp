#include "judge/readings.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace beadbook {
namespace {

/// Which finds are one with which.
class Pieces {
public:
    explicit Pieces(std::size_t count) : of_(count) { std::iota(of_.begin(), of_.end(), std::size_t{0}); }

    std::size_t of(std::size_t i) {
        while (of_[i] != i) i = of_[i] = of_[of_[i]];
        return i;
    }
    /// The first to be entered stands for all.
    void unite(std::size_t a, std::size_t b) {
        a = of(a), b = of(b);
        of_[std::max(a, b)] = std::min(a, b);
    }

private:
    std::vector<std::size_t> of_;
};

/// Nothing but their place could keep them apart.
bool may_be_one(const Indication &a, const Indication &b) {
    for (std::size_t w = 0; w < attribute_count; ++w)
        if (a.words[w] != 0 && b.words[w] != 0 && a.words[w] != b.words[w]) return false;
    return !a.across || !b.across || (a.across->from <= b.across->to && b.across->from <= a.across->to);
}

/// Whatever may be one with `b` may be one with `a`.
bool stands_for(const Indication &a, const Indication &b) {
    for (std::size_t w = 0; w < attribute_count; ++w)
        if (a.words[w] != 0 && a.words[w] != b.words[w]) return false;
    return !a.across || (b.across && a.across->from <= b.across->from && b.across->to <= a.across->to);
}

/// What may be one imperfection, whatever each piece was called: kinds of one wider type. Older engines asked
/// only what was called alike.
TypeId family(const BoundSet &bound, TypeId type) {
    if (bound.engine < first_to_doubt_widths) return type;
    while (bound.vocabulary[type].under) type = *bound.vocabulary[type].under;
    return type;
}

/// A find that may be one with another of its family and exam.
struct Piece {
    Exam exam;
    TypeId family;
    Length from, to;
    std::size_t index;
    friend bool operator<(const Piece &a, const Piece &b) {
        return std::tie(a.exam, a.family, a.from, a.index) < std::tie(b.exam, b.family, b.from, b.index);
    }
};
/// Those of one family and exam, by where they begin.
using Run = std::span<const Piece>;

/// By whose name several of unlike kinds are called as one.
enum class Named : std::uint8_t { first, another };

/// Those of one family and exam, by where they begin: joins all that touch. Of many that lie over each other
/// only those are remembered that reach further, or that others could be one with: few, however many there
/// are.
void join_touching(const std::vector<Indication> &all, Run line, std::optional<std::int64_t> around,
                   Pieces &pieces) {
    struct Laid {
        std::size_t index;
        std::int64_t to;
    };
    std::vector<Laid> reaching;
    const auto take = [&](const Piece &piece, std::int64_t turn) {
        const std::size_t i = piece.index;
        const std::int64_t from = piece.from.nm + turn, to = piece.to.nm + turn;
        bool new_reach = true;
        std::erase_if(reaching, [&](const Laid &before) {
            if (before.to < from) return true;
            if (!may_be_one(all[before.index], all[i])) return false;
            pieces.unite(before.index, i);
            new_reach = new_reach && !(before.to >= to && stands_for(all[before.index], all[i]));
            return new_reach && before.to <= to && stands_for(all[i], all[before.index]);
        });
        if (new_reach) reaching.push_back({i, to});
    };
    for (const Piece &piece : line) take(piece, 0);
    // What reaches over the datum may meet the first ones from behind.
    if (around)
        for (const Piece &piece : line) take(piece, *around);
}

/// On a closed weld the shortest stretch that holds them all, whichever way round. It begins where one
/// begins: from there on lie those that begin later on the first turn, and a turn further the others.
Span stretch_round(const std::vector<const Indication *> &parts, std::int64_t around) {
    struct Laid {
        std::int64_t from, to; ///< on the first turn
    };
    std::vector<Laid> line;
    const auto laid = [&](const Indication *part) {
        const std::int64_t from = (part->place->from.nm % around + around) % around;
        return Laid{from, from + part->place->to.nm - part->place->from.nm};
    };
    for (const Indication *part : parts) line.push_back(laid(part));
    std::sort(line.begin(), line.end(), [](const Laid &a, const Laid &b) { return a.from < b.from; });
    // How far those before each of them reach, and those from it on.
    std::vector<std::int64_t> before(line.size()), onward(line.size());
    before.front() = line.front().to;
    for (std::size_t i = 1; i < line.size(); ++i) before[i] = std::max(before[i - 1], line[i - 1].to);
    std::int64_t reach = line.back().to;
    for (std::size_t i = line.size(); i-- > 0;) onward[i] = reach = std::max(reach, line[i].to);
    std::optional<Span> least;
    for (const Indication *start : parts) {
        const std::int64_t from = laid(start).from;
        const auto at = std::lower_bound(line.begin(), line.end(), from,
                                         [](const Laid &a, std::int64_t x) { return a.from < x; });
        const auto i = static_cast<std::size_t>(at - line.begin());
        const std::int64_t to = i == 0 ? onward[i] : std::max(onward[i], before[i] + around);
        const std::int64_t extent = std::clamp<std::int64_t>(to - from, 0, around);
        if (!least || extent < least->to.nm - least->from.nm)
            least = Span{start->place->from, {start->place->from.nm + extent}};
    }
    return *least;
}

/// The shortest stretch that holds them all.
Span stretch_of(const std::vector<const Indication *> &parts, std::optional<std::int64_t> around) {
    if (around) return stretch_round(parts, *around);
    Span out = *parts.front()->place;
    for (const Indication *part : parts) {
        out.from = std::min(out.from, part->place->from);
        out.to = std::max(out.to, part->place->to);
    }
    return {out.from, std::max(out.from, out.to)};
}

/// Of those that are unlike the first, the first one's; else its own.
TypeId another_type(const std::vector<const Indication *> &parts) {
    const auto other = std::find_if(parts.begin(), parts.end(),
                                    [&](const Indication *p) { return p->type != parts.front()->type; });
    return other == parts.end() ? parts.front()->type : (*other)->type;
}

Indication one_of(const std::vector<const Indication *> &parts, std::optional<std::int64_t> around,
                  const Vocabulary &vocabulary, Named named) {
    Indication out = *parts.front();
    if (named == Named::another) out.type = another_type(parts);
    out.measures = {};
    out.place = stretch_of(parts, around);
    const auto known_of_all = [&](Quantity q) {
        return std::all_of(parts.begin(), parts.end(),
                           [&](const Indication *p) { return p->measures.has(q); });
    };
    const auto largest = [&](Quantity q) {
        Exact most = parts.front()->measures[q];
        for (const Indication *p : parts) most = std::max(most, Exact(p->measures[q]));
        return most;
    };
    for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height, Quantity::angle})
        if (known_of_all(q)) out.measures.set(q, largest(q));
    const Exact extent = out.place->to.nm - out.place->from.nm;
    if (known_of_all(Quantity::length)) out.measures.set(Quantity::length, std::max(extent, Exact(0)));
    if (known_of_all(Quantity::size))
        out.measures.set(Quantity::size, std::max(largest(Quantity::size), extent));
    const bool measured = std::any_of(parts.begin(), parts.end(), [](const Indication *p) {
        return p->measures.has(Quantity::area) && p->area_from == AreaFrom::measured;
    });
    out.area_from = AreaFrom::measured;
    if (measured && known_of_all(Quantity::area)) {
        Exact sum = 0;
        for (const Indication *p : parts) sum = sum + Exact(p->measures[Quantity::area]);
        out.measures.set(Quantity::area, sum);
    }
    for (std::size_t w = 0; w < attribute_count; ++w)
        for (const Indication *p : parts)
            if (out.words[w] == 0) out.words[w] = p->words[w];
    for (const Indication *p : parts) {
        if (!p->across) out.across.reset();
        if (out.across)
            out.across =
                Span{std::min(out.across->from, p->across->from), std::max(out.across->to, p->across->to)};
    }
    out.complete(vocabulary);
    out.width_open =
        !out.measures.has(Quantity::width) &&
        std::any_of(parts.begin(), parts.end(), [](const Indication *p) { return p->width_open; });
    return out;
}

/// None is wider than long.
Exact at_most_as_wide(const std::vector<const Indication *> &parts) {
    Exact least = longest_length.nm;
    for (const Indication *p : parts)
        for (const Quantity q : {Quantity::length, Quantity::width})
            if (p->measures.has(q)) least = std::min(least, Exact(p->measures[q]));
    return least;
}

/// A clause of the set says when neighbours of that kind are one.
bool merged_by_clause(const CriteriaSet &set, const Indication &found) {
    return std::any_of(set.merges.begin(), set.merges.end(),
                       [&](const Merge &m) { return m.subject.covers(found.type, found.exam); });
}

/// Whether any of them reaches the next, or over the datum the first: else none can be one with another.
bool any_reaches(Run run, std::optional<std::int64_t> around) {
    Length reach = run.front().to;
    for (const Piece &piece : run.subspan(1)) {
        if (piece.from <= reach) return true;
        reach = std::max(reach, piece.to);
    }
    return around && run.front().from.nm + *around <= reach.nm;
}

/// Runs in which some may be one, out of those that `line` is made of.
Few<Run> runs_that_reach(Run line, std::optional<std::int64_t> around) {
    Few<Run> out;
    while (!line.empty()) {
        std::size_t size = 1;
        while (size < line.size() && line[size].exam == line.front().exam &&
               line[size].family == line.front().family)
            ++size;
        if (size > 1 && any_reaches(line.first(size), around)) out.push_back(line.first(size));
        line = line.subspan(size);
    }
    return out;
}

/// Those that may be one, by the first of them; empty where each stands by itself.
using Groups = std::map<std::size_t, std::vector<const Indication *>>;

Groups touching(const BoundSet &bound, const std::vector<Indication> &indications) {
    const Vocabulary &vocabulary = bound.vocabulary;
    const auto around = bound.coupon.around();
    Several<Piece> line;
    for (std::size_t i = 0; i < indications.size(); ++i) {
        const Indication &one = indications[i];
        if (one.place && !vocabulary[one.type].measured && !merged_by_clause(bound.set, one))
            line.push_back({one.exam, family(bound, one.type), one.place->from, one.place->to, i});
    }
    if (line.size() < 2) return {};
    std::sort(line.begin(), line.end());
    const auto runs = runs_that_reach(view(line), around);
    if (runs.empty()) return {};
    Pieces pieces(indications.size());
    for (const Run run : runs) join_touching(indications, run, around, pieces);
    Groups groups;
    for (std::size_t i = 0; i < indications.size(); ++i) groups[pieces.of(i)].push_back(&indications[i]);
    if (groups.size() == indications.size()) return {};
    return groups;
}

OtherReading as_one(const BoundSet &bound, const std::vector<Indication> &indications, const Groups &groups,
                    Named named) {
    OtherReading out;
    out.between = Missing::place();
    for (const auto &[first, parts] : groups) {
        if (parts.size() == 1) {
            out.indications.push_back(indications[first]);
            continue;
        }
        Indication &one =
            out.indications.emplace_back(one_of(parts, bound.coupon.around(), bound.vocabulary, named));
        // A wide or round piece does not make a long one round (see merge_and_reshape).
        if (bound.engine >= first_to_doubt_widths) one.narrowest = at_most_as_wide(parts);
        for (const Indication *p : parts) out.behind[indications[first].number].push_back(p->number);
    }
    return out;
}

std::optional<OtherReading> by_name(const BoundSet &bound, const std::vector<Indication> &indications) {
    const CriteriaSet &set = bound.set;
    const Vocabulary &vocabulary = bound.vocabulary;
    if (!set.linear) return std::nullopt;
    OtherReading out;
    for (const auto &found : indications) {
        Missing missing;
        if (round_in_spite_of_name(vocabulary[found.type], found.measures) &&
            !vocabulary[found.type].measured &&
            set.linear->compare(Environment{bound.coupon.values, &found.measures}, missing) == Truth::no)
            out.behind[found.number] = {found.number};
    }
    if (out.behind.empty()) return std::nullopt;
    out.indications = indications;
    out.shapes = Shapes::by_name;
    out.between = Missing::shape() | lack_of(Quantity::length) | lack_of(Quantity::width);
    return out;
}

} // namespace

std::vector<OtherReading> other_readings(const BoundSet &bound, const std::vector<Indication> &indications) {
    std::vector<OtherReading> out;
    if (const Groups groups = touching(bound, indications); !groups.empty()) {
        out.push_back(as_one(bound, indications, groups, Named::first));
        if (std::any_of(groups.begin(), groups.end(), [](const auto &group) {
                return another_type(group.second) != group.second.front()->type;
            }))
            out.push_back(as_one(bound, indications, groups, Named::another));
    }
    if (auto reading = by_name(bound, indications)) out.push_back(std::move(*reading));
    return out;
}

void hold_against(const OtherReading &reading, const Evaluation &other, Evaluation &e) {
    std::vector<int> all;
    for (const auto &[number, numbers] : reading.behind)
        all.insert(all.end(), numbers.begin(), numbers.end());
    for (std::size_t c = 0; c < e.classes.size(); ++c) {
        if (!e.open(c)) continue;
        for (Finding f : other.classes[c].findings) {
            if (f.effect == Verdict::accept) continue;
            f.kind = Finding::Kind::contradiction;
            f.effect = Verdict::cannot_say;
            f.clause = -1;
            f.missing = reading.between;
            std::vector<int> named;
            bool of_these = false;
            for (const int n : f.indications) {
                const auto behind = reading.behind.find(n);
                of_these = of_these || behind != reading.behind.end();
                if (behind == reading.behind.end())
                    named.push_back(n);
                else
                    named.insert(named.end(), behind->second.begin(), behind->second.end());
            }
            if (!of_these) named.insert(named.end(), all.begin(), all.end());
            std::sort(named.begin(), named.end());
            named.erase(std::unique(named.begin(), named.end()), named.end());
            f.indications = std::move(named);
            e.add(c, std::move(f));
        }
    }
}

} // namespace beadbook
