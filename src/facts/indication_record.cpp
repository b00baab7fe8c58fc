#include "facts/indication_record.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

std::int64_t nm(const Typed &t) { return static_cast<std::int64_t>(t.value.num()); }

} // namespace

const std::vector<MeasureKey> &measure_keys() {
    static const std::vector<MeasureKey> keys{
        {"length", "l", Quantity::length, "long"},
        {"width", "w", Quantity::width, "wide"},
        {"depth", "d", Quantity::depth, "deep"},
        {"height", "h", Quantity::height, "high"},
        {"size", "s", Quantity::size},
        {"angle", "angle", Quantity::angle},
        {"area", "area", Quantity::area},
    };
    return keys;
}

Indication IndicationRecord::facts(Exam method, const WeldLine &line, const Vocabulary &vocabulary) const {
    Indication out;
    out.number = number;
    out.type = type;
    out.exam = method;
    out.of_exam = exam;
    out.words = words;
    for (const auto &[q, typed] : measures) out.measures.set(q, typed.value);
    if (at) {
        out.place = Span{{nm(*at)}, {nm(*at)}};
        if (end) {
            out.place->to = {nm(*end)};
            if (out.place->to < out.place->from && line.length) out.place->to.nm += line.length->nm;
        }
    }
    out.complete(vocabulary);
    const auto length = out.measures.has(Quantity::length) ? out.measures[Quantity::length] : std::int64_t{0};
    if (middle) {
        std::int64_t from = nm(*middle) - length / 2;
        if (from < 0 && line.closed && line.length) from += line.length->nm;
        out.place = Span{{from}, {from + length}};
    }
    if (across) {
        const std::int64_t half =
            out.measures.has(Quantity::width) ? out.measures[Quantity::width] / 2 : length / 2;
        const std::int64_t centre = across_left ? -nm(*across) : nm(*across);
        out.across = Span{{centre - half}, {centre + half}};
    }
    return out;
}

IndicationRecord replaced_on(IndicationRecord indication, const WeldLine &line, Unit unit) {
    for (auto *place : {&indication.at, &indication.middle, &indication.end})
        if (*place) *place = parse_place((*place)->text, line, unit);
    check_sense(indication, line, unit);
    return indication;
}

void check_place_said(const IndicationRecord &i) {
    if (i.at && i.middle)
        throw InputError("'at' says that it begins at " + i.at->text +
                         ", and 'middle' that its middle is at " + i.middle->text + "; give one of the two");
    if (i.middle && i.end)
        throw InputError("'middle' " + i.middle->text + " and 'end' " + i.end->text +
                         " do not go together; give 'at' and 'end', or 'middle' with the length");
    if (i.end && !i.at)
        throw InputError("'end' says that it ends at " + i.end->text +
                         ", and not where it begins; give 'at' too");
}

void check_sense(const IndicationRecord &i, const WeldLine &line, std::optional<Unit> unit) {
    const auto get = [&](Quantity q) {
        const auto found = i.measures.find(q);
        return found == i.measures.end() ? nullptr : &found->second;
    };
    const Typed *length = get(Quantity::length), *width = get(Quantity::width), *size = get(Quantity::size);
    // A dimension that is checked may be none; an imperfection without a length or depth is none.
    if (!Vocabulary::shipped()[i.type].measured)
        for (const Quantity q : {Quantity::length, Quantity::depth, Quantity::size})
            if (const Typed *of = get(q); of && of->value == Exact(0))
                throw InputError("the " + std::string(info(q).name) + " is " + of->text +
                                 "; what was not measured is left out, and what is not there is not logged");
    if (length && width && width->value > length->value && !Vocabulary::shipped()[i.type].is_wide_across())
        throw InputError("the width " + width->text + " is more than the length " + length->text +
                         "; the length is the longer of the two");
    const bool dimension = Vocabulary::shipped()[i.type].measured;
    for (const Typed *other : {length, width})
        if (size && other && other->value > size->value && !dimension)
            throw InputError("the size " + size->text + " is less than " + other->text +
                             "; the size is the largest dimension");
    if (i.at && i.end && (line.closed ? line.length.has_value() : i.end->value >= i.at->value)) {
        const bool over_datum = i.end->value < i.at->value;
        const Exact extent = i.end->value - i.at->value + (over_datum ? Exact(line.length->nm) : Exact(0));
        const std::string way = "the way from " + i.at->text + " to " + i.end->text;
        if (length && extent != length->value)
            throw InputError("the length " + length->text + " is not " + way);
        // A dimension that is checked (a fillet's size, say) may be so over a stretch: there the two are
        // apart.
        if (size && extent > size->value && !dimension)
            throw InputError("the size " + size->text + " is less than " + way +
                             "; the size is the largest dimension");
    }
    if (!line.closed && i.at && i.end && i.end->value < i.at->value)
        throw InputError("it ends at " + i.end->text + ", before it begins at " + i.at->text);
    if (!line.length) return;
    const Indication facts = i.facts(Exam::VT, line);
    if (!facts.place) return;
    const bool past_end = facts.place->to > *line.length && !line.closed;
    const bool too_long = line.closed && facts.place->to.nm - facts.place->from.nm > line.length->nm;
    const bool before_start = facts.place->from.nm < 0;
    if (!past_end && !too_long && !before_start) return;
    const Unit written = unit_written(i.at       ? i.at->text
                                      : i.middle ? i.middle->text
                                                 : "")
                             .value_or(unit.value_or(Unit::inch));
    const auto told = [&](std::int64_t nm) { return print(nm, Dimension::length, written); };
    throw InputError("it runs from " + told(facts.place->from.nm) + " to " + told(facts.place->to.nm) +
                     ", off the weld, which is " + told(line.length->nm) + " long");
}

} // namespace beadbook
