#include "criteria/provenance.hpp"

#include "criteria/extend.hpp"
#include "criteria/files_above.hpp"
#include "criteria/load.hpp"
#include "criteria/put_over.hpp"
#include "criteria/shipped.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

bool is_name_of_a_set(const std::string &name) {
    const auto &names = shipped_sets();
    return std::binary_search(names.begin(), names.end(), name);
}

/// Letters and figures alone, in small.
std::string plain(std::string_view text) {
    std::string out = lowered(text);
    std::erase_if(out, [](unsigned char c) { return std::isalnum(c) == 0; });
    return out;
}

/// One begins with the other, and that is long enough to mean something.
bool begin_alike(const std::string &a, const std::string &b) {
    return std::min(a.size(), b.size()) >= 6 && (a.starts_with(b) || b.starts_with(a));
}

/// Whatever they are called and cite.
bool say_the_same(const Rule &own, const Rule &shipped) {
    return own.kind == shipped.kind && own.subject.types == shipped.subject.types &&
           own.subject.exams == shipped.subject.exams && own.shape == shipped.shape &&
           std::equal(own.limits.begin(), own.limits.end(), shipped.limits.begin(), shipped.limits.end(),
                      [](const Limit &a, const Limit &b) { return a.kind == b.kind && a.text == b.text; });
}

/// Most of its rules are the other's: by id and clause, whatever the numbers are and what its head says; or
/// by what they say. Of a few every shop says the same: no crack, no burn-through.
bool has_rules_of(const CriteriaSet &own, const CriteriaSet &shipped) {
    constexpr std::size_t many = 8;
    const auto most = [&](auto alike) {
        const auto taken = std::count_if(own.rules.begin(), own.rules.end(), [&](const Rule &one) {
            return std::any_of(shipped.rules.begin(), shipped.rules.end(),
                               [&](const Rule &other) { return alike(one, other); });
        });
        return 2 * static_cast<std::size_t>(taken) > own.rules.size();
    };
    return most([](const Rule &one, const Rule &other) {
               return one.id == other.id && one.clause == other.clause && !one.clause.empty();
           }) ||
           (own.rules.size() >= many && most(say_the_same));
}

/// How much speaks for taking one for the other; 0: nothing.
int likeness(const CriteriaSet &own, const std::string &below, const CriteriaSet &shipped) {
    int out = below == shipped.name ? 16 : 0;
    if (has_rules_of(own, shipped)) out += 4;
    const std::string title = plain(own.title), edition = plain(own.edition), name = plain(own.name),
                      of = plain(shipped.name);
    if (title == plain(shipped.title)) out += 4;
    if (edition == plain(shipped.edition)) out += 4;
    if (begin_alike(title, plain(shipped.title)) || begin_alike(edition, plain(shipped.edition))) out += 2;
    if (name.find(of) != std::string::npos || !nearest_word(own.name, {shipped.name}).empty()) out += 1;
    return out;
}

bool ask_the_same(const std::vector<Condition> &a, const std::vector<Condition> &b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const Condition &one, const Condition &other) { return one.text == other.text; });
}

/// Whether the one leaves open all that the other does. Classes are told apart by their places, where there
/// are as many.
bool leaves_it_open(const Gap &own, const Gap &shipped) {
    if (own.subject.has_value() != shipped.subject.has_value() || own.shape != shipped.shape ||
        !ask_the_same(own.when, shipped.when) || !ask_the_same(own.where, shipped.where))
        return false;
    if (own.subject &&
        (own.subject->types != shipped.subject->types || own.subject->exams != shipped.subject->exams))
        return false;
    for (std::size_t k = 0; own.classes.size() == shipped.classes.size() && k < own.classes.size(); ++k)
        if (shipped.classes[k] && !own.classes[k]) return false;
    return true;
}

/// What it leaves to a person, is silent of, or has only a blank for.
bool is_left_open(const Limit &limit) {
    return limit.kind == Limit::Kind::ask || limit.kind == Limit::Kind::not_said ||
           (limit.kind == Limit::Kind::value && limit.formula.has_blanks());
}

