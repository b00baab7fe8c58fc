#include "technique/known_conditions.hpp"

#include "criteria/quantity_name.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"
#include "technique/part_shown.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using Kind = ConditionInfo::Kind;
using K = Dimension;

ConditionInfo amount(std::string name, K kind, std::vector<Exam> methods, std::string help) {
    return {std::move(name), Kind::amount, kind, {}, std::move(methods), std::move(help)};
}
ConditionInfo word(std::string name, std::vector<std::string> words, std::vector<Exam> methods,
                   std::string help) {
    return {std::move(name), Kind::word, {}, std::move(words), std::move(methods), std::move(help)};
}
ConditionInfo day(std::string name, std::vector<Exam> methods, std::string help) {
    return {std::move(name), Kind::day, {}, {}, std::move(methods), std::move(help)};
}
/// Of nothing of it there is no exam.
ConditionInfo some(ConditionInfo info) {
    info.needs_some = info.methods;
    return info;
}
ConditionInfo some(ConditionInfo info, std::vector<Exam> methods) {
    info.needs_some = std::move(methods);
    return info;
}
ConditionInfo each_time(ConditionInfo info) {
    info.each_time = true;
    return info;
}

/// Nothing of it cannot be read off, and stands for what nobody looked at.
ConditionInfo never_nought(ConditionInfo info, std::string why) {
    info.never_nought = std::move(why);
    return info;
}

/// Of the last time before an exam.
ConditionInfo through(ConditionInfo info) {
    info.through = true;
    return info;
}

ConditionInfo before_exam(ConditionInfo info) {
    info.before_exam = true;
    return info;
}

/// By that word nobody can have examined.
ConditionInfo undone_by(ConditionInfo info, std::string word, std::string why) {
    info.undone_by = std::move(word);
    info.undone_why = std::move(why);
    return info;
}

/// The same, only beside a word of another condition.
ConditionInfo undone_beside(ConditionInfo info, std::string word, std::string other, std::string other_word,
                            std::string why) {
    info = undone_by(std::move(info), std::move(word), std::move(why));
    info.undone_beside = std::move(other);
    info.undone_word = std::move(other_word);
    return info;
}

ConditionInfo not_over(ConditionInfo info, std::string other) {
    info.not_over = std::move(other);
    return info;
}

/// Checks of equipment are asked for each year, or more often.
ConditionInfo checked_before(ConditionInfo info) {
    info = before_exam(std::move(info));
    info.oldest = "1 year";
    return info;
}

ConditionInfo of_tube(ConditionInfo info, std::vector<std::string> words) {
    info.of_tube = std::move(words);
    return info;
}

/// A text that names nothing: no figure but noughts, or a word for none.
bool names_nothing(const std::string &text) {
    return means_none(text) || tells_unseen(text) ||
           (!text.empty() && (text.front() == '0' || text.front() == '.') &&
            text.find_first_of("123456789") == std::string::npos);
}

ConditionInfo within(ConditionInfo info, std::string least, std::string most) {
    info.least = std::move(least);
    info.most = std::move(most);
    return info;
}

/// Of a film: clear base reads about 0.2, what is read on it is darker than 1, and densitometers go to
/// about 5.
ConditionInfo film_density(std::string name, std::string help) {
    return within(never_nought(amount(std::move(name), K::number, {Exam::RT}, std::move(help)),
                               "a clear film reads about 0.2"),
                  "1", "5");
}

} // namespace

