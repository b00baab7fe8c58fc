#pragma once

#include "render/html.hpp"
#include "web/visit.hpp"

namespace beadbook {

/// What is particular of a page; the rest is the same of all.
struct Page {
    std::string title;
    std::string main;                      ///< HTML
    std::string under = {};                ///< path of the family that the navigation marks
    std::vector<std::string> modules = {}; ///< of /files/, beside the one that every page has
    int status = 200;
};

/// The whole page: navigation, who is at the bench, what is told once, the caution. A module that asks for a
/// part gets the part alone.
Answer page_of(Visit &visit, const Page &page);
/// For somebody whom the bench does not know: no navigation, nothing of the record. `more` is HTML.
Answer bare_page(int status, const std::string &title, const std::string &text, const std::string &more = "");

/// Sentences, a line each.
std::string notes_html(const std::vector<std::string> &notes);
/// A document as a part of a page; the page has the caution already. Two on one page take different `ids`.
std::string part_of(Document document, const std::string &ids = "p", const ExamPath &exam_path = {});
/// A document below a heading of the page: its own headings lie one deeper.
std::string one_deeper(std::string html);
std::string link_to(const std::string &path, const std::string &text);
/// The same; nothing for who may not go there.
std::string link_where_open(const Visit &visit, const std::string &path, const std::string &text);
/// A link that looks like a button; nothing for who may not go there.
std::string button_to(const Visit &visit, const std::string &path, const std::string &text);

} // namespace beadbook
