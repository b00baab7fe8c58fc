// What is said in the other system of units than all the rest of the set.
#include "criteria/doubts.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

/// So many others make one in another unit odd.
constexpr std::size_t least_in_own_unit = 3;

/// By a word of its own: "3/16 in", "2 mm".
bool speaks_in(const std::string &said, bool inches) {
    const std::string text = " " + said + " ";
    const auto has = [&](std::string_view word) {
        for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
            const auto is_letter = [&](std::size_t i) {
                return std::isalpha(static_cast<unsigned char>(text[i])) != 0;
            };
            std::size_t before = at - 1;
            while (before > 0 && text[before] == ' ') --before;
            if (is_digit(text[before]) && !is_letter(at + word.size())) return true;
        }
        return false;
    };
    return inches ? has("in") : has("mm") || has("cm");
}

/// Numbers that stand together: the limits of a rule, its window, what it asks.
struct Said {
    std::string of; ///< the rule, clause or table
    Where where;
    std::string path, what;
    std::vector<std::string> texts;
};

class Units {
public:
    Units(const CriteriaSet &set, Doubts &doubts) : set_(set), doubts_(doubts) {
        for (const auto &rule : set.rules) add_rule(rule);
        for (const auto &one : set.relevance)
            add({one.id, one.where_from, "relevance." + one.id, "what it leaves out", texts_of(one.ignore)});
        for (const auto &table : set.tables) add_table(*table);
    }

    void check() {
        const bool inches = set_.unit == Unit::inch;
        const Said *odd = nullptr;
        std::size_t in_own = 0;
        for (const Said &one : all_) {
            const auto speaks = [&](bool in) {
                return std::any_of(one.texts.begin(), one.texts.end(),
                                   [in](const std::string &text) { return speaks_in(text, in); });
            };
            const bool own = speaks(inches);
            if (own) ++in_own;
            // Where both stand, how far the two are apart tells it.
            if (own || !speaks(!inches)) continue;
            if (odd) return;
            odd = &one;
        }
        if (!odd || in_own < least_in_own_unit || doubts_.told("limit-over-wall", odd->of) ||
            doubts_.told("limit-beyond-belief", odd->of))
            return;
        const auto text = std::find_if(odd->texts.begin(), odd->texts.end(),
                                       [&](const std::string &one) { return speaks_in(one, !inches); });
        doubts_.tell("unit-of-one-alone", odd->of, odd->where, odd->path,
                     odd->what + ", '" + *text + "', is in " + (inches ? "metric units" : "inches") +
                         ", and nothing else of the set is: is the unit meant?");
    }

private:
    static std::vector<std::string> texts_of(const std::vector<Condition> &conditions) {
        std::vector<std::string> out;
        for (const auto &c : conditions) out.push_back(c.text);
        return out;
    }

    void add(Said one) {
        if (!one.texts.empty()) all_.push_back(std::move(one));
    }

    void add_rule(const Rule &rule) {
        const auto said = [&](std::string what, std::vector<std::string> texts) {
            add({rule.id, rule.where_from, "rules." + rule.id, std::move(what), std::move(texts)});
        };
        std::vector<std::string> limits, windows;
        for (const auto &limit : rule.limits)
            if (limit.kind == Limit::Kind::value && !limit.formula.has_twins()) limits.push_back(limit.text);
        for (const auto &window : rule.windows)
            if (!window.length.has_twins()) windows.push_back(window.text);
        said("its limit", std::move(limits));
        said("its window", std::move(windows));
        if (rule.linked) said("what links its groups", {rule.linked->text});
        said("what it asks", texts_of(rule.when));
        said("what it asks", texts_of(rule.where));
    }

    void add_table(const Table &table) {
        std::vector<std::string> bands;
        for (const auto &row : table.rows) bands.push_back(row.text);
        add({table.name, table.where, "tables." + table.name, "its band", std::move(bands)});
    }

    const CriteriaSet &set_;
    Doubts &doubts_;
    std::vector<Said> all_;
};

} // namespace

void check_units(const CriteriaSet &set, Doubts &doubts) { Units(set, doubts).check(); }

} // namespace beadbook
