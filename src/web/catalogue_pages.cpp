// Criteria sets, practices and rules for welders that are shipped: all of a kind, and one with every rule.
#include "operations/reading.hpp"
#include "report/criteria_document.hpp"
#include "report/practice_document.hpp"
#include "report/rules_document.hpp"
#include "web/keeper_parts.hpp"
#include "web/linked_rows.hpp"
#include "web/page.hpp"

namespace beadbook {
namespace {

std::string shelf_path(const std::string &shelf) { return "/keeper/" + shelf; }

/// All of one kind, by name.
template <class T>
Answer shelf_page(Visit &visit, const std::string &shelf, const std::string &title,
                  const std::vector<std::shared_ptr<const T>> &all) {
    std::vector<std::string> names;
    for (const auto &one : all) names.push_back(one->name);
    const auto path = [&](const std::string &name) { return shelf_path(shelf) + "/" + url_word(name); };
    return page_of(visit,
                   {title,
                    "<h1>" + title + "</h1>\n<p class=\"deeds\">" + button_to(visit, keeper_path, "Keeper") +
                        "</p>\n" + linked_rows(document_of(all), names, path, "all"),
                    keeper_path});
}

/// A name that is shipped: an address is no way to a file of this machine.
std::string shipped_name(const Visit &visit) {
    const std::string &name = visit.word("name");
    if (means_file(name)) throw DataError("a file has no page here; only what is shipped does");
    return name;
}

Answer one_of_shelf(Visit &visit, const std::string &shelf, const std::string &title, Document document) {
    return page_of(visit, {document.title,
                           "<p class=\"deeds\">" + button_to(visit, shelf_path(shelf), title) + "</p>\n" +
                               wide_tables(part_of(std::move(document), "one")),
                           keeper_path});
}

Answer types_page(Visit &visit) {
    return page_of(visit, {"Words for imperfections",
                           "<h1>Words for imperfections</h1>\n<p class=\"deeds\">" +
                               button_to(visit, keeper_path, "Keeper") + "</p>\n" +
                               one_deeper(part_of(document_of(imperfection_types()), "types")),
                           keeper_path});
}

} // namespace

PageFamily catalogue_pages() {
    return {
        "",
        "",
        {{"GET", "/keeper/criteria",
          [](Visit &v) { return shelf_page(v, "criteria", "Criteria sets", all_criteria(v.catalogue())); }},
         {"GET", "/keeper/criteria/:name",
          [](Visit &v) {
              return one_of_shelf(v, "criteria", "Criteria sets",
                                  document_of(*(v.has_record() ? v.office().criteria(shipped_name(v))
                                                               : v.catalogue().criteria(shipped_name(v)))));
          }},
         {"GET", "/keeper/practices",
          [](Visit &v) { return shelf_page(v, "practices", "Practices", all_practices(v.catalogue())); }},
         {"GET", "/keeper/practices/:name",
          [](Visit &v) {
              return one_of_shelf(v, "practices", "Practices",
                                  document_of(*v.catalogue().practice(shipped_name(v))));
          }},
         {"GET", "/keeper/rules",
          [](Visit &v) { return shelf_page(v, "rules", "Rules for welders", all_rules(v.catalogue())); }},
         {"GET", "/keeper/rules/:name",
          [](Visit &v) {
              return one_of_shelf(v, "rules", "Rules for welders",
                                  document_of(*v.catalogue().rules(shipped_name(v))));
          }},
         {"GET", "/keeper/types", types_page}}};
}

} // namespace beadbook
