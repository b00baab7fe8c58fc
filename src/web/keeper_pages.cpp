// The keeper's pages: what is due, the proof of the record, a copy of it.
#include "measure/text.hpp"
#include "operations/keeping.hpp"
#include "operations/standing.hpp"
#include "records/files.hpp"
#include "records/private_folder.hpp"
#include "report/keeping_document.hpp"
#include "report/standing_document.hpp"
#include "web/form.hpp"
#include "web/keeper_parts.hpp"
#include "web/linked_rows.hpp"
#include "web/page.hpp"

namespace beadbook {
namespace {

/// No record that is kept this way comes near to it.
constexpr std::size_t most_of_a_copy = std::size_t{2} << 30;

constexpr int usual_days_ahead = 60;

std::string due_control(const std::string &days) {
    return "<form method=\"get\" action=\"/keeper/due\"><div class=\"field\"><label for=\"f-days\">Days to "
           "look ahead</label><input inputmode=\"numeric\" id=\"f-days\" name=\"days\" value=\"" +
           escaped(days) + "\"></div><p class=\"deeds\"><button>Show</button></p></form>\n";
}

std::string verify_form(const std::string &head) {
    return "<form method=\"get\" action=\"/keeper/verify\"><div class=\"field tick\"><input "
           "type=\"checkbox\" "
           "id=\"f-replay\" name=\"replay\" value=\"yes\"><label for=\"f-replay\">Judge every stored verdict "
           "again, too</label></div><div class=\"field\"><label for=\"f-head\">Head noted earlier</label>"
           "<input autocomplete=\"off\" spellcheck=\"false\" id=\"f-head\" name=\"head\" value=\"" +
           escaped(head) +
           "\"><p class=\"help\">The record must still hold that entry; it proves that nothing before it was "
           "cut off.</p></div>"
           "<p class=\"deeds\"><button>Verify the record</button></p></form>\n";
}

std::string due_part(Office &office, int days) {
    return wide_tables(part_of(document_of(due(office, days)), "due"));
}

Answer keeper_home(Visit &visit) {
    std::string main = "<h1>Keeper</h1>\n" + keeper_ways(visit);
    if (!visit.has_record())
        return page_of(visit, {"Keeper", main + "<p>Nothing is on record yet.</p>", keeper_path});
    Office &office = visit.office();
    main += "<h2>Due within " + std::to_string(usual_days_ahead) + " days</h2>\n" +
            due_part(office, usual_days_ahead) + "<p class=\"deeds\">" +
            button_to(visit, "/keeper/due", "Look further ahead") +
            "</p>\n<h2>The record</h2>\n<p class=\"wide\">Head of the record: <code>" +
            escaped(office.ledger().head()) + "</code></p>\n" + verify_form("") +
            "<p class=\"deeds\"><a class=\"button\" href=\"/keeper/backup\" download>A verified copy of the "
            "record</a></p>\n";
    return page_of(visit, {"Keeper", main, keeper_path});
}

Answer due_page(Visit &visit) {
    const std::string said = visit.request.query.text("days"),
                      days = said.empty() ? std::to_string(usual_days_ahead) : said;
    const std::string heading = "<h1>What is due</h1>\n" + due_control(days);
    if (!visit.has_record()) return see_other(keeper_path);
    return page_of(visit,
                   {"What is due", heading + due_part(visit.office(), whole_number_in(days)), keeper_path});
}

Answer verify_page(Visit &visit) {
    if (!visit.has_record()) return see_other(keeper_path);
    const std::string head(trimmed(visit.request.query.text("head")));
    const Verified verified = verify(visit.office(), {!visit.request.query.text("replay").empty(), head});
    std::string main = "<h1>Proof of the record</h1>\n";
    main += verified.holds() ? "<p class=\"accept\">It holds.</p>\n"
                             : "<p class=\"reject\" role=\"alert\">It does not hold.</p>\n";
    main += "<div class=\"wide-words\">" + part_of(document_of(verified), "verified") + "</div>\n" +
            verify_form(head);
    return page_of(visit, {"Proof of the record", main, keeper_path});
}

Answer backup_file(Visit &visit) {
    const PrivateFolder folder("the copy");
    const std::string path = folder.file("copy.db");
    back_up(visit.office(), path);
    Answer out{200, "application/vnd.sqlite3", read_bytes(path, most_of_a_copy)};
    out.headers.emplace_back("Content-Disposition",
                             "attachment; filename=\"beadbook-" + print(visit.outside().today()) + ".db\"");
    return out;
}

} // namespace

std::string keeper_ways(const Visit &visit) {
    return "<p class=\"deeds\">" + button_to(visit, "/keeper/people", "People") +
           button_to(visit, "/keeper/equipment", "Equipment") +
           button_to(visit, "/keeper/criteria", "Criteria sets") +
           button_to(visit, "/keeper/practices", "Practices") +
           button_to(visit, "/keeper/rules", "Rules for welders") +
           button_to(visit, "/keeper/types", "Words for imperfections") +
           button_to(visit, "/keeper/copy", "Blanks and confirmed limits") + "</p>\n";
}

PageFamily keeper_pages() {
    return {"Keeper",
            keeper_path,
            {{"GET", keeper_path, keeper_home},
             {"GET", "/keeper/due", due_page},
             {"GET", "/keeper/verify", verify_page},
             {"GET", "/keeper/backup", backup_file}}};
}

} // namespace beadbook
