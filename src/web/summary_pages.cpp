// What goes wrong in a class, one group or two side by side, and a page for each learner.
#include "measure/natural_order.hpp"
#include "measure/text.hpp"
#include "operations/learner.hpp"
#include "operations/selecting.hpp"
#include "report/coupon_document.hpp"
#include "report/learner_document.hpp"
#include "report/summary_document.hpp"
#include "web/class_parts.hpp"
#include "web/linked_rows.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"
#include "web/selection_fields.hpp"

#include <set>

namespace beadbook {
namespace {

std::string summary_path() { return class_path + "/summary"; }
std::string learners_path() { return class_path + "/learners"; }

std::string board_path(const Selection &of) { return class_path + query_of(of); }

std::string linked_name(const std::string &name, const std::vector<Selection> &groups,
                        const std::function<void(Selection &)> &narrow) {
    std::string out;
    for (const auto &group : groups) {
        Selection of = group;
        narrow(of);
        const std::string letter(1, static_cast<char>('A' + (&group - groups.data())));
        out += (out.empty() ? "" : " ") +
               link_to(board_path(of), groups.size() < 2 ? name : (out.empty() ? name + " " : "") + letter);
    }
    return out;
}

/// In the part of the page under a heading, the row of a name leads to its coupons. Texts are escaped, so
/// that what looks like a tag is one.
void link_row(std::string &html, const std::string &heading, const std::string &name,
              const std::string &link) {
    const std::size_t begin = html.find("<h2>" + heading + "</h2>");
    if (begin == std::string::npos) return;
    const std::string row = "<tr><td>" + escaped(name) + "</td>";
    const std::size_t at = html.find(row, begin);
    if (at < html.find("<h2>", begin + 1)) html.replace(at, row.size(), "<tr><td>" + link + "</td>");
}

/// The days of a week that a summary names; nothing if it names none.
std::optional<std::pair<Day, Day>> days_of_week(const std::string &week, Day near) {
    // A week's number does not say its day; the years on record are few.
    for (Day day = near; day > near - std::chrono::days(366 * 40); day -= std::chrono::days(7))
        if (print_week(day) == week) {
            Day first = day;
            while (print_week(first - std::chrono::days(1)) == week) first -= std::chrono::days(1);
            return std::pair(first, first + std::chrono::days(6));
        }
    return std::nullopt;
}

/// Welders, weeks and outcomes are what a selection can say; of the rest the tables count alone.
void link_rows(std::string &html, const Summaries &all, Day today) {
    std::vector<Selection> groups;
    std::set<std::string, NaturalOrder> welders, weeks;
    for (const auto &group : all.groups) {
        groups.push_back(group.of);
        for (const auto &one : group.summary.welders) welders.insert(one.name);
        for (const auto &one : group.summary.weeks) weeks.insert(one.name);
    }
    for (const auto &name : welders)
        if (!name.empty())
            link_row(html, "By welder", name,
                     linked_name(name, groups, [&](Selection &of) { of.welder = name; }));
    for (const auto &name : weeks)
        if (const auto days = days_of_week(name, today))
            link_row(html, "By week", name, linked_name(name, groups, [&](Selection &of) {
                         of.from = std::max(of.from.value_or(days->first), days->first);
                         of.to = std::min(of.to.value_or(days->second), days->second);
                     }));
    for (const auto &[word, verdict] : {std::pair("accepted", Verdict::accept),
                                        {"rejected", Verdict::reject},
                                        {"cannot say", Verdict::cannot_say}}) {
        const std::string row = "<tr><td>" + std::string(word) + "</td>";
        if (const std::size_t at = html.find(row); at < html.find("<h2>"))
            html.replace(at, row.size(),
                         "<tr><td>" + linked_name(word, groups, [&, is = verdict](Selection &of) {
                             of.verdict = is;
                         }) + "</td>");
    }
}

std::string against_control(const std::string &value) {
    return "<div class=\"field\"><label for=\"s-against\">Beside it another cohort</label><input "
           "autocomplete=\"off\" id=\"s-against\" name=\"against\" value=\"" +
           escaped(value) +
           "\"><p class=\"help\">or another welder, where a welder is named above</p></div>\n";
}

/// The same of another cohort, or of another welder where one is named.
std::optional<Selection> other_group(const Selection &of, const std::string &against) {
    if (against.empty()) return std::nullopt;
    Selection other = of;
    std::string &differs = other.welder.empty() ? other.cohort : other.welder;
    if (differs.empty()) throw refused("beside which cohort or welder? name the first one").at("cohort");
    if (differs == against) throw refused("'" + shown(against) + "' beside itself").at("against");
    differs = against;
    return other;
}

Answer summary_page(Visit &visit) {
    const std::string against(trimmed(visit.request.query.text("against")));
    if (!visit.has_record()) return see_other(class_path);
    try {
        std::vector<Selection> groups{selection_in(visit.request.query)};
        if (auto other = other_group(groups.front(), against)) groups.push_back(std::move(*other));
        const Summaries all = summarize(visit.office(), groups);
        std::string told = part_of(document_of(all), "summary");
        link_rows(told, all, visit.outside().today());
        told = wide_tables(std::move(told));
        return page_of(visit, {"What goes wrong",
                               "<h1>What goes wrong</h1>\n<p class=\"deeds\">" +
                                   button_to(visit, board_path(groups.front()), "The class") + "</p>\n" +
                                   selection_form(summary_path(), visit.request.query, visit.catalogue(),
                                                  nullptr, against_control(against)) +
                                   told,
                               class_path});
    } catch (const Refusal &e) {
        return refused_selection(visit, "What goes wrong", summary_path(), e, against_control(against));
    }
}

Answer learner_page(Visit &visit) {
    Selection of = selection_in(visit.request.query);
    of.welder = visit.word("welder");
    const Learner learner = learner_of(visit.office(), of);
    Selection all = of;
    all.welder.clear();
    return page_of(visit, {"Learner " + of.welder,
                           "<p class=\"deeds\">" + button_to(visit, board_path(all), "The class") +
                               button_to(visit, board_path(of), "Coupons of " + of.welder) +
                               "</p>\n<h1>A learner's page</h1>\n" +
                               wide_tables(one_deeper(part_of(document_of(learner), "learner"))),
                           class_path});
}

/// One page with a sheet of paper or more for each.
Answer learners_page(Visit &visit) {
    if (!visit.has_record()) return see_other(class_path);
    try {
        const Selection of = selection_in(visit.request.query);
        std::set<std::string, NaturalOrder> welders;
        select(visit.office(), of, [&](CouponAtHand &one) {
            if (std::string by = one.line().record.get("welder"); !by.empty()) welders.insert(std::move(by));
        });
        std::string main = "<h1>A page for each learner</h1>\n<p class=\"deeds\">" +
                           button_to(visit, board_path(of), "The class") + "</p>\n" +
                           selection_form(learners_path(), visit.request.query, visit.catalogue(), nullptr);
        if (welders.empty()) main += part_of(nothing_found(of.all()));
        for (const auto &welder : welders) {
            Selection one = of;
            one.welder = welder;
            main += (welder == *welders.begin() ? "" : "<div class=\"sheet\"></div>\n") +
                    std::string("<section>") +
                    wide_tables(one_deeper(
                        part_of(document_of(learner_of(visit.office(), one)), "of-" + url_word(welder)))) +
                    "</section>\n";
        }
        return page_of(visit, {"A page for each learner", main, class_path});
    } catch (const Refusal &e) {
        return refused_selection(visit, "A page for each learner", learners_path(), e);
    }
}

} // namespace

PageFamily summary_pages() {
    return {"",
            "",
            {{"GET", summary_path(), summary_page},
             {"GET", class_path + "/learner/:welder", learner_page},
             {"GET", learners_path(), learners_page}}};
}

} // namespace beadbook
