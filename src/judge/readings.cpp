#include "judge/readings.hpp"

#include "judge/end_to_end.hpp"
#include "judge/family.hpp"

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

/// What makes pieces one imperfection: their family alone, or also a rule that limits how long either may be.
enum class AkinBy : std::uint8_t { family, family_or_rule };

/// A find that may be one with others of its exam.
struct Piece {
    Exam exam;
    TypeId run; ///< only those of one run may be one
    Length from, to;
    std::size_t index;
    TypeId family;
    Several<std::uint16_t> rules; ///< that may make it one with another family
    friend bool operator<(const Piece &a, const Piece &b) {
        return std::tie(a.exam, a.run, a.from, a.index) < std::tie(b.exam, b.run, b.from, b.index);
    }
};
/// Those that only their places and words could keep apart, by where they begin.
using Run = std::span<const Piece>;

bool akin(const Piece &a, const Piece &b) {
    return a.family == b.family || std::any_of(a.rules.begin(), a.rules.end(), [&](std::uint16_t r) {
               return std::find(b.rules.begin(), b.rules.end(), r) != b.rules.end();
           });
}

/// Nothing but their place could keep them apart.
bool may_be_one(const Indication &a, const Indication &b) {
    if (!agree(a.words, b.words)) return false;
    return !a.across || !b.across || (a.across->from <= b.across->to && b.across->from <= a.across->to);
}

/// Whatever may be one with `b` may be one with `a`.
bool stands_for(const Indication &a, const Indication &b) {
    for (std::size_t w = 0; w < attribute_count; ++w)
        if (a.words[w] != 0 && a.words[w] != b.words[w]) return false;
    return !a.across || (b.across && a.across->from <= b.across->from && b.across->to <= a.across->to);
}
bool stands_for(const Piece &a, const Piece &b) {
    return a.family == b.family &&
           std::includes(a.rules.begin(), a.rules.end(), b.rules.begin(), b.rules.end());
}

/// Of one run: joins all that touch. Of many that lie over each other
/// only those are remembered that reach further, or that others could be one with: few, however many there
/// are.
void join_touching(const std::vector<Indication> &all, Run line, std::optional<std::int64_t> around,
                   Pieces &pieces) {
    struct Reaching {
        const Piece *piece;
        std::int64_t to;
    };
    std::vector<Reaching> reaching;
    const auto take = [&](const Piece &piece, std::int64_t turn) {
        const std::size_t i = piece.index;
        const std::int64_t from = piece.from.nm + turn, to = piece.to.nm + turn;
        bool new_reach = true;
        std::erase_if(reaching, [&](const Reaching &before) {
            const Piece &other = *before.piece;
            const Indication &a = all[other.index], &b = all[i];
            if (before.to < from) return true;
            if (!akin(other, piece) || !may_be_one(a, b)) return false;
            pieces.unite(other.index, i);
            new_reach = new_reach && !(before.to >= to && stands_for(other, piece) && stands_for(a, b));
            return new_reach && before.to <= to && stands_for(piece, other) && stands_for(b, a);
        });
        if (new_reach) reaching.push_back({&piece, to});
    };
    for (const Piece &piece : line) take(piece, 0);
    // What reaches over the datum may meet the first ones from behind.
    if (around)
        for (const Piece &piece : line) take(piece, *around);
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
               line[size].run == line.front().run)
            ++size;
        if (size > 1 && any_reaches(line.first(size), around)) out.push_back(line.first(size));
        line = line.subspan(size);
    }
    return out;
}

Groups touching(const BoundSet &bound, const std::vector<Indication> &indications, AkinBy akin_by) {
    const auto around = bound.coupon.around();
    const bool by_rule = akin_by == AkinBy::family_or_rule;
    std::vector<Piece> line;
    for (std::size_t i = 0; i < indications.size(); ++i) {
        const Indication &one = indications[i];
        if (!one.place) continue;
        if (const auto family = family_of(bound, one))
            line.push_back(
                {one.exam, by_rule ? TypeId{0} : *family, one.place->from, one.place->to, i, *family, {}});
    }
    if (line.size() < 2) return {};
    std::sort(line.begin(), line.end());
    const auto runs = runs_that_reach(line, around);
    if (runs.empty()) return {};
    if (by_rule)
        for (Piece &piece : line) piece.rules = rules_on_length(bound, indications[piece.index]);
    Pieces pieces(indications.size());
    for (const Run run : runs) join_touching(indications, run, around, pieces);
    Groups groups;
    for (std::size_t i = 0; i < indications.size(); ++i)
        groups[pieces.of(i)].parts.push_back(&indications[i]);
    if (groups.size() == indications.size()) return {};
    for (auto &[first, group] : groups)
        if (group.parts.size() > 1) group.extent = extent_of(group.parts, around);
    return groups;
}

OtherReading read_as_one(const BoundSet &bound, const std::vector<Indication> &indications,
                         const Groups &groups, Named named) {
    OtherReading out;
    out.between = Missing::place();
    for (const auto &[first, group] : groups) {
        if (group.parts.size() == 1) {
            out.indications.push_back(indications[first]);
            continue;
        }
        Indication &one = out.indications.emplace_back(as_one(group, bound.vocabulary, named));
        // A wide or round piece does not make a long one round (see merge_and_reshape).
        if (bound.engine >= first_to_doubt_widths) one.narrowest = at_most_as_wide(group.parts);
        for (const Indication *p : group.parts) out.behind[indications[first].number].push_back(p->number);
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
    const auto take = [&](const Groups &groups) {
        if (groups.empty()) return;
        out.push_back(read_as_one(bound, indications, groups, Named::first));
        if (std::any_of(groups.begin(), groups.end(), [](const auto &group) {
                return another_type(group.second.parts) != group.second.parts.front()->type;
            }))
            out.push_back(read_as_one(bound, indications, groups, Named::another));
    };
    const bool rules_too = bound.engine >= first_to_take_together;
    const Groups by_rule = rules_too ? touching(bound, indications, AkinBy::family_or_rule) : Groups();
    // Those of one family are among them: mostly there are none.
    const Groups alike =
        rules_too && by_rule.empty() ? Groups() : touching(bound, indications, AkinBy::family);
    take(alike);
    if (by_rule.size() != (alike.empty() ? indications.size() : alike.size())) take(by_rule);
    if (bound.engine >= first_to_ask_where) take(end_to_end(bound, indications));
    if (auto reading = by_name(bound, indications)) out.push_back(std::move(*reading));
    return out;
}

namespace {

std::vector<Exam> methods_of(const std::vector<int> &numbers, const std::vector<Indication> &indications) {
    ExamSet found;
    for (const auto &one : indications)
        if (std::binary_search(numbers.begin(), numbers.end(), one.number))
            found.set(static_cast<std::size_t>(one.exam));
    std::vector<Exam> out;
    for (std::size_t x = 0; x < exam_count; ++x)
        if (found[x]) out.push_back(static_cast<Exam>(x));
    return out;
}

} // namespace

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
            if (reading.methods == Methods::together) f.exams = methods_of(f.indications, e.indications);
            e.add(c, std::move(f));
        }
    }
}

} // namespace beadbook