const std::vector<ConditionInfo> &condition_infos() {
    const Exam VT = Exam::VT, MT = Exam::MT, PT = Exam::PT, RT = Exam::RT;
    const std::vector<std::string> yes_no{"yes", "no"};
    static const std::vector<ConditionInfo> table{
        within(some(never_nought(amount("light", K::light, {VT, MT, PT}, "visible light on the surface"),
                                 "in the dark nobody sees anything; what is let in under UV-A is 'ambient'"),
                    {VT}),
               "100 lx", "150000 lx"),
        within(never_nought(amount("distance", K::length, {VT}, "from the eye to the surface"),
                            "an eye on the surface sees nothing"),
               "1 mm", "1 m"),
        within(amount("angle", K::angle, {VT}, "of view to the surface"), "15 deg", "90 deg"),
        word("aids", {}, {VT}, "mirrors, borescopes, lenses"),
        word("technique", {"yoke", "prods", "coil", "head shot", "central conductor", "cable"}, {MT},
             "how the part is magnetized"),
        word("current kind", {"AC", "HWDC", "FWDC", "DC", "permanent"}, {MT},
             "kind of current, or a permanent magnet"),
        within(never_nought(amount("current", K::current, {MT}, "magnetizing current"),
                            "no current magnetizes nothing"),
               "1 A", "20000 A"),
        within(never_nought(amount("spacing", K::length, {MT}, "between the poles of a yoke or the prods"),
                            "poles that touch magnetize nothing between them"),
               "0.25 in", "24 in"),
        within(some(amount("lift", K::weight, {MT}, "that the yoke lifts at this spacing")), "1 lb",
               "150 lb"),
        // Along one alone, what runs with it is not shown.
        within(some(amount("directions", K::number, {MT}, "field directions, about 90 degrees apart")), "2",
               "12"),
        within(each_time(some(amount("field", K::field, {MT}, "tangential field at the surface"))), "5 G",
               "300 G"),
        within(each_time(
                   never_nought(amount("L/D", K::number, {MT}, "length over diameter of the part in a coil"),
                                "no part is without length")),
               "0.1", "100"),
        word("particles", {"dry", "wet"}, {MT}, "how they are brought on"),
        word("colour", {"visible", "fluorescent"}, {MT}, "of the particles"),
        within(never_nought(amount("bath", K::concentration, {MT}, "particles in 100 mL, settled"),
                            "a bath without particles shows nothing"),
               "0.05 mL", "5 mL"),
        word("carrier", {"oil", "water"}, {MT}, "of the bath"),
        within(
            never_nought(amount("settling", K::time, {MT}, "of the bath sample"), "nothing settles at once"),
            "5 min", "24 h"),
        word("prod tips", {"copper", "lead", "steel", "aluminium"}, {MT}, "metal of their tips"),
        word("open circuit", {"over 25 V", "up to 25 V"}, {MT},
             "voltage of the prods' source without a part"),
        within(never_nought(amount("turns", K::number, {MT}, "of the coil or cable round the part"),
                            "without a turn there is no coil"),
               "1", "1000"),
        each_time(within(amount("cleaned", K::length, {MT}, "clean and dry beside the weld, on each side"),
                         "0 in", "12 in")),
        word("demagnetizing", {"needed", "not needed"}, {MT}, "was the part to be demagnetized"),
        within(each_time(amount("residual", K::field, {MT}, "field left after demagnetizing")), "0 G",
               "100 G"),
        word("type", {"I", "II"}, {PT}, "penetrant: I fluorescent, II visible"),
        word("removal", {"A", "B", "C", "D"}, {PT},
             "method: A water, B lipophilic, C solvent, D hydrophilic"),
        word("sensitivity", {"1/2", "1", "2", "3", "4"}, {PT}, "level of a type I penetrant"),
        each_time(word("flushed", yes_no, {PT}, "was solvent poured or sprayed on to remove penetrant")),
        undone_beside(word("earlier dye", yes_no, {PT}, "was visible penetrant used on it before"), "yes",
                      "type", "I", "its rest in a flaw puts out the light of a type I penetrant"),
        word("looking for", {"service", "fabrication"}, {PT}, "flaws from service or from making"),
        within(each_time(amount("temperature", K::temperature, {PT}, "of the part")), "0 C", "200 C"),
        within(never_nought(amount("base dwell", K::time, {PT},
                                   "dwell that the procedure gives at ordinary temperature"),
                            "no procedure gives none"),
               "1 min", "4 h"),
        within(some(amount("dwell", K::time, {PT}, "penetrant dwell")), "1 min", "4 h"),
        within(never_nought(amount("emulsifier", K::time, {PT}, "emulsifier or remover dwell"),
                            "one that was not used is left out"),
               "1 s", "30 min"),
        within(amount("drying", K::time, {PT}, "from removal to developer"), "0 min", "4 h"),
        word("dried by", {"oven", "air", "wiping"}, {PT}, "how it was dried"),
        within(amount("oven", K::temperature, {PT}, "drying oven"), "10 C", "150 C"),
        word("developer", {"dry", "soluble", "suspended", "nonaqueous"}, {PT}, "form of the developer"),
        within(some(amount("developing", K::time, {PT}, "from dry developer to reading")), "1 min", "24 h"),
        within(never_nought(amount("uv", K::irradiance, {MT, PT}, "UV-A on the surface"),
                            "a lamp that gives none is off"),
               "100 uW/cm2", "200 mW/cm2"),
        within(amount("ambient", K::light, {MT, PT}, "visible light under UV-A"), "0 lx", "500 lx"),
        word("booth", yes_no, {MT, PT}, "was it looked at in a darkened booth"),
        word("source", {"X-ray", "Ir-192", "Co-60", "Se-75"}, {RT}, "kind of source"),
        never_nought(word("energy", {}, {RT}, "tube voltage, or activity"),
                     "a source without any shows nothing"),
        within(never_nought(amount("focal size", K::length, {RT}, "effective size of the source"),
                            "no source is a point"),
               "0.001 mm", "1 in"),
        within(never_nought(
                   amount("source to object", K::length, {RT}, "source to the source side of the object"),
                   "a source stands off"),
               "1 mm", "100 ft"),
        within(each_time(never_nought(
                   amount("object to film", K::length, {RT}, "source side of the object to the film"),
                   "the object lies between")),
               "0.1 mm", "10 ft"),
        within(each_time(never_nought(amount("unsharpness", K::length, {RT},
                                             "geometric; worked out from the three sizes if not given"),
                                      "no source is a point")),
               "0.0001 in", "0.1 in"),
        of_tube(word("view",
                     {"single wall", "double wall single image", "ellipse", "superimposed", "panoramic"},
                     {RT}, "exposure arrangement"),
                {"double wall single image", "ellipse", "superimposed"}),
        within(some(amount("exposures", K::number, {RT}, "number of exposures")), "1", "100"),
        not_over(each_time(film_density("density", "lowest film density in the area of interest")),
                 "highest density"),
        each_time(film_density("highest density", "highest film density there")),
        each_time(film_density("density at iqi", "film density beside the wire or through the plaque")),
        each_time(undone_by(
            word("film marks", {"none", "some"}, {RT}, "of processing or handling, in the area of interest"),
            "some", "what lies under a mark is not seen, and a mark is taken for a flaw")),
        never_nought(word("iqi", {}, {RT}, "designation"),
                     "by its designation it is known what had to be seen"),
        word("iqi side", {"source", "film"}, {RT}, "where it stood"),
        each_time(undone_by(word("iqi seen", yes_no, {RT}, "is the hole or wire asked for visible"), "no",
                            "an image that does not show it shows no fine crack either")),
        each_time(undone_by(
            word("letter B", {"not seen", "darker", "lighter"}, {RT}, "image of the back-scatter letter"),
            "lighter", "the film was fogged by what scatters behind it, which hides fine flaws")),
        word("image", {"film", "digital"}, {RT}, "what was read"),
        word("level", {"I", "II", "III", "CWI", "SCWI"}, {}, "the examiner's, in this method"),
        through(day("certificate", {}, "last day of the examiner's certificate")),
        before_exam(day("vision", {}, "day of the examiner's last vision test")),
        word("vision test", {"J1", "J2", "N4.5"}, {}, "smallest letters read"),
        before_exam(day("colour vision", {}, "day of the examiner's last test of colour vision")),
        day("meter due", {VT, MT, PT}, "next calibration of the light meters"),
        checked_before(day("yoke checked", {MT}, "last check of the yoke's lift")),
        checked_before(day("ammeter checked", {MT}, "last check of the ammeter")),
        before_exam(
            day("unit checked", {MT}, "last check of the unit's timer and quick break, if it has them")),
        day("field meter due", {MT}, "next calibration of the meter of the field"),
        before_exam(day("light checked", {MT, PT}, "last check of the visible and the ambient light")),
        before_exam(day("lamp checked", {MT, PT}, "last look at the UV-A lamp's filter and housing")),
        each_time(word("uv checked", {"this day", "earlier"}, {MT, PT}, "when the UV-A was measured last")),
        each_time(word("system checked", {"this day", "earlier"}, {MT, PT},
                       "when the whole system was last tried on a known piece")),
        each_time(word("water break checked", {"this day", "earlier"}, {MT},
                       "when the water break test of the bath was made last")),
        each_time(word("bath checked", {"this shift", "this day", "earlier"}, {MT},
                       "when the particles in the bath were measured last")),
        before_exam(day("contamination checked", {MT}, "last check of the bath for dirt")),
    };
    return table;
}

