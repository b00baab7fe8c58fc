#include "facts/coupon_record.hpp"

#include "criteria/magnetic_words.hpp"
#include "criteria/nominal_size.hpp"
#include "criteria/weld_words.hpp"
#include "measure/day.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <bit>

namespace beadbook {
namespace {

using Kind = CouponField::Kind;

CouponField text_field(std::string name, std::string help) {
    return {std::move(name), Kind::text, {}, {}, std::move(help)};
}
CouponField measure_field(std::string name, Quantity q, std::string help) {
    return {std::move(name), Kind::measure, q, {}, std::move(help)};
}
CouponField fact_field(std::string name, Fact f, const std::string &help) {
    return {std::move(name), Kind::fact, {}, f, help + ": " + listed(info(f).words, "or")};
}

/// The first of the words into the fact, the rest into `more`.
void put_words(Coupon &out, Fact fact, WordBits said, std::uint64_t *more) {
    if (said == 0 || (!more && !std::has_single_bit(said))) return;
    const int first = std::countr_zero(said);
    out.facts[static_cast<std::size_t>(fact)] = static_cast<std::uint8_t>(first);
    if (more) *more = said & ~(WordBits{1} << first);
}

/// "PT,RT" or "PT RT".
std::vector<Exam> exams_in(std::string list) {
    std::replace(list.begin(), list.end(), ',', ' ');
    std::vector<Exam> out;
    for (const auto word : words_of(list)) {
        const auto exam = exam_named(word);
        if (!exam) throw DataError("'" + shown(word) + "' is no exam; expected " + exam_names_text());
        out.push_back(*exam);
    }
    return out;
}

/// What else may be meant by a word that a field does not take: another name of one that it takes, or the
/// word of another field.
std::string meant_by(const FactInfo &fact, const std::string &value) {
    if (same_word(value, "pipe") && word_index(fact, "tube") > 0) return "; write tube";
    std::vector<std::string> fields;
    for (const auto &field : coupon_fields())
        if (field.kind == Kind::fact && word_index(info(field.fact), value) > 0) fields.push_back(field.name);
    return fields.size() == 1 ? "; '" + shown(value) + "' is a word of " + fields.front()
                              : did_you_mean(value, fact.words);
}

/// A measure as it was written; of several processes, each its own: "1 + 2" layers are three.
CouponValue measured(const std::string &value, const CouponField &field, std::optional<Unit> unit) {
    if (field.quantity == Quantity::layers && value.find('+') != std::string::npos) {
        CouponValue out{"", Exact(0)};
        for (const auto &part : parts_of_several(value)) {
            const CouponValue one = measured(part, field, unit);
            out.text += (out.text.empty() ? "" : " + ") + one.text;
            out.value = out.value + one.value;
        }
        return out;
    }
    const auto [size, called] = size_and_name(value);
    const Typed typed = parse_measured(size, info(field.quantity).dimension, unit);
    if (typed.value == Exact(0) && field.quantity != Quantity::design_temperature)
        throw InputError("'" + shown(value) + "' is zero; what is not known is left out");
    return {typed.text + (called.empty() ? "" : " (" + std::string(called) + ")"), typed.value};
}

struct SaidUnit {
    bool told = false;        ///< there are such lengths
    std::optional<Unit> unit; ///< nothing if they differ
};
/// The unit that all lengths among the fields are written in whose names begin so.
SaidUnit one_unit_of(const std::map<std::string, CouponValue> &fields, std::string_view begin) {
    SaidUnit out;
    for (const auto &[name, given] : fields) {
        const CouponField &field = *coupon_field(name);
        if (!name.starts_with(begin) || field.kind != CouponField::Kind::measure ||
            info(field.quantity).dimension != Dimension::length)
            continue;
        const auto written = unit_written(size_and_name(given.text).first);
        if (out.told && written != out.unit) return {true, std::nullopt};
        out = {true, written};
    }
    return out;
}

} // namespace

std::vector<std::string> parts_of_several(const std::string &text) {
    std::vector<std::string> out;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find('+', begin), text.size());
        out.emplace_back(trimmed(std::string_view(text).substr(begin, end - begin)));
        begin = end + 1;
    }
    return out;
}

