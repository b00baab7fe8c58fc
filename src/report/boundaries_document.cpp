#include "report/boundaries_document.hpp"

#include "measure/print.hpp"
#include "report/cases_document.hpp"
#include "report/criteria_document.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// "within", or where the judge says otherwise both.
Words tried_words(const BoundaryTry &one, Dimension dimension, Unit unit) {
    const Tone tone = one.rejects ? Tone::reject : Tone::accept;
    Words out(print_exact(one.value, dimension, unit) + " ");
    out += Words(one.rejects ? "outside" : "within", tone);
    if (!one.agrees()) out += Words(" (judged: " + std::string(words_of(one.found)) + ")", Tone::cannot_say);
    return out;
}

/// So far apart are finds that are together just over the limit.
void add_windows(Document &out, const Boundaries &all, std::size_t index) {
    const CriteriaSet &set = *all.set;
    const Rule &rule = set.rules[index];
    const bool lengths = rule.kind == Rule::Kind::sum && rule.summed == Quantity::length;
    Grid grid;
    grid.columns = {{"class"},       {"coupon"},         {"window", true}, {"just under", true},
                    {"at it", true}, {"just over", true}};
    for (const auto &one : all.windows) {
        if (one.rule != index) continue;
        grid.rows.push_back({set.classes[one.class_index].id, coupon_words(set, one),
                             print_exact(one.limit, Dimension::length, set.unit)});
        for (const auto &tried : one.tries)
            grid.rows.back().push_back(tried_words(tried, Dimension::length, set.unit));
    }
    if (grid.rows.empty()) return;
    out.line(
        std::string("Just over the limit together, and so far ") +
        (lengths
             ? "from the beginning of the first to the end of the last (of what the window cuts, the part "
               "inside is added):"
             : "between the first and the last (what the window cuts counts in full):"));
    out.add(std::move(grid));
}

void add_rule_table(Document &out, const Boundaries &all, std::size_t index) {
    const CriteriaSet &set = *all.set;
    const Rule &rule = set.rules[index];
    Grid grid;
    grid.columns = {{"class"},       {"coupon"},         {"limit", true}, {"just under", true},
                    {"at it", true}, {"just over", true}};
    for (const auto &one : all.cases) {
        if (one.rule != index) continue;
        std::vector<Words> row{set.classes[one.class_index].id, coupon_words(set, one),
                               print_exact(one.limit, rule.dimension(), set.unit)};
        for (std::size_t k = one.tries.size(); k < 3; ++k) row.emplace_back("-"); // 0 is no measure
        for (const auto &tried : one.tries) row.push_back(tried_words(tried, rule.dimension(), set.unit));
        grid.rows.push_back(std::move(row));
    }
    if (grid.rows.empty()) return;
    const std::string conditions = condition_words(rule.when, rule.where);
    out.heading(rule.id + (rule.title.empty() ? "" : ": " + rule.title), 2);
    const std::string window = window_words_of(set, rule);
    out.line(measure_words(rule) +
                 (window.empty()           ? ""
                  : window == "whole weld" ? " over the whole weld"
                                           : " in any " + window) +
                 line_words(rule) + ", " + std::string(name_of(rule.compare)) +
                 (conditions.empty() ? "" : ", where " + conditions),
             rule.clause);
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        if (rule.limits[c].kind == Limit::Kind::value)
            out.item("class " + set.classes[c].id + ": " + rule.limits[c].text,
                     std::string(name_of(rule.standings[c].kind)));
    out.add(std::move(grid));
    add_windows(out, all, index);
}

void add_none(Document &out, const Boundaries &all) {
    if (all.none.empty()) return;
    out.heading("Limits without boundary cases", 2);
    for (std::size_t r = 0; r < all.set->rules.size(); ++r) {
        // What holds for several classes is one line.
        std::vector<std::pair<std::string, std::string>> told;
        for (const auto &one : all.none) {
            if (one.rule != r) continue;
            const std::string text = (one.named ? ", at " + named_words(*all.set, *one.named) : "") + ": " +
                                     std::string(words_of(one.why));
            const auto same =
                std::find_if(told.begin(), told.end(), [&](const auto &line) { return line.second == text; });
            const std::string &id = all.set->classes[one.class_index].id;
            if (same == told.end())
                told.emplace_back(id, text);
            else
                same->first += ", " + id;
        }
        for (const auto &[classes, text] : told) out.item(all.set->rules[r].id + ", " + classes + text);
    }
}

} // namespace

std::string named_words(const CriteriaSet &set, const NamedPoint &named) {
    if (!named.quantity)
        return std::string(info(named.fact).name) + " " + info(named.fact).words[named.word - 1];
    const Quantity q = *named.quantity;
    const auto declared = std::find_if(set.declared.begin(), set.declared.end(),
                                       [&](const DeclaredQuantity &d) { return d.slot == slot_of(q); });
    return (declared == set.declared.end() ? std::string(info(q).name) : declared->name) + " " +
           print_exact(Exact(named.value), info(q).dimension, set.unit);
}

std::string coupon_words(const CriteriaSet &set, const BoundaryCase &one) {
    std::string out;
    const auto add = [&](const NamedPoint &named) {
        out += (out.empty() ? "" : ", ") + named_words(set, named);
    };
    for (const Quantity q : one.varied) add({q, one.coupon.values[q]});
    if (one.word) add({{}, 0, *one.word, one.coupon.facts[static_cast<std::size_t>(*one.word)]});
    return out.empty() ? "any" : out;
}

std::string_view words_of(NoBoundary::Why why) {
    switch (why) {
    case NoBoundary::Why::of_others: return "it hangs on what other rules say";
    case NoBoundary::Why::joined: return "the set counts neighbours as one";
    case NoBoundary::Why::no_coupon:
        return "no coupon was found for which it is heard and has a value over 0";
    case NoBoundary::Why::no_find: return "no find was found of which it speaks and that counts";
    case NoBoundary::Why::too_many: return "it takes more finds than are made here";
    case NoBoundary::Why::blank: return "it is a blank, which nobody filled here";
    case NoBoundary::Why::arithmetic: break;
    }
    return "what it measures is worked out from several measures";
}

std::string_view words_of(BoundaryTry::Found found) {
    switch (found) {
    case BoundaryTry::Found::within: return "within";
    case BoundaryTry::Found::outside: return "outside";
    case BoundaryTry::Found::not_heard: break;
    }
    return "not heard";
}

Document document_of(const Boundaries &all) {
    Document out;
    out.title = "Both sides of each limit of " + all.set->name;
    out.heading(all.set->title);
    out.line(all.set->edition +
             ". Made from the rules and tried by the judge: read each line beside the "
             "standard. One step is " +
             print(reading_step(Dimension::length, all.set->unit), Dimension::length, all.set->unit) + ".");
    for (std::size_t r = 0; r < all.set->rules.size(); ++r) add_rule_table(out, all, r);
    out.gap();
    out.line(std::to_string(all.cases.size()) + " limits on a coupon, " + std::to_string(all.windows.size()) +
             " windows, " + std::to_string(all.disagreeing()) + " of them judged otherwise than written");
    add_none(out, all);
    if (all.written) add_untried(out, *all.written);
    out.caution();
    return out;
}

} // namespace beadbook
