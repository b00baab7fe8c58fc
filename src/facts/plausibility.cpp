#include "facts/plausibility.hpp"

#include "criteria/rule_reader.hpp"
#include "criteria/shipped.hpp"
#include "facts/commented_find.hpp"
#include "facts/coupon_weld.hpp"
#include "facts/largest_measured.hpp"
#include "facts/plausibility_words.hpp"
#include "facts/several_told.hpp"
#include "facts/whole_turn.hpp"
#include "language/evaluate.hpp"
#include "measure/parse.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <stdexcept>

namespace beadbook {
namespace {

using About = PlausibilityRule::About;

/// Words that can be read back, so that a rule may expect them, beside facts that are held together.
constexpr auto read_back = {Said::position,  Said::metal,     Said::sizes,    Said::micro,
                            Said::fraction,  Said::form,      Said::seam,     Said::joint_form,
                            Said::of_fillet, Said::root_find, Said::face_find};

/// The number of a length that is written in millimetres, with or without a blank before the unit; else
/// empty.
std::string number_of_millimetres(const Typed &typed) {
    if (!lowered(typed.text).ends_with("mm")) return "";
    return std::string(trimmed(std::string_view(typed.text).substr(0, typed.text.size() - 2)));
}

/// A measure or place in whole millimetres whose number is written as inches are: 1/32, 3/8, 1-1/2.
const Typed *like_a_fraction_of_an_inch(const IndicationRecord &find) {
    const auto is = [](const Typed &typed) {
        const std::string number = number_of_millimetres(typed);
        const std::size_t slash = number.find('/');
        if (slash == std::string::npos) return false;
        const std::string below = number.substr(slash + 1);
        return number.find_first_of("- ") < slash || below == "8" || below == "16" || below == "32" ||
               below == "64";
    };
    for (const auto &[quantity, typed] : find.measures)
        if (is(typed)) return &typed;
    for (const auto *place : {&find.at, &find.middle, &find.end, &find.across})
        if (*place && is(**place)) return &**place;
    return nullptr;
}

/// A stretch on a closed weld that is longer than three quarters of it was soon written the other way round
/// (common practice, no source: 2:30 to 2:00 is half an hour sooner than eleven and a half).
std::string most_of_the_turn(const IndicationRecord &find, const WeldLine &line) {
    const bool length_said = find.measures.contains(Quantity::length);
    if (!line.closed || !line.length || !find.at || !find.end || length_said) return "";
    const Exact whole(line.length->nm), way = find.end->value - find.at->value;
    const Exact extent = way < Exact(0) ? way + whole : way;
    if (extent <= whole * Exact(3) / Exact(4)) return "";
    return "from " + find.at->text + " to " + find.end->text +
           " is more than three quarters of the turn; was it from " + find.end->text + " to " +
           find.at->text + "?";
}

/// One entry as the rules see it.
struct Entered {
    Coupon coupon;
    Environment::Values local; ///< of a find, as measured
    std::array<std::uint8_t, said_count> words{};
    std::array<std::optional<Day>, 3> days;
    Day today{};
    std::optional<Day> registered;             ///< the coupon
    std::string position, material;            ///< as they were written
    std::string found;                         ///< a find's type and method
    std::map<Slot, std::string> contradicting; ///< facts, as they read together
    const Typed *inches = nullptr;             ///< of a find, in millimetres and written as inches are

    void word(Said said, bool first) { words[static_cast<std::size_t>(said)] = first ? 1 : 2; }

    Entered(const CouponRecord &record, Day on) : coupon(record.facts()), today(on) {
        const auto fact = [&](Said said, Fact of) {
            words[static_cast<std::size_t>(said)] = coupon.facts[static_cast<std::size_t>(of)];
        };
        fact(Said::joint, Fact::joint);
        fact(Said::form, Fact::form);
        fact(Said::seam, Fact::seam);
        fact(Said::magnetic, Fact::magnetic);
        fact(Said::joint_form, Fact::joint_form);
        // A groove whose form nobody told may be a butt, and is asked about as one.
        if (record.get("joint") == "groove" && record.get("joint-form").empty())
            words[static_cast<std::size_t>(Said::joint_form)] = word_index(info(Fact::joint_form), "butt");
        if ((position = record.get("position")); !position.empty())
            word(Said::position, goes_round(position)), word(Said::of_fillet, is_of_a_fillet(position));
        for (const HeldTogether &one : held_together())
            if (std::string read = one.of(record); !read.empty()) {
                word(one.said, true);
                contradicting[static_cast<Slot>(one.said)] = std::move(read);
            }
        if (const auto rotated = record.get("rotated"); !rotated.empty())
            word(Said::rotated, same_word(rotated, "yes"));
        material = record.get(record.get("material").empty() ? "metal-group" : "material");
        if (!material.empty()) word(Said::metal, coupon.not_magnetic);
        const auto unit = record.fixed_unit();
        words[static_cast<std::size_t>(Said::units)] = !unit ? 3 : *unit == Unit::inch ? 1 : 2;
        if (const std::string welded = record.get("welded"); !welded.empty())
            days[static_cast<std::size_t>(Dated::welded)] = parse_day(welded);
    }