const std::vector<CouponField> &coupon_fields() {
    static const std::vector<CouponField> table{
        {"units", Kind::unit, {}, {}, "unit of bare numbers, in or mm (default: that of its sizes)"},
        text_field("criteria",
                   "criteria set it is judged by: a shipped name (see 'criteria list') or a file"),
        text_field("class", "class that is sought"),
        text_field("welder", "who welded it: a mark or name"),
        text_field("cohort", "class or course that it was welded in, e.g. autumn-2026"),
        fact_field("joint", Fact::joint, "kind of weld"),
        fact_field("joint-form", Fact::joint_form, "form of the joint"),
        fact_field("form", Fact::form, "form of the base metal"),
        fact_field("seam", Fact::seam, "run of the seam; girth closes on itself"),
        fact_field("magnetic", Fact::magnetic, "is the metal ferromagnetic"),
        fact_field("sides", Fact::sides, "welded from"),
        fact_field("inside", Fact::inside, "can the root side be seen"),
        fact_field("stress", Fact::stress, "weld against the main stress"),
        measure_field("thickness", Quantity::thinner, "thickness of a member; also sch 40, 16 ga steel"),
        measure_field("thickness-2", Quantity::thinner, "thickness of the other member, if it differs"),
        measure_field("weld-thickness", Quantity::weld_thickness,
                      "thickness of the weld, without reinforcement; full: a butt that is welded through"),
        measure_field("bead-thickness", Quantity::bead_thickness, "thickness of the bead"),
        measure_field("throat", Quantity::throat, "nominal throat of a fillet"),
        measure_field("fillet-size", Quantity::fillet_size, "fillet size on the drawing"),
        measure_field("leg", Quantity::longest_leg, "longest leg as measured"),
        measure_field("weld-length", Quantity::weld_length, "length of the weld"),
        measure_field("weld-width", Quantity::weld_width, "width of the weld"),
        measure_field("diameter", Quantity::outside_diameter, "outside diameter of the tube; also NPS 2"),
        measure_field("temperature", Quantity::design_temperature, "design temperature, with F or C"),
        measure_field("layers", Quantity::layers, "number of layers; of several processes \"1 + 2\""),
        text_field("material", "base metal"),
        text_field("metal-group", "group of the base metal, by the rules that it is a test of"),
        text_field("process",
                   "welding process; several with what each deposited: \"GTAW 1/8in + SMAW 3/8in\""),
        fact_field("operation", Fact::operation, "who leads the torch: a hand or a machine"),
        text_field("transfer", "transfer of the metal, e.g. spray, short-circuit"),
        text_field("position", "welding position of the test, e.g. 6G"),
        text_field("progression", "up or down"),
        text_field("rotated", "was the tube rotated: yes or no"),
        text_field("filler", "filler metal"),
        text_field("filler-group", "group of the filler metal, by the rules"),
        text_field("filler-type", "type of the filler, by the rules"),
        text_field("backing", "backing of the root, by the rules"),
        text_field("runs", "single or multi run, by the rules"),
        text_field("procedure", "welding procedure"),
        {"welded", Kind::day, {}, {}, "day on which it was welded, 2026-11-25"},
        fact_field("purpose", Fact::purpose, "a test of the welder, or practice that qualifies nobody"),
        fact_field("mechanical", Fact::mechanical, "bend, fracture or section tests, as the rules ask"),
        {"also", Kind::exams, {}, {}, "exams that the drawing calls for beyond the standard, e.g. PT,RT"},
        text_field("note", "anything else"),
    };
    return table;
}

