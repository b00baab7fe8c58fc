#include "report/own_file.hpp"

#include "criteria/files_above.hpp"
#include "criteria/load.hpp"
#include "criteria/methods.hpp"
#include "criteria/planar.hpp"
#include "criteria/provenance.hpp"
#include "measure/text.hpp"
#include "operations/looser.hpp"
#include "technique/practice_mark.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Types and rules that are named; the rest is counted.
constexpr std::size_t most_named = 8;

std::string named(std::vector<std::string> all) {
    const std::size_t more = all.size() > most_named ? all.size() - most_named : 0;
    all.resize(all.size() - more);
    return more == 0 ? listed(all) : joined(all, ", ") + " and " + std::to_string(more) + " more";
}

/// The exams of one type that differ: "VT: 3 rules, 1 here; RT: 2 rules, none here".
std::vector<std::string> types_words(const LackingRules &lacking) {
    std::vector<std::string> out;
    std::string of;
    for (const auto &one : lacking.types) {
        const std::string said = std::string(name_of(one.exam)) + ": " + std::to_string(one.there) +
                                 (one.there == 1 ? " rule, " : " rules, ") +
                                 (one.here == 0 ? "none" : std::to_string(one.here)) + " here";
        if (of != one.type)
            out.push_back(one.type + " (" + said + ")");
        else
            out.back().insert(out.back().size() - 1, "; " + said);
        of = one.type;
    }
    return out;
}

/// What the shipped set that this one extends lets through by its standard's own word, and answers for; of a
/// rule that was changed since, the file answers by itself.
bool is_of_shipped_base(const CriteriaSet &set, const PlanarPass &pass) {
    const auto answers = [&](const std::vector<Silence> &silences) {
        return std::any_of(silences.begin(), silences.end(), [&](const Silence &one) {
            return one.check == "cracks-pass" && one.of == pass.id();
        });
    };
    const std::string below = shipped_below(set);
    return !below.empty() && answers(shipped_criteria(below)->silences) && answers(set.silences) &&
           !answers(own_silences(set));
}

std::vector<std::string> looser_words(const CriteriaSet &set, std::optional<std::size_t> sought,
                                      const Coupon &coupon, Unit unit) {
    std::vector<std::string> out;
    for (std::size_t k = 0; k < set.classes.size(); ++k) {
        if (sought && *sought != k) continue;
        for (const auto &one : looser_than_shipped(set, k, coupon, unit))
            out.push_back("class " + set.classes[k].id + ": " + std::to_string(one.rules.size()) +
                          (one.rules.size() == 1 ? " limit" : " limits") + " looser than in " +
                          (one.shipped_class.empty() ? "" : "class " + one.shipped_class + " of ") +
                          "the shipped " + one.shipped + ": " + named(one.rules));
    }
    return out;
}

} // namespace

std::vector<std::string> lacking_words(const CriteriaSet &set) {
    std::vector<std::string> out;
    for (const auto &lacking : lacking_beside_shipped(set)) {
        std::vector<std::string> says;
        if (!lacking.types.empty()) says.push_back("says more of " + named(types_words(lacking)));
        if (!lacking.parts.empty())
            says.push_back("says otherwise what stands under " + listed(lacking.parts, "and"));
        if (!lacking.gaps.empty())
            says.push_back("leaves open what is decided here: '" + joined(lacking.gaps, "', '") + "'");
        if (!lacking.asked_otherwise.empty())
            says.push_back("asks of other finds or welds by " + named(lacking.asked_otherwise));
        if (!lacking.decided.empty())
            says.push_back("leaves open what is decided here by " + named(lacking.decided));
        if (!lacking.unmeasured.empty())
            says.push_back("wants measured what need not be here: " + named(lacking.unmeasured));
        if (!lacking.unsaid.empty())
            says.push_back("says that it lacks what is not named here: '" + joined(lacking.unsaid, "', '") +
                           "'");
        if (!lacking.called_read.empty())
            says.push_back("has only second hand or from memory what is called read here: " +
                           named(lacking.called_read));
        std::string text = (lacking.extended ? "it extends the shipped " : "it looks like the shipped ") +
                           lacking.shipped + ", which " + joined(says, ", and ");
        if (!lacking.rules.empty())
            text += "; its " + std::string(lacking.rules.size() == 1 ? "rule " : "rules ") +
                    named(lacking.rules) + (lacking.rules.size() == 1 ? " is" : " are") + " not here";
        out.push_back(std::move(text));
    }
    return out;
}

std::vector<std::string> own_planar_passes(const CriteriaSet &set, std::optional<std::size_t> of_class) {
    std::vector<std::string> out;
    for (const auto &one : planar_passes(set, Vocabulary::shipped(), of_class))
        if (!is_of_shipped_base(set, one))
            out.push_back((one.relevance ? "relevance '" : "rule '") + one.id() +
                          "': " + one.words(set, Vocabulary::shipped()));
    return out;
}

std::vector<std::string> own_doubts(const CriteriaSet &set) {
    std::vector<std::string> out;
    if (is_shipped_set(set.name, set.hash)) return out;
    for (const auto &one : set.doubted)
        if (one.check != "cracks-pass") out.push_back(one.check + " of '" + one.of + "'");
    return out;
}

std::vector<std::string> own_answers(const CriteriaSet &set) {
    std::vector<std::string> out;
    if (is_shipped_set(set.name, set.hash)) return out;
    for (const auto &one : own_silences(set))
        out.push_back(one.check + " of '" + one.of + "' (" + one.reason + ")");
    return out;
}

std::vector<std::string> own_looser(const CriteriaSet &set) {
    return looser_words(set, std::nullopt, Coupon(), set.unit);
}

std::vector<std::string> own_looser(const Judged &judged) {
    return looser_words(*judged.set, judged.sought, judged.coupon, judged.unit);
}

void add_own_file(Document &doc, const CriteriaSet &set) {
    const std::string own = own_file_words(set.name, set.hash);
    if (own.empty()) return;
    doc.line(Words("Criteria " + set.name + ": " + own, Tone::cannot_say));
    for (const auto &one : lacking_words(set))
        doc.line(Words("Criteria " + set.name + ": " + one, Tone::cannot_say));
}

void add_own_file(Document &doc, const Judged &judged) {
    const CriteriaSet &set = *judged.set;
    add_own_file(doc, set);
    if (is_shipped_set(set.name, set.hash)) return;
    for (const auto &one : own_planar_passes(set, judged.sought))
        doc.line(Words("Criteria " + set.name + ": " + one, Tone::cannot_say));
    if (const auto doubts = own_doubts(set); !doubts.empty())
        doc.line(Words("Criteria " + set.name + ": its check doubts what the file does not answer: " +
                           named(doubts) + "; 'criteria check' tells more",
                       Tone::cannot_say));
    if (const auto answers = own_answers(set); !answers.empty())
        doc.line(Words("Criteria " + set.name + ": it answers for itself: " + joined(answers, "; "),
                       Tone::cannot_say));
    for (const auto &looser : own_looser(judged))
        doc.line(Words("Criteria " + set.name + ", " + looser, Tone::cannot_say));
}

std::string practice_told(const ExamRecord &exam) {
    const std::string mark = own_practice_mark(exam.practice, exam.practice_hash);
    return exam.practice + (mark.empty() ? "" : " (" + mark + ")");
}

Words own_file_behind(const std::string &mark) {
    return mark.empty() ? Words() : Words(" (" + mark + ")", Tone::cannot_say);
}

} // namespace beadbook