bool decides_more(const Rule &own, const Rule &shipped) {
    for (std::size_t k = 0; own.limits.size() == shipped.limits.size() && k < own.limits.size(); ++k)
        if (is_left_open(shipped.limits[k]) && !is_left_open(own.limits[k]) &&
            own.limits[k].kind != Limit::Kind::none)
            return true;
    return false;
}

bool speak_of_the_same_finds(const Rule &own, const Rule &shipped) {
    return own.subject.types == shipped.subject.types && own.subject.exams == shipped.subject.exams &&
           own.shape == shipped.shape && ask_the_same(own.when, shipped.when) &&
           ask_the_same(own.where, shipped.where);
}

void compare_rules(const CriteriaSet &own, const CriteriaSet &shipped, LackingRules &out) {
    for (const auto &rule : shipped.rules) {
        const auto here = std::find_if(own.rules.begin(), own.rules.end(),
                                       [&](const Rule &one) { return one.id == rule.id; });
        if (here == own.rules.end()) {
            // Under another name at least as much is asked, but for its numbers.
            const auto stands = [&](const Rule &one) {
                return one.kind == rule.kind && speak_of_the_same_finds(one, rule) &&
                       !decides_more(one, rule) && (one.must_be_measured || !rule.must_be_measured);
            };
            if (std::none_of(own.rules.begin(), own.rules.end(), stands))
                out.asked_otherwise.push_back(rule.id);
            continue;
        }
        if (!speak_of_the_same_finds(*here, rule)) out.asked_otherwise.push_back(rule.id);
        if (decides_more(*here, rule)) out.decided.push_back(rule.id);
        if (rule.must_be_measured && !here->must_be_measured) out.unmeasured.push_back(rule.id);
    }
}

bool is_read(const Standing &standing) { return standing.kind == Standing::Kind::read; }
bool is_read(const Rule &rule) {
    return std::any_of(rule.standings.begin(), rule.standings.end(),
                       [](const Standing &one) { return is_read(one); });
}
template <class Part>
bool is_read(const Part &part) {
    return is_read(part.standing);
}

template <class Part>
void add_called_read(const std::vector<Part> &own, const std::vector<Part> &shipped,
                     std::vector<std::string> &out) {
    for (const auto &one : own)
        if (is_read(one) && std::any_of(shipped.begin(), shipped.end(), [&](const Part &other) {
                return other.id == one.id && !is_read(other);
            }))
            out.push_back(one.id);
}

LackingRules lacking_beside(const CriteriaSet &own, const CriteriaSet &shipped,
                            const Vocabulary &vocabulary) {
    LackingRules out;
    out.shipped = shipped.name;
    out.extended = shipped_below(own) == shipped.name;
    compare_rules(own, shipped, out);
    add_called_read(own.rules, shipped.rules, out.called_read);
    add_called_read(own.relevance, shipped.relevance, out.called_read);
    add_called_read(own.merges, shipped.merges, out.called_read);
    add_called_read(own.required, shipped.required, out.called_read);
    add_called_read(own.scope, shipped.scope, out.called_read);
    for (const auto &gap : shipped.gaps)
        if (gap.beside_rules && std::none_of(own.gaps.begin(), own.gaps.end(),
                                             [&](const Gap &one) { return leaves_it_open(one, gap); }))
            out.gaps.push_back(gap.text);
    for (const auto &gap : shipped.gaps)
        if (!gap.beside_rules && std::none_of(own.gaps.begin(), own.gaps.end(),
                                              [&](const Gap &one) { return one.text == gap.text; }))
            out.unsaid.push_back(gap.text);
    for (const auto &[part, said] : shipped.parts)
        if (const auto here = own.parts.find(part); here == own.parts.end() || here->second != said)
            out.parts.push_back(part);
    for (const auto &[part, said] : own.parts)
        if (!shipped.parts.contains(part)) out.parts.push_back(part);
    const auto is_here = [&](const std::string &id) {
        return std::any_of(own.rules.begin(), own.rules.end(), [&](const Rule &r) { return r.id == id; });
    };
    for (std::size_t t = 0; t < vocabulary.size(); ++t)
        for (std::size_t e = 0; e < exam_count; ++e) {
            const auto type = static_cast<TypeId>(t);
            const auto exam = static_cast<Exam>(e);
            const auto &there = shipped.rules_for(type, exam);
            const std::size_t here = own.rules_for(type, exam).size();
            if (here >= there.size()) continue;
            // A kind of what is told already, with the same rules, adds nothing.
            const auto &under = vocabulary[type].under;
            if (under && shipped.rules_for(*under, exam) == there &&
                own.rules_for(*under, exam) == own.rules_for(type, exam))
                continue;
            out.types.push_back({vocabulary[type].name, exam, there.size(), here});
            for (const auto index : there) {
                const std::string &id = shipped.rules[index].id;
                if (!is_here(id) && std::find(out.rules.begin(), out.rules.end(), id) == out.rules.end())
                    out.rules.push_back(id);
            }
        }
    std::erase_if(out.asked_otherwise, [&](const std::string &id) { // told as not here
        return std::find(out.rules.begin(), out.rules.end(), id) != out.rules.end();
    });
    return out;
}

} // namespace

