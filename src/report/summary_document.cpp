#include "report/summary_document.hpp"

#include "measure/day.hpp"
#include "measure/natural_order.hpp"
#include "measure/text.hpp"
#include "report/summary_charts.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace beadbook {
namespace {

/// A share of less than a thousand has no tenths of a percent.
bool has_tenths(const Share &share) { return share.of >= 1000; }

std::string percent(double hundredths, bool tenths) {
    char text[16];
    std::snprintf(text, sizeof text, tenths ? "%.1f %%" : "%.0f %%", hundredths);
    return text;
}

/// Of some and not all neither 0 nor 100.
std::string value_words(const Share &share) {
    const double step = has_tenths(share) ? 0.1 : 1, value = 100 * share.value();
    const bool between = share.count > 0 && share.count < share.of;
    return percent(between ? std::clamp(value, step, 100 - step) : value, has_tenths(share));
}

/// Rounded outwards, so that it holds what the exact one holds.
std::string interval_words(const Share &share) {
    const double steps = has_tenths(share) ? 10 : 1;
    return percent(std::floor(100 * share.low * steps) / steps, has_tenths(share)) + " to " +
           percent(std::ceil(100 * share.high * steps) / steps, has_tenths(share));
}

std::string count_words(std::size_t count) { return std::to_string(count); }

/// One thing that is told of each line of a table.
template <class Line>
struct Told {
    std::string title;
    bool numbers;
    std::string (*of)(const Line &);
};

const std::vector<Told<Outcome>> &told_of_outcomes() {
    static const std::vector<Told<Outcome>> told{
        {"coupons", true, [](const Outcome &o) { return count_words(o.coupons); }},
        {"accepted", true, [](const Outcome &o) { return count_words(o.accepted); }},
        {"accepted, but mechanical tests failed", true,
         [](const Outcome &o) { return count_words(o.bends_failed); }},
        {"rejected", true, [](const Outcome &o) { return count_words(o.rejected); }},
        {"cannot say", true, [](const Outcome &o) { return count_words(o.cannot_say); }},
        {"not judged", true, [](const Outcome &o) { return count_words(o.not_judged); }},
        {"accepted of those decided", false, [](const Outcome &o) { return share_words(o.share); }},
        {"first-pass yield", false, [](const Outcome &o) { return share_words(o.first_pass); }}};
    return told;
}

/// In a table: two groups side by side leave room for the shares alone, and what no line has is left out.
std::vector<Told<Outcome>> told_in_table(const Summaries &all, std::vector<Outcome> Summary::*lines) {
    std::vector<Told<Outcome>> told = told_of_outcomes();
    if (all.groups.size() > 1) return {told.front(), told[told.size() - 2], told.back()};
    std::erase_if(told, [&](const Told<Outcome> &one) {
        const auto &of = all.groups.front().summary.*lines;
        return one.numbers &&
               std::all_of(of.begin(), of.end(), [&](const Outcome &o) { return one.of(o) == "0"; });
    });
    return told;
}

const std::vector<Told<FindCount>> &told_of_finds() {
    static const std::vector<Told<FindCount>> told{
        {"finds", true, [](const FindCount &f) { return count_words(f.finds); }},
        {"rejecting", true, [](const FindCount &f) { return count_words(f.rejecting); }},
        {"coupons", true, [](const FindCount &f) { return count_words(f.coupons); }}};
    return told;
}

const std::vector<Told<RuleCount>> &told_of_rules() {
    static const std::vector<Told<RuleCount>> told{
        {"reasons", true, [](const RuleCount &r) { return count_words(r.reasons); }},
        {"coupons of those rejected", false, [](const RuleCount &r) { return share_words(r.coupons); }}};
    return told;
}

template <class Line>
std::string called(const Line &line, const std::vector<Line> &) {
    return line.name.empty() ? "not known" : line.name;
}
/// By its title, and by its id where another rule of the set has the same.
std::string called(const RuleCount &rule, const std::vector<RuleCount> &all) {
    if (rule.title.empty()) return rule.name;
    const auto colon = rule.name.find(": ");
    const std::string set = rule.name.substr(0, colon + 2);
    const bool shared = std::any_of(all.begin(), all.end(), [&](const RuleCount &other) {
        return other.name != rule.name && other.title == rule.title && other.name.starts_with(set);
    });
    return set + rule.title + (shared ? " (" + rule.name.substr(set.size()) + ")" : "");
}

/// Of the lines of a table: weeks go by their day, in both groups.
enum class Order : std::uint8_t { as_counted, by_name };

/// A table with a line for each name of any group, and for each group its own columns.
template <class Line>
void add_table(Document &doc, const Summaries &all, const std::string &title,
               std::vector<Line> Summary::*lines, const std::vector<Told<Line>> &told,
               const std::vector<std::optional<Figure>> &charts = {}, Order order = Order::as_counted) {
    Grid table{{{title}}, {}};
    std::vector<std::string> names;
    std::vector<Line> every;
    char letter = 'A';
    for (const auto &group : all.groups) {
        for (const auto &one : told)
            table.columns.push_back(
                {(all.groups.size() > 1 ? std::string(1, letter) + " " : "") + one.title, one.numbers});
        ++letter;
        every.insert(every.end(), (group.summary.*lines).begin(), (group.summary.*lines).end());
        for (const auto &line : group.summary.*lines)
            if (std::find(names.begin(), names.end(), line.name) == names.end()) names.push_back(line.name);
    }
    if (names.empty()) return;
    if (order == Order::by_name) std::sort(names.begin(), names.end(), NaturalOrder{});
    for (const auto &name : names) {
        std::vector<Words> row{Words{}};
        for (const auto &group : all.groups) {
            const auto &of = group.summary.*lines;
            const auto found =
                std::find_if(of.begin(), of.end(), [&](const Line &l) { return l.name == name; });
            if (found != of.end() && row.front().empty()) row.front() = called(*found, every);
            for (const auto &one : told) row.emplace_back(found == of.end() ? std::string() : one.of(*found));
        }
        table.rows.push_back(std::move(row));
    }
    doc.heading("By " + title, 2);
    for (const auto &chart : charts)
        if (chart) doc.add(*chart);
    doc.add(std::move(table));
}

/// One chart a group, under its letter where there are two.
std::vector<std::optional<Figure>>
charts_of(const Summaries &all, std::optional<Figure> (*chart)(const Summary &, const std::string &)) {
    std::vector<std::optional<Figure>> out;
    for (std::size_t g = 0; g < all.groups.size(); ++g)
        out.push_back(chart(all.groups[g].summary, all.groups.size() > 1
                                                       ? std::string(1, static_cast<char>('A' + g))
                                                       : std::string()));
    return out;
}

/// First-pass yields, of each line of every group.
std::vector<std::optional<Figure>> yields_of(const Summaries &all, std::vector<Outcome> Summary::*lines) {
    std::vector<NamedShare> rows;
    char letter = 'A';
    for (const auto &group : all.groups) {
        const std::string before = all.groups.size() > 1 ? std::string(1, letter++) + " " : "";
        for (const auto &one : group.summary.*lines)
            rows.push_back({before + (one.name.empty() ? "not known" : one.name), one.first_pass});
    }
    return {share_chart("First-pass yield", rows)};
}

/// The first week of a group; empty if nobody knows when any of it was welded.
std::string first_week(const Summary &group) {
    std::string out;
    for (const auto &week : group.weeks)
        if (!week.name.empty() && (out.empty() || week.name < out)) out = week.name;
    return out;
}

bool any_week_in_both(const Summary &a, const Summary &b) {
    return std::any_of(a.weeks.begin(), a.weeks.end(), [&](const Outcome &one) {
        return !one.name.empty() && std::any_of(b.weeks.begin(), b.weeks.end(),
                                                [&](const Outcome &other) { return other.name == one.name; });
    });
}

/// Two groups that began in different weeks, two courses say, stand side by side by the week of each.
void add_weeks(Document &doc, const Summaries &all) {
    const auto table = [&](const Summaries &of, const std::string &title) {
        add_table(doc, of, title, &Summary::weeks, told_in_table(of, &Summary::weeks),
                  yields_of(of, &Summary::weeks), Order::by_name);
    };
    const bool two = all.groups.size() == 2;
    const std::string a = first_week(all.groups.front().summary), b = first_week(all.groups.back().summary);
    const bool apart = two && !a.empty() && !b.empty() && a != b;
    if (!apart || any_week_in_both(all.groups.front().summary, all.groups.back().summary)) table(all, "week");
    if (!apart) return;
    Summaries by_own = all;
    for (auto &group : by_own.groups)
        for (const std::string first = first_week(group.summary); auto &week : group.summary.weeks)
            if (!week.name.empty()) week.name = "week " + std::to_string(1 + weeks_between(first, week.name));
    table(by_own, "week of each group");
    doc.line("Week 1 is the first in which the group welded: " + a + " in A, " + b + " in B.");
}

void add_yield(Document &doc, const Summaries &all) {
    std::vector<NamedShare> rows;
    char letter = 'A';
    for (const auto &group : all.groups) {
        const std::string before = all.groups.size() > 1 ? std::string(1, letter++) + " " : "";
        rows.push_back({before + "accepted of those decided", group.summary.all.share});
        rows.push_back({before + "first-pass yield", group.summary.all.first_pass});
    }
    if (auto chart = share_chart("Shares with their interval", rows)) doc.add(std::move(*chart));
}

} // namespace