    Truth holds_here(const Condition &c) const {
        Missing missing;
        switch (c.kind) {
        case Condition::Kind::comparison: return c.compare(Environment{coupon.values, &local}, missing);
        case Condition::Kind::word: return c.word(words[c.slot], missing);
        default: break;
        }
        // A day to come is refused elsewhere, and is not long ago.
        if (!days[c.slot] || *days[c.slot] > today) return Truth::unknown;
        if (c.slot != static_cast<Slot>(Dated::examined_undated)) return c.day(*days[c.slot], today);
        const Day begun = registered.value_or(today);
        return *days[c.slot] > begun ? Truth::unknown : c.day(*days[c.slot], begun);
    }
};

/// Names with their values, each once: "depth 5 in, thicker member 0.065 in".
class Reading {
public:
    Reading(const Entered &entered, Unit unit, const IndicationRecord *find)
        : entered_(entered), unit_(unit), find_(find) {}

    std::string of(const Condition &c) {
        if (c.kind == Condition::Kind::not_past || c.kind == Condition::Kind::within)
            return c.subject + " " + print(*entered_.days[c.slot]);
        if (c.kind == Condition::Kind::word) return of_word(c);
        add(c.left);
        for (const auto &edge : c.edges) add(edge.right);
        return text_;
    }

private:
    std::string of_word(const Condition &c) const {
        if (const auto read = entered_.contradicting.find(c.slot); read != entered_.contradicting.end())
            return read->second;
        switch (static_cast<Said>(c.slot)) {
        case Said::metal: return "magnetic yes, material " + shown(entered_.material);
        case Said::sizes: return "a length and no width";
        case Said::micro: return entered_.found;
        case Said::root_find: return entered_.found + " on the face";
        case Said::face_find: return entered_.found + " at the root";
        case Said::form: return of_fact(c, Fact::form);
        case Said::seam: return of_fact(c, Fact::seam);
        case Said::joint_form: return of_fact(c, Fact::joint_form);
        case Said::fraction: {
            const std::string typed = number_of_millimetres(*entered_.inches);
            return typed + " mm or " + typed + " in (" +
                   print(parse_amount(typed, Dimension::length, Unit::inch), Dimension::length,
                         Unit::millimetre) +
                   ")";
        }
        default: return "position " + entered_.position;
        }
    }

    std::string of_fact(const Condition &c, Fact fact) const {
        return c.subject + " " + words_of_fact(fact)[entered_.words[c.slot] - 1u];
    }

    void add(const Formula &formula) {
        const Environment values{entered_.coupon.values, &entered_.local};
        for (const Slot slot : formula.quantities()) {
            if (!values.has(slot) || !seen_.insert(slot).second) continue;
            const auto quantity = static_cast<Quantity>(slot);
            const Typed *typed = nullptr;
            if (find_)
                if (const auto at = find_->measures.find(quantity); at != find_->measures.end())
                    typed = &at->second;
            text_ += (text_.empty() ? "" : ", ") + plausibility_names().called(slot) + " " +
                     (typed ? typed->text : print(Exact(values[slot]), info(quantity).dimension, unit_));
        }
    }

    const Entered &entered_;
    Unit unit_;
    const IndicationRecord *find_;
    std::string text_;
    std::set<Slot> seen_;
};

std::vector<Unlikely> broken(const std::vector<PlausibilityRule> &rules, About about, const Entered &entered,
                             Unit unit, const IndicationRecord *find = nullptr) {
    std::vector<Unlikely> out;
    for (const auto &rule : rules) {
        if (rule.about != about || entered.holds_here(rule.expect) != Truth::no) continue;
        if (!std::all_of(rule.when.begin(), rule.when.end(),
                         [&](const Condition &c) { return entered.holds_here(c) == Truth::yes; }))
            continue;
        out.push_back({rule.id, Reading(entered, unit, find).of(rule.expect) + ": " + rule.why});
    }
    return out;
}

class PlausibilityReader {
public:
    PlausibilityReader(const std::string &text, Issues &issues)
        : issues_(issues), root_(read_yaml(text, issues)) {}

