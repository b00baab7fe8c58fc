#include "report/weld_map.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/finding_place.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

constexpr std::size_t most_brackets = 12;

MappedFind mapped(const Indication &i, const WeldLine &line, Unit unit, const Vocabulary &vocabulary) {
    MappedFind out;
    out.number = i.number;
    out.words = "#" + std::to_string(i.number) + " " + vocabulary[i.type].name + " (" +
                std::string(name_of(i.exam)) + ")" + (i.place ? " " + print_place(*i.place, line, unit) : "");
    out.place = i.place;
    out.across = i.across;
    out.side = i.words[static_cast<std::size_t>(Attribute::side)];
    const auto &m = i.measures;
    if (m.has(Quantity::width)) out.width = m[Quantity::width];
    if (vocabulary[i.type].shape == Shape::linear || vocabulary[i.type].measured) return out;
    if (out.width && m.has(Quantity::length))
        out.round = m[Quantity::length] <= 3 * *out.width;
    else
        out.round = vocabulary[i.type].shape == Shape::rounded;
    if (!out.width && out.round && m.has(Quantity::size)) out.width = m[Quantity::size];
    return out;
}

/// "#2", "#2, #3", "#2 to #40 (39)".
std::string tags_of(const std::vector<int> &numbers) {
    std::string out;
    if (numbers.size() > 4)
        return "#" + std::to_string(numbers.front()) + " to #" + std::to_string(numbers.back()) + " (" +
               std::to_string(numbers.size()) + ")";
    for (const int n : numbers) out += (out.empty() ? "#" : ", #") + std::to_string(n);
    return out;
}

std::string bracket_words(const Case &c, std::size_t k, const Finding &f) {
    const std::string who = tags_of(f.indications) + ": ";
    if (f.rule < 0) return who + "not accepted";
    const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
    if (!f.has_numbers) return who + "none is allowed";
    const PrintedPair p = print_against(rule, f.measured, f.limit, c.unit);
    const Window *window = rule.window(k);
    const std::string in = !window                                    ? ""
                           : window->kind == Window::Kind::whole_weld ? " over the weld"
                                                                      : " within any " + window->text;
    return who + p.first + in + (is_maximum(rule.compare) ? ", limit " : ", at least ") + p.second;
}

} // namespace

std::int64_t WeldMap::shown_length() const {
    if (line.length) return line.length->nm;
    std::int64_t end = 0;
    for (const auto &find : finds)
        if (find.place) end = std::max(end, find.place->to.nm);
    return end;
}

WeldMap weld_map(const Coupon &coupon, const std::vector<Indication> &found, Unit unit,
                 const Vocabulary &vocabulary) {
    WeldMap out;
    out.line = coupon.line;
    out.unit = unit;
    out.fillet = is_fillet(coupon);
    for (const auto &i : found) out.finds.push_back(mapped(i, coupon.line, unit, vocabulary));
    std::sort(out.finds.begin(), out.finds.end(),
              [](const MappedFind &a, const MappedFind &b) { return a.number < b.number; });
    return out;
}

WeldMap weld_map(const Case &c, std::size_t k, const ClassJudgement &judged) {
    WeldMap out = weld_map(c.coupon, c.indications, c.unit, c.vocabulary);
    std::set<int> rejects, open;
    for (const auto &f : judged.findings) {
        if (f.effect == Verdict::accept) continue;
        auto &of = f.effect == Verdict::reject ? rejects : open;
        of.insert(f.indications.begin(), f.indications.end());
        if (f.effect != Verdict::reject || f.indications.empty()) continue;
        const Indication *first = c.find(f.indications.front());
        std::optional<Span> place = laid_place(c, k, f);
        if (!place && first) place = first->place;
        if (!place) continue;
        out.reasons.push_back(
            {f.indications, *place, bracket_words(c, k, f),
             first ? first->words[static_cast<std::size_t>(Attribute::side)] : std::uint8_t{0}});
    }
    std::stable_sort(out.reasons.begin(), out.reasons.end(),
                     [](const MappedReason &a, const MappedReason &b) {
                         return a.numbers.size() > 1 && b.numbers.size() < 2;
                     });
    if (out.reasons.size() > most_brackets) {
        out.more_reasons = out.reasons.size() - most_brackets;
        out.reasons.resize(most_brackets);
    }
    for (auto &find : out.finds)
        find.state = rejects.contains(find.number) ? MappedFind::State::rejects
                     : open.contains(find.number)  ? MappedFind::State::open
                                                   : MappedFind::State::kept;
    return out;
}

std::string unplaced_words(const WeldMap &map) {
    std::vector<std::string> tags;
    for (const auto &find : map.finds)
        if (!find.place) tags.push_back("#" + std::to_string(find.number));
    return tags.empty() ? "" : "Without a place: " + joined(tags, ", ");
}

std::string told_of(const WeldMap &map) {
    std::string out = map.line.length ? "Weld of " + print(map.line.length->nm, Dimension::length, map.unit) +
                                            (map.line.closed ? " round." : ".")
                                      : "Weld of a length that is not known.";
    if (map.finds.empty()) out += " Nothing is on record.";
    for (const auto &find : map.finds) {
        const auto &sides = info(Attribute::side).words;
        out += " " + find.words + (find.side == 0 ? "" : ", " + sides[find.side - 1u]) +
               (find.place ? "" : ", without a place") +
               (find.state == MappedFind::State::rejects ? ": rejects."
                : find.state == MappedFind::State::open  ? ": cannot say."
                                                         : ".");
    }
    for (const auto &reason : map.reasons) out += " Over: " + reason.words + ".";
    return out;
}

void add_map(Document &doc, const WeldMap &map, std::string text) {
    doc.add(Figure{unrolled(map), unrolled(map, 340), "", std::move(text)});
    if (auto round = ring(map))
        doc.add(Figure{std::move(*round), ring(map, 20),
                       "Seen along the tube, datum at the top: face outside, root inside, what is said on "
                       "neither between.",
                       ""});
}

} // namespace beadbook