std::string share_words(const Share &share) {
    if (share.of == 0) return "none to count";
    return std::to_string(share.count) + " of " + std::to_string(share.of) + ", " + value_words(share) +
           " (" + interval_words(share) + ")";
}

std::string selection_words(const Selection &of) {
    std::vector<std::string> out;
    const auto say = [&](const std::string &name, const std::string &value) {
        if (!value.empty()) out.push_back(name + " " + value);
    };
    say("cohort", of.cohort);
    say("welder", of.welder);
    say("criteria", of.criteria);
    say("class", of.class_id);
    say("process", of.process);
    if (of.from) say("welded from", print(*of.from));
    if (of.to) say("welded until", print(*of.to));
    if (of.method) say("examined by", std::string(name_of(*of.method)));
    if (of.verdict) say("verdict", std::string(name_of(*of.verdict)));
    if (of.grade)
        say(*of.grade == GradeState::again ? "to be graded" : "grade", std::string(name_of(*of.grade)));
    if (of.unfinished) out.emplace_back("unfinished");
    std::string words;
    for (const auto &one : out) words += (words.empty() ? "" : ", ") + one;
    return words.empty() ? "all coupons" : words;
}

Document document_of(const Summaries &all) {
    Document doc;
    doc.title = "Summary";
    const bool two = all.groups.size() > 1;
    Grid table{{{""}}, {}};
    for (std::size_t g = 0; g < all.groups.size(); ++g) {
        const std::string name = two ? std::string(1, static_cast<char>('A' + g)) : "";
        doc.line(Words(two ? name + ": " : "Summary of ", Tone::strong) +
                 Words(selection_words(all.groups[g].of), Tone::strong));
        table.columns.push_back({name});
    }
    doc.gap();
    for (const auto &one : told_of_outcomes()) {
        std::vector<Words> row{one.title};
        for (const auto &group : all.groups) row.emplace_back(one.of(group.summary.all));
        table.rows.push_back(std::move(row));
    }
    std::vector<Words> finds{"finds"};
    for (const auto &group : all.groups) finds.emplace_back(count_words(group.summary.finds));
    table.rows.push_back(std::move(finds));
    const auto tell_measured = [&](const std::string &title, std::size_t Summary::*count) {
        if (std::none_of(all.groups.begin(), all.groups.end(),
                         [&](const auto &group) { return group.summary.*count > 0; }))
            return;
        std::vector<Words> row{title};
        for (const auto &group : all.groups) row.emplace_back(count_words(group.summary.*count));
        table.rows.push_back(std::move(row));
    };
    tell_measured("measured, and held", &Summary::held);
    tell_measured("measured, and not judged", &Summary::unjudged);
    if (!two) table.columns = {{""}, {""}};
    doc.add(std::move(table));
    for (std::size_t g = 0; g < all.groups.size(); ++g) {
        const auto tell = [&](std::size_t number, const std::string &one, const std::string &many) {
            if (number > 0)
                doc.line(Words((two ? std::string(1, static_cast<char>('A' + g)) + ": " : "") +
                                   std::to_string(number) + (number == 1 ? one : many),
                               Tone::cannot_say));
        };
        tell(all.groups[g].summary.by_own_files, " verdict is by an own file, not by shipped criteria",
             " verdicts are by an own file, not by shipped criteria");
        tell(all.groups[g].summary.with_cautions,
             " coupon is accepted with cautions, which its own page tells",
             " coupons are accepted with cautions, which their own pages tell");
        tell(all.groups[g].summary.withdrawn_rejects,
             " coupon that its finds reject was withdrawn: it is counted as a first attempt alone",
             " coupons that their finds reject were withdrawn: they are counted as first attempts alone");
        const Outcome &outcome = all.groups[g].summary.all;
        const auto &welders = all.groups[g].summary.welders;
        const auto nobody =
            std::find_if(welders.begin(), welders.end(), [](const Outcome &one) { return one.name.empty(); });
        const std::size_t unknown = nobody == welders.end() ? 0 : nobody->share.of;
        const std::size_t left_out = outcome.share.of - outcome.first_pass.of;
        if (left_out <= outcome.first_pass.of) continue;
        tell(
            unknown,
            " decided coupon names no welder: whose attempt it is nobody knows, and the first-pass yield "
            "leaves it out",
            " decided coupons name no welder: whose attempts they are nobody knows, and the first-pass yield "
            "leaves them out");
        tell(left_out - unknown, " decided coupon is a later attempt, which the first-pass yield leaves out",
             " decided coupons are later attempts, which the first-pass yield leaves out");
    }
    add_yield(doc, all);
    add_table(doc, all, "imperfection", &Summary::imperfections, told_of_finds(),
              charts_of(all, imperfection_chart));
    add_table(doc, all, "rule", &Summary::rules, told_of_rules());
    add_table(doc, all, "place", &Summary::places, told_of_finds(), charts_of(all, place_chart));
    add_table(doc, all, "joint", &Summary::joints, told_in_table(all, &Summary::joints),
              yields_of(all, &Summary::joints));
    add_table(doc, all, "welder", &Summary::welders, told_in_table(all, &Summary::welders),
              yields_of(all, &Summary::welders));
    add_weeks(doc, all);
    doc.gap().line(
        "Intervals: 95 %, exact (Clopper-Pearson). Decided is what is accepted or rejected, for the class "
        "sought, or where none is for any; rules count for that class, where none is sought for the one with "
        "the fewest reasons. What failed its mechanical tests is not accepted. The first-pass yield counts "
        "each welder's first coupon of a kind (same joint, form, position, process, criteria, class and "
        "purpose) by its verdict as it stands now: the first on the whole record, also outside of what is "
        "asked for, by the day it was welded, on one day by the mark; those without a day come last. A find "
        "counts where it begins. A size, a height or an angle that was measured and held is no find, nor "
        "one that no rule judged.");
    return doc.caution();
}

} // namespace beadbook