    std::vector<PlausibilityRule> read() {
        if (issues_.any_error() && root_.entries.empty()) return {};
        const Fields top(root_, "", {"rules"}, issues_);
        top.need("rules");
        for (const Yaml *node : top.items("rules")) read_one(*node);
        return std::move(rules_);
    }

private:
    static bool can_be_read(Slot slot) {
        const auto is = [&](Said said) { return slot == static_cast<Slot>(said); };
        const auto together = held_together();
        return std::any_of(read_back.begin(), read_back.end(), is) ||
               std::any_of(together.begin(), together.end(), [&](const auto &one) { return is(one.said); });
    }

    void read_one(const Yaml &node) {
        const std::string name = node.find("id") ? node.find("id")->text : "?";
        const Fields fields(node, "rules." + name, {"id", "about", "when", "expect", "why", "standing"},
                            issues_);
        PlausibilityRule out;
        out.id = fields.needed_text("id");
        out.why = fields.needed_text("why");
        out.standing = read_standing(fields, issues_);
        if (!ids_.insert(out.id).second) fields.error("id", "a rule above has the same id");
        static const std::vector<std::string> kinds{"coupon", "exam", "indication"};
        const std::string about = fields.needed_text("about");
        const auto kind = std::find(kinds.begin(), kinds.end(), about);
        if (kind != kinds.end())
            out.about = static_cast<About>(kind - kinds.begin());
        else if (!about.empty())
            fields.error("about", "'" + shown(about) + "'; expected " + listed(kinds, "or"));
        out.when = read_conditions(fields, "when", plausibility_names(), issues_);
        const Yaml *expect = fields.need("expect");
        if (!expect) return;
        auto condition = read_condition(*expect, fields.path_of("expect"), plausibility_names(), issues_);
        if (!condition) return;
        if (condition->kind == Condition::Kind::word && !can_be_read(condition->slot))
            fields.error("expect", "expected a comparison or a day, or a word that can be read back");
        out.expect = std::move(*condition);
        rules_.push_back(std::move(out));
    }

