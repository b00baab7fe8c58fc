#include "operations/copy_edition.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <cctype>
#include <set>

namespace beadbook {
namespace {

/// Years of four digits that a text names.
std::set<std::string> years_in(const std::string &text) {
    std::set<std::string> out;
    std::string digits;
    for (const char c : text + ".") {
        if (c >= '0' && c <= '9') {
            digits += c;
            continue;
        }
        if (digits.size() == 4 && (digits.starts_with("19") || digits.starts_with("20"))) out.insert(digits);
        digits.clear();
    }
    return out;
}

/// Words that tell one standard from another: D17.1, 5817, 2219A. No year, and no number that counts an
/// amendment or a printing.
std::set<std::string> designations_in(const std::string &text) {
    std::set<std::string> out;
    std::string word;
    for (const char c : text + " ") {
        if (std::isalnum(static_cast<unsigned char>(c)) != 0 || (c == '.' && !word.empty())) {
            word += c;
            continue;
        }
        while (word.ends_with('.')) word.pop_back();
        const auto digits = std::count_if(word.begin(), word.end(), is_digit);
        const bool counts = word.find('.') != std::string::npos || digits > 2;
        if (digits > 0 && counts && years_in(word).empty()) out.insert(lowered(word));
        word.clear();
    }
    return out;
}

/// Without what is said of its printing and its amendments, whose years are not the edition's.
std::string edition_alone(const std::string &copy) {
    std::string out = lowered(copy);
    for (const char *since : {"print", "amend", "amd", "corr", "+a", "change"})
        out = out.substr(0, out.find(since));
    return out;
}

/// Of a set by that edition, which its title may tell more of.
void check_copy_of(const std::string &edition, const std::string &title, const std::string &name,
                   const std::string &copy) {
    const auto of_set = years_in(edition), of_copy = years_in(copy);
    const auto known = designations_in(edition + " " + title), said = designations_in(copy);
    const bool same =
        std::any_of(said.begin(), said.end(), [&](const std::string &one) { return known.contains(one); });
    const bool tells_none = said.empty() && of_copy.empty();
    if (!same && (tells_none ? !(known.empty() && of_set.empty()) : !said.empty() && !known.empty()))
        throw refused("'" + shown(copy) + "' names no copy of " + edition + ", by which criteria " + name +
                      " are; which standard, and of which year?")
            .at("edition");
    // As the set itself is called, or of rules that go by no standard: there is nothing more to tell it by.
    if (lowered(edition) == lowered(copy) || (known.empty() && of_set.empty())) return;
    if (const auto editions = years_in(edition_alone(copy)); editions.size() > 1)
        throw refused("'" + shown(copy) + "' names more than one edition, of " +
                      listed({editions.begin(), editions.end()}) + "; which one is the copy?")
            .give("edition");
    if (of_copy.empty())
        throw refused("'" + shown(copy) + "' names no year; of which year is the copy, as it is printed?")
            .give("edition");
    if (of_set.empty()) return;
    if (std::none_of(of_copy.begin(), of_copy.end(),
                     [&](const std::string &year) { return of_set.contains(year); }))
        throw refused("the copy is of " + listed({of_copy.begin(), of_copy.end()}) + ", and criteria " +
                      name + " are by " + edition + "; expected a copy of that edition")
            .at("edition");
}

} // namespace

void check_edition(const CriteriaSet &set, const std::string &copy) {
    if (!set.extends.empty()) try { // what is taken over stands in a copy of the base
            return check_copy_of(set.extends_edition, "", set.name, copy);
        } catch (const Refusal &) { // what is its own in one of its own
        }
    check_copy_of(set.edition, set.title, set.name, copy);
}

std::vector<std::string> other_editions(const OwnersCopyState &entered, const CriteriaSet &set,
                                        const std::string &copy) {
    const auto same_edition = [&](const std::string &other) {
        const auto years = years_in(edition_alone(copy));
        return years == years_in(edition_alone(other)) && (!years.empty() || lowered(copy) == lowered(other));
    };
    for (const auto &one : copy_that_bears(entered, set).fillings)
        for (const auto &other : entered.fillings) {
            const FillingRecord &record = other.record;
            if (record.blank != one.blank || record.class_id != one.class_id ||
                same_edition(record.read.copy))
                continue;
            return {"blank " + record.blank + " of class " + record.class_id + " was read in '" +
                    shown(record.read.copy) + "', and this in '" + shown(copy) +
                    "': two editions may hold other numbers, and a set is of one"};
        }
    return {};
}

} // namespace beadbook