const CouponField *coupon_field(std::string_view name) {
    const auto &all = coupon_fields();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const CouponField &f) { return f.name == name; });
    return found == all.end() ? nullptr : &*found;
}

void check_mark(const std::string &id, const std::string &of) {
    const bool fine = !id.empty() && id.size() <= 40 && id.front() != '-' &&
                      std::all_of(id.begin(), id.end(), [](unsigned char c) {
                          return c < 0x80 && (std::isalnum(c) || c == '-' || c == '_' || c == '.');
                      });
    if (!fine)
        throw DataError(of + " '" + shown(id) + "': a " + of +
                        "'s mark is 1 to 40 letters, digits, dots, dashes or underscores");
}

std::string checked_text(std::string_view text, std::string_view what) {
    const std::string out(trimmed(text));
    if (!valid_utf8(out)) throw DataError(std::string(what) + ": '" + shown(out) + "' is not UTF-8 text");
    if (out.size() > 2000) throw DataError(std::string(what) + ": longer than 2000 bytes");
    if (std::any_of(out.begin(), out.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }))
        throw DataError(std::string(what) + ": '" + shown(out) + "' holds a control character");
    return out;
}

void CouponRecord::set(const std::string &name, const std::string &given) {
    const CouponField *field = coupon_field(name);
    if (!field) {
        std::vector<std::string> names;
        for (const auto &f : coupon_fields()) names.push_back(f.name);
        throw DataError("a coupon has no field '" + shown(name) + "'" + did_you_mean(name, names));
    }
    const std::string value = checked_text(given, name);
    if (value.empty()) throw DataError(name + ": nothing given");
    switch (field->kind) {
    case Kind::text: fields[name] = {value, {}}; break;
    case Kind::unit:
        if (value != "in" && value != "mm")
            throw DataError("units: '" + shown(value) + "'; expected in or mm");
        fields[name] = {value, {}};
        break;
    case Kind::day: try { fields[name] = {print(parse_day(value)), {}};
        } catch (const InputError &e) {
            throw DataError(name + ": " + e.what());
        }
        break;
    case Kind::fact: {
        const FactInfo &fact = info(field->fact);
        if (word_index(fact, value) == 0)
            throw DataError(name + ": '" + shown(value) + "'; expected " + listed(fact.words, "or") +
                            meant_by(fact, value));
        fields[name] = {value, {}};
        break;
    }
    case Kind::exams: {
        std::string out;
        try {
            for (const Exam exam : exams_in(value))
                out += (out.empty() ? "" : ",") + std::string(name_of(exam));
        } catch (const DataError &e) {
            throw DataError(name + ": " + e.what());
        }
        fields[name] = {out, {}};
        break;
    }
    case Kind::measure: try { fields[name] = measured(value, *field, fixed_unit());
        } catch (const InputError &e) {
            throw DataError(name + ": " + e.what());
        }
        break;
    }
}

std::string CouponRecord::get(const std::string &field) const {
    const auto found = fields.find(field);
    return found == fields.end() ? "" : found->second.text;
}

void CouponRecord::set_all(const std::map<std::string, std::string> &values) {
    if (const auto units = values.find("units"); units != values.end())
        at_field("units", [&] { set("units", units->second); });
    for (const bool bare : {false, true})
        for (const auto &said : values)
            if (is_bare_length(said.first, said.second) == bare)
                at_field(said.first, [&] { set(said.first, sized(said.first, said.second, values)); });
    // A wall by its schedule is of one diameter.
    if (values.contains("diameter"))
        for (const auto &field : fields)
            at_field(field.first, [&] { sized(field.first, field.second.text, {}); });
}