const ConditionInfo *condition_info(std::string_view name) {
    const auto &all = condition_infos();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const ConditionInfo &c) { return c.name == name; });
    return found == all.end() ? nullptr : &*found;
}

const Names &practice_names() {
    static const Names table = [] {
        Names out;
        Slot quantities = 0, words = 0, days = 0;
        for (const auto &c : condition_infos()) {
            if (c.kind == Kind::amount)
                out.add({c.name, Name::Kind::quantity, quantities++, c.dimension, {}});
            else if (c.kind == Kind::word)
                out.add({c.name, Name::Kind::word, words++, Dimension::number, c.words});
            else
                out.add({c.name, Name::Kind::day, days++, Dimension::number, {}});
        }
        for (const Fact fact : {Fact::joint, Fact::form, Fact::magnetic})
            out.add({std::string(info(fact).name), Name::Kind::word, words++, Dimension::number,
                     info(fact).words});
        for (const char *size : {"thickness", "diameter"})
            out.add({size, Name::Kind::quantity, quantities++, Dimension::length, {}});
        return out;
    }();
    return table;
}

std::string told_value(const std::string &name, const std::string &value) {
    const ConditionInfo *info = condition_info(name);
    return (info && info->through ? "until " : "") + value;
}

namespace {

/// current=AC is the kind of a current.
std::string word_of_another(const ConditionInfo &info, const std::string &text) {
    for (const auto &other : condition_infos())
        if (other.name.starts_with(info.name + " "))
            if (const std::string word = word_among(text, other.words); !word.empty())
                return "; write '" + other.name + "=" + word + "'";
    return "";
}

} // namespace