bool is_shipped_set(const std::string &name, const std::string &hash) {
    return is_name_of_a_set(name) && shipped_criteria(name)->hash == hash;
}

std::string own_file_words(const std::string &what, const std::string &name, bool named_as_shipped,
                           const std::string &hash) {
    const std::string which = " (its SHA-256 begins with " + hash.substr(0, 8) + ")";
    return named_as_shipped ? "another text of " + name + " than the one that this program ships" + which
                            : "your own file, none of the " + what + " that are shipped" + which;
}

std::string own_file_words(const std::string &set, const std::string &hash) {
    return is_shipped_set(set, hash) ? "" : own_file_words("sets", set, is_name_of_a_set(set), hash);
}

std::string own_file_mark(bool named_as_shipped, const std::string &hash) {
    return (named_as_shipped ? "not the shipped text, " : "own file ") + hash.substr(0, 8);
}

std::string own_file_mark(const std::string &set, const std::string &hash) {
    return is_shipped_set(set, hash) ? "" : own_file_mark(is_name_of_a_set(set), hash);
}

std::string shipped_below(const CriteriaSet &set) {
    for (auto &name : sets_below(set.text))
        if (is_name_of_a_set(name)) return name;
    return "";
}

std::vector<Silence> own_silences(const CriteriaSet &set) {
    std::vector<Silence> out;
    const auto stands = [&](const Silence &one) {
        return std::any_of(set.silences.begin(), set.silences.end(), [&](const Silence &other) {
            return other.check == one.check && other.of == one.of;
        });
    };
    for (const auto &text : texts_above(set.text, shipped_below(set))) {
        Issues issues;
        const Yaml root = read_yaml(text, issues);
        const Yaml *list = root.find("silence");
        if (!list) continue;
        for (const auto &item : list->items) {
            Silence one{text_under(item, "check"), text_under(item, "of"), text_under(item, "reason"), {}};
            if (stands(one)) out.push_back(std::move(one));
        }
    }
    return out;
}

std::vector<const CriteriaSet *> shipped_alike(const CriteriaSet &set) {
    std::vector<const CriteriaSet *> alike;
    if (is_shipped_set(set.name, set.hash)) return alike;
    if (is_name_of_a_set(set.name)) return {shipped_criteria(set.name).get()};
    int most = 1;
    const std::string below = shipped_below(set);
    for (const auto &name : shipped_sets()) {
        const auto shipped = shipped_criteria(name);
        const int now = likeness(set, below, *shipped);
        if (now > most) alike.clear();
        if (now >= most) alike.push_back(shipped.get());
        most = std::max(most, now);
    }
    return alike;
}

std::vector<LackingRules> lacking_beside_shipped(const CriteriaSet &set, const Vocabulary &vocabulary) {
    std::vector<LackingRules> out;
    // An older text of a shipped set is no stranger that could be taken for it.
    if (is_name_of_a_set(set.name)) return out;
    for (const auto *shipped : shipped_alike(set))
        if (LackingRules lacking = lacking_beside(set, *shipped, vocabulary); lacking.any())
            out.push_back(std::move(lacking));
    return out;
}

} // namespace beadbook
