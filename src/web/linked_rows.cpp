#include "web/linked_rows.hpp"

#include "web/page.hpp"

namespace beadbook {

std::string linked_rows(Document document, const std::vector<std::string> &names,
                        const std::function<std::string(const std::string &)> &path, const std::string &ids) {
    // Texts are escaped, so that what looks like a row is one.
    const std::string begin = "<tr><td>", end = "</td>";
    std::string html = part_of(std::move(document), ids);
    for (const auto &name : names) {
        const std::string row = begin + escaped(name) + end, linked = begin + link_to(path(name), name) + end;
        for (std::size_t at = 0; (at = html.find(row, at)) != std::string::npos; at += linked.size())
            html.replace(at, row.size(), linked);
    }
    return wide_tables(std::move(html));
}

std::string wide_tables(std::string html) {
    const std::string begin = "<table", head = ">\n<thead>", end = "</table>",
                      opened = "<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Table\">";
    for (std::size_t at = 0; (at = html.find(begin, at)) != std::string::npos;) {
        // Texts are escaped, so that the next end of a tag is this one's.
        if (html.compare(html.find('>', at), head.size(), head) != 0) {
            at += begin.size();
            continue;
        }
        html.insert(at, opened);
        at = html.find(end, at);
        if (at == std::string::npos) break;
        html.insert(at + end.size(), "</div>");
    }
    return html;
}

} // namespace beadbook