    Issues &issues_;
    Yaml root_;
    std::vector<PlausibilityRule> rules_;
    std::set<std::string> ids_;
};

} // namespace

const Plausibility &Plausibility::shipped() {
    static const Plausibility out = [] {
        Issues issues;
        Plausibility read_in = read(shipped_file("plausible.yaml"), issues);
        if (issues.any_error())
            throw std::logic_error("built-in plausible.yaml: " + issues.all().front().text);
        return read_in;
    }();
    return out;
}

Plausibility Plausibility::read(const std::string &text, Issues &issues) {
    Plausibility out;
    out.rules_ = PlausibilityReader(text, issues).read();
    return out;
}

std::vector<Unlikely> Plausibility::of(const CouponRecord &coupon, Day today) const {
    auto out = broken(rules_, About::coupon, Entered(coupon, today), coupon.unit());
    if (const std::string note = coupon.get("note"); reads_like_a_find(note))
        out.push_back({"note-like-a-find", "the note '" + shown(note) +
                                               "' reads like a find, and no verdict goes by a note; is it "
                                               "one? It is logged with the exam that found it"});
    for (const char *field : {"material", "filler", "procedure", "cohort", "rotated"})
        for (const auto &told : told_in(coupon.get(field)))
            if (is_planar_find(told))
                out.push_back({"field-like-a-find", std::string(field) + " '" + shown(coupon.get(field)) +
                                                        "' tells of '" + told.word +
                                                        "', and no verdict goes by it; is it one? It is "
                                                        "logged with the exam that found it"});
    return out;
}

std::vector<Unlikely> Plausibility::of(const CouponRecord &coupon, const ExamRecord &exam, Day today,
                                       std::optional<Day> registered) const {
    Entered entered(coupon, today);
    entered.registered = registered;
    entered.days[static_cast<std::size_t>(Dated::examined)] = exam.date;
    if (coupon.get("welded").empty())
        entered.days[static_cast<std::size_t>(Dated::examined_undated)] = exam.date;
    return broken(rules_, About::exam, entered, coupon.unit());
}

std::vector<Unlikely> Plausibility::of(const CouponRecord &coupon, const IndicationRecord &find, Exam method,
                                       std::span<const IndicationRecord> others, const TypedAs &typed) const {
    Entered entered(coupon, Day{});
    for (const auto &[quantity, typed] : find.measures) entered.local.set(quantity, typed.value);
    if (find.across) entered.local.set(across, find.across->value);
    const LargestMeasured largest = largest_measured(find, others);
    if (largest.fillet) entered.local.set(largest_fillet, *largest.fillet);
    if (largest.throat) entered.local.set(largest_throat, *largest.throat);
    const ImperfectionType &type = Vocabulary::shipped()[find.type];
    entered.word(Said::kind, !type.measured);
    if (type.shape != Shape::unknown) entered.word(Said::shape, type.shape == Shape::linear);
    entered.word(Said::group, type.is_group());
    const bool long_only = (find.measures.contains(Quantity::length) || find.end) &&
                           !find.measures.contains(Quantity::width) &&
                           !find.measures.contains(Quantity::size);
    entered.word(Said::sizes, long_only);
    entered.words[static_cast<std::size_t>(Said::method)] = static_cast<std::uint8_t>(method) + 1;
    entered.word(Said::micro, type.needs_microscope());
    entered.word(Said::loss, type.is_loss());
    const auto lies_on = [&](const char *side) {
        return find.words[static_cast<std::size_t>(Attribute::side)] ==
               word_index(info(Attribute::side), side);
    };
    entered.word(Said::root_find, type.is_of_root() && lies_on("face"));
    entered.word(Said::face_find, type.is_of_face() && lies_on("root") && coupon.get("sides") == "one");
    const auto named = std::find(spoken_types.begin(), spoken_types.end(), type.name);
    entered.words[static_cast<std::size_t>(Said::type)] = static_cast<std::uint8_t>(
        std::min<std::ptrdiff_t>(named - spoken_types.begin() + 1, std::ssize(spoken_types)));
    entered.found = type.name + " by " + std::string(name_of(method));
    entered.word(Said::measured_in,
                 std::any_of(find.measures.begin(), find.measures.end(),
                             [](const auto &one) { return !number_of_millimetres(one.second).empty(); }));
    entered.word(Said::unit_written, !typed.bare);
    entered.inches = like_a_fraction_of_an_inch(find);
    entered.word(Said::fraction, entered.inches != nullptr);
    auto out = broken(rules_, About::indication, entered, coupon.unit(), &find);
    if (std::string why = most_of_the_turn(find, coupon.facts().line); !why.empty())
        out.push_back({"most-of-the-turn", std::move(why)});
    if (std::string why = point_or_turn(find, coupon.facts().line, coupon.fixed_unit()); !why.empty())
        out.push_back({"point-or-turn", std::move(why)});
    if (const std::string one = one_of_plural(typed.named);
        !one.empty() && !find.measures.empty() && !type.is_group() && !type.measured)
        out.push_back({"plural-of-one", "'" + shown(typed.named) +
                                            "' are several and this is one find; how many? Write '" + one +
                                            " ...' for each of them, with its own size and place" +
                                            (type.is_volume() ? ", or a group by its name" : "")});
    if (!typed.named.empty() && one_of_plural(typed.named).empty() && type.name == "porosity" &&
        !find.measures.empty() && !find.measures.contains(Quantity::area))
        out.push_back(
            {"porosity-of-how-many",
             "porosity may be one pore or many, and this is judged as one; is it one? Write 'pore ...' "
             "then, or for many each by itself, or 'scattered', 'clustered' or 'linear porosity ...' "
             "with the size of them all"});
    if (find.remark.empty()) return out;
    if (const std::string other = other_find_in_remark(find, coupon.facts().line, coupon.fixed_unit());
        !other.empty())
        out.push_back({"remark-like-a-find", "the remark '" + shown(other) +
                                                 "' reads like a find of its own, and no verdict goes by a "
                                                 "remark; is it one?"});
    if (const std::string number = number_in_remark(find.remark); !number.empty())
        out.push_back({"remark-tells-several",
                       "the remark '" + shown(number) +
                           "' tells several, no verdict goes by a remark, and this is one find; are there "
                           "more? Each is logged by itself, a group of pores by its name"});
    return out;
}

std::string question_of(const Unlikely &unlikely) {
    return "is that meant? " + unlikely.reading + " (" + unlikely.rule + ")";
}

bool is_meant(const std::vector<std::string> &sure, std::string_view rule) {
    return std::find(sure.begin(), sure.end(), rule) != sure.end();
}

std::vector<std::string> set_aside_by(const std::vector<Unlikely> &found, bool sure,
                                      const std::vector<std::string> &before) {
    std::vector<std::string> out;
    std::string asked;
    for (const auto &one : found) {
        out.push_back(one.rule);
        if (sure || std::find(before.begin(), before.end(), one.rule) != before.end()) continue;
        asked += (asked.empty() ? "" : "\n") + question_of(one);
    }
    if (!asked.empty()) throw Unsure(asked);
    return out;
}

} // namespace beadbook
