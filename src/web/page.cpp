#include "web/page.hpp"

#include "report/document.hpp"
#include "web/refusal_page.hpp"
#include "web/roles.hpp"

namespace beadbook {
namespace {

std::string head(const std::string &title, const std::string &token, const std::string &person,
                 const std::vector<std::string> &modules, const std::string &record = "") {
    // What stands at the foot of each sheet of paper, where the browser can: of what, from which state.
    const std::string foot =
        record.empty() ? "" : " data-foot=\"" + escaped(title) + " · record " + record.substr(0, 12) + "\"";
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\"" + foot + "><head><meta charset=\"utf-8\"><title>" +
                      escaped(title) +
                      "</title>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                      "<meta name=\"color-scheme\" content=\"light dark\">\n"
                      "<link rel=\"icon\" href=\"/files/bead.svg\" type=\"image/svg+xml\">\n"
                      "<link rel=\"stylesheet\" href=\"/files/bench.css\">\n"
                      "<link rel=\"stylesheet\" href=\"/files/picture.css\">\n";
    if (!token.empty())
        out += "<meta name=\"bench-token\" content=\"" + escaped(token) +
               "\">\n<meta name=\"bench-person\" content=\"" + escaped(person) + "\">\n";
    if (!record.empty()) out += "<meta name=\"bench-head\" content=\"" + record + "\">\n";
    for (const auto &module : modules)
        out += "<script type=\"module\" src=\"/files/" + module + "\"></script>\n";
    return out + "</head>";
}

/// Whether the navigation leads there: what is only sent on to another place is left out.
bool leads_to(const Visit &visit, const PageFamily &family) {
    if (family.title.empty() || !visit.account()) return !family.title.empty();
    const Access access = access_to("GET", family.path, visit.account()->roles);
    return access == Access::all || (access == Access::own && family.path != "/");
}

std::string navigation(const Visit &visit, const Page &page) {
    std::string out = "<nav aria-label=\"Pages\"><ul>";
    for (const auto &family : page_families())
        if (leads_to(visit, family))
            out += "<li><a href=\"" + family.path + "\"" +
                   (family.path == page.under ? " aria-current=\"true\"" : "") + ">" + escaped(family.title) +
                   "</a></li>";
    return out + "</ul></nav>";
}

} // namespace

std::string notes_html(const std::vector<std::string> &notes) {
    if (notes.empty()) return "";
    std::string out = "<div class=\"told\" role=\"status\"><ul>";
    for (const auto &note : notes) out += "<li>" + escaped(page_words(note)) + "</li>";
    return out + "</ul></div>\n";
}

std::string part_of(Document document, const std::string &ids, const ExamPath &exam_path) {
    std::erase_if(document.blocks, [](const Block &block) { return std::holds_alternative<Caution>(block); });
    return fragment(document, ids, exam_path);
}

std::string one_deeper(std::string html) {
    // Texts are escaped, so that what looks like a tag is one.
    for (const auto &[from, to] : {std::pair("h2>", "h3>"), std::pair("h1>", "h2>")})
        for (std::size_t at = 0; (at = html.find(from, at)) != std::string::npos; at += 3)
            if (at > 0 && (html[at - 1] == '<' || html[at - 1] == '/')) html.replace(at, 3, to);
    return html;
}

std::string link_to(const std::string &path, const std::string &text) {
    return "<a href=\"" + escaped(path) + "\">" + escaped(text) + "</a>";
}

std::string link_where_open(const Visit &visit, const std::string &path, const std::string &text) {
    return visit.may("GET", path) ? link_to(path, text) : "";
}

std::string button_to(const Visit &visit, const std::string &path, const std::string &text) {
    if (!visit.may("GET", path)) return "";
    return "<a class=\"button\" href=\"" + escaped(path) + "\">" + escaped(text) + "</a>";
}

Answer page_of(Visit &visit, const Page &page) {
    Answer out{page.status};
    if (visit.request.part) {
        out.body = page.main;
        return out;
    }
    std::vector<std::string> modules{"bench.js"};
    modules.insert(modules.end(), page.modules.begin(), page.modules.end());
    out.body = head(page.title, visit.token(), visit.person(), modules, visit.head()) +
               "<body>\n<a class=\"skip\" href=\"#main\">To the page itself</a>\n<header>" +
               navigation(visit, page) + "<p class=\"person\"><span id=\"waiting\" role=\"status\"></span> " +
               "<a href=\"/person\" title=\"" + (visit.account() ? "Signed in" : "Somebody else sits down") +
               "\">" + (visit.person().empty() ? "who is here?" : escaped(visit.person())) +
               "</a></p></header>\n<main id=\"main\" tabindex=\"-1\">\n" + notes_html(visit.told()) +
               page.main + "</main>\n<footer>" + escaped(caution) + "</footer>\n</body></html>\n";
    return out;
}

Answer bare_page(int status, const std::string &title, const std::string &text, const std::string &more) {
    Answer out{status};
    out.body = head(title, "", "", {}) + "<body><main id=\"main\"><h1>" + escaped(title) + "</h1><p>" +
               escaped(text) + "</p>" + more + "</main></body></html>\n";
    return out;
}

} // namespace beadbook