ConditionValue read_condition_value(const ConditionInfo &info, const std::string &text) {
    ConditionValue out{info.kind, text, {}, {}};
    try {
        if (info.kind == Kind::amount) out.amount = parse_amount(text, info.dimension);
        if (info.kind == Kind::day) out.day = parse_day(text);
    } catch (const InputError &e) {
        throw InputError(info.name + ": " + e.what() + word_of_another(info, text), e.column);
    }
    const bool listed_word = std::find(info.words.begin(), info.words.end(), text) != info.words.end();
    if (info.kind == Kind::word && !info.words.empty() && !listed_word)
        throw InputError(info.name + ": '" + shown(text) + "'; expected " + listed(info.words, "or") +
                         did_you_mean(text, info.words));
    return out;
}

std::string impossible(const ConditionInfo &info, const ConditionValue &value) {
    const bool nothing = info.kind == Kind::amount ? value.amount == Exact(0)
                         : info.kind == Kind::word ? names_nothing(value.text)
                                                   : false;
    return nothing ? info.never_nought : "";
}

std::string unbelievable(const ConditionInfo &info, const std::string &text) {
    if (info.least.empty()) return "";
    const Exact value = read_condition_value(info, text).amount;
    // Of nothing there is no exam, or it is refused: that is told elsewhere.
    if ((value == Exact(0) && (!info.needs_some.empty() || !info.never_nought.empty())) ||
        (value >= parse_amount(info.least, info.dimension, {}) &&
         value <= parse_amount(info.most, info.dimension, {})))
        return "";
    return info.name + " " + shown(text) + ": from " + info.least + " to " + info.most +
           " is common; is the " + (info.dimension == Dimension::number ? "number" : "unit") +
           " the right one?";
}

std::string unbelievable_of_form(const ConditionInfo &info, const std::string &text,
                                 const std::string &form) {
    const auto &words = info.of_tube;
    if (form.empty() || form == "tube" || std::find(words.begin(), words.end(), text) == words.end())
        return "";
    return info.name + " " + text + ": so a tube is radiographed, and the coupon's form is " + form +
           "; which of the two is wrong?";
}

std::string unbelievably_old(const ConditionInfo &info, const std::string &text, Day examined) {
    if (info.oldest.empty() || read_condition_value(info, text).day + parse_period(info.oldest) >= examined)
        return "";
    return info.name + " " + text + ": that is more than " + info.oldest + " before the exam of " +
           print(examined) + "; is the year the right one?";
}

std::string undone(const ConditionInfo &info, const std::map<std::string, std::string> &conditions) {
    const auto says = [&](const std::string &name, const std::string &word) {
        const auto found = conditions.find(name);
        return found != conditions.end() && found->second == word;
    };
    const bool so = !info.undone_by.empty() && says(info.name, info.undone_by) &&
                    (info.undone_beside.empty() || says(info.undone_beside, info.undone_word));
    return so ? info.undone_why : "";
}

std::string contradicted(const ConditionInfo &info, const std::map<std::string, std::string> &conditions) {
    const auto lower = conditions.find(info.name), upper = conditions.find(info.not_over);
    if (info.not_over.empty() || lower == conditions.end() || upper == conditions.end()) return "";
    const ConditionInfo &other = *condition_info(info.not_over);
    if (read_condition_value(info, lower->second).amount <= read_condition_value(other, upper->second).amount)
        return "";
    return info.name + " " + lower->second + " is more than " + other.name + " " + upper->second + "; " +
           info.name + " is the " + info.help + ", and " + other.name + " the " + other.help;
}

} // namespace beadbook