std::string CouponRecord::sized(const std::string &name, const std::string &value,
                                const std::map<std::string, std::string> &beside) const {
    const bool wall = name.starts_with("thickness") || name == "weld-thickness";
    if (!wall && name != "diameter") return value;
    const auto said = [&](const char *field) {
        const auto at = beside.find(field);
        return at == beside.end() ? get(field) : at->second;
    };
    try {
        const NominalSizes &sizes = NominalSizes::shipped();
        if (!wall) {
            const auto outside = sizes.outside(value);
            return outside ? outside->text() : value;
        }
        const std::string diameter = said("diameter");
        BesideWall known{
            {}, said("material"), said("form") == "tube" || said("seam") == "girth" || !diameter.empty()};
        if (!diameter.empty()) {
            CouponRecord tube;
            if (const std::string units = said("units"); !units.empty()) tube.set("units", units);
            try {
                tube.set("diameter", tube.sized("diameter", diameter, {}));
                known.outside = tube.fields.at("diameter").value;
            } catch (const Refusal &) {
                known.outside.reset(); // whoever reads the diameter says why
            }
        }
        const auto found = sizes.wall(value, known);
        return found ? found->text() : value;
    } catch (const InputError &e) {
        throw DataError(name + ": " + e.what());
    }
}

std::optional<Unit> CouponRecord::fixed_unit() const {
    if (const std::string units = get("units"); !units.empty())
        return units == "mm" ? Unit::millimetre : Unit::inch;
    return one_unit_of(fields, "").unit;
}

std::optional<Unit> CouponRecord::sizes_unit() const {
    for (const char *of : {"thickness", ""})
        if (const SaidUnit said = one_unit_of(fields, of); said.told) return said.unit;
    return fixed_unit();
}

bool is_bare_length(const std::string &name, std::string_view value) {
    const CouponField *field = coupon_field(name);
    return field && field->kind == CouponField::Kind::measure &&
           info(field->quantity).dimension == Dimension::length && is_bare_number(value);
}

Coupon CouponRecord::facts() const {
    Coupon out;
    out.values.measure_in(sizes_unit());
    for (const auto &[name, given] : fields) {
        const CouponField &field = *coupon_field(name);
        if (field.kind == Kind::fact) {
            out.facts[static_cast<std::size_t>(field.fact)] = word_index(info(field.fact), given.text);
        } else if (field.kind == Kind::exams) {
            for (const Exam exam : exams_in(given.text)) out.called_for.set(static_cast<std::size_t>(exam));
        } else if (field.kind == Kind::measure && !name.starts_with("thickness")) {
            out.values.set(field.quantity, given.value);
        }
    }
    if (const std::string process = get("process"); !process.empty())
        put_words(out, Fact::process, processes_in(process), &out.more_processes);
    if (const std::string position = get("position"); !position.empty())
        put_words(out, Fact::position, positions_in(position), nullptr);
    // A metal group that is a metal's name tells the metal.
    const std::string material = get("material");
    if (const std::string metal = material.empty() ? get("metal-group") : material; !metal.empty()) {
        put_words(out, Fact::material, materials_in(metal), &out.more_materials);
        out.not_magnetic = names_unmagnetic_metal(metal);
        out.has_magnetic = names_magnetic_metal(metal);
    }
    std::vector<Exact> members;
    for (const char *name : {"thickness", "thickness-2"})
        if (const auto found = fields.find(name); found != fields.end())
            members.push_back(found->second.value);
    if (!members.empty()) {
        out.values.set(Quantity::thinner, *std::min_element(members.begin(), members.end()));
        out.values.set(Quantity::thicker, *std::max_element(members.begin(), members.end()));
    }
    out.line.closed = get("seam") == "girth";
    if (out.values.has(Quantity::weld_length)) {
        out.line.length = Length{out.values[Quantity::weld_length]};
    } else if (out.line.closed && out.values.has(Quantity::outside_diameter)) {
        out.line.length = circumference({out.values[Quantity::outside_diameter]});
        out.values.set(Quantity::weld_length, Exact(out.line.length->nm));
    }
    return out;
}

std::string criteria_name(const std::string &criteria) { return criteria.substr(criteria.rfind('/') + 1); }

} // namespace beadbook
