#include "web/refusal_page.hpp"

#include "measure/text.hpp"
#include "web/page.hpp"

#include <algorithm>
#include <sstream>

namespace beadbook {
namespace {

struct KindStatus {
    Refusal::Kind kind;
    int asked, sent;
};
/// One table: what is not there when a page is asked for (404), what cannot be taken when something is sent
/// (422), what lacks a part (400), and a record that cannot be used just now (503).
const KindStatus statuses[] = {
    {Refusal::Kind::request, 400, 400}, {Refusal::Kind::data, 404, 422}, {Refusal::Kind::record, 503, 503}};

std::string on(const Remedy &remedy, std::size_t i) {
    return i < remedy.on.size() ? url_word(remedy.on[i]) : "";
}

std::string plain(const Remedy &remedy, std::size_t i) { return i < remedy.on.size() ? remedy.on[i] : ""; }

bool asks(const Remedy &remedy, const std::string &field) {
    return std::find(remedy.fields.begin(), remedy.fields.end(), field) != remedy.fields.end();
}

/// Where an operation is done, for the ones that have a page.
std::string path_of(const Remedy &remedy) {
    const std::string &done = remedy.operation, coupon = "/coupon/" + on(remedy, 0);
    if (done == "register") return "/register";
    if (done == "person") return "/keeper/people";
    if (done == "equipment") return "/keeper/equipment";
    if (remedy.on.empty()) return "";
    if (done == "welder") return "/welder/" + on(remedy, 0);
    if (done == "exam") return asks(remedy, "replaces") ? coupon : coupon + "/exam?method=" + on(remedy, 1);
    if (done == "change") return coupon + "/change";
    if ((done == "reopen" || done == "finish") && remedy.on.size() > 1)
        return coupon + "/exam/" + on(remedy, 1);
    for (const char *of_coupon : {"restore", "show", "correct", "move", "log", "withdraw"})
        if (done == of_coupon) return coupon;
    return "";
}

/// An operation in the words of a page.
std::string deed_words(const Remedy &remedy) {
    const std::string &done = remedy.operation, of = plain(remedy, 0), which = plain(remedy, 1);
    if (done == "exam" && asks(remedy, "replaces"))
        return "change the conditions of that " + which + " of " + of;
    if (done == "exam" && !which.empty()) return "begin " + which + " of " + of;
    if (done == "reopen") return "open exam " + which + " of " + of + " again";
    if (done == "finish") return "finish exam " + which + " of " + of;
    if (done == "change") return "correct what was registered about " + of;
    if (done == "restore") return "bring " + of + " back";
    if (done == "register") return "register " + (of.empty() ? "a coupon" : of);
    if (done == "show" || done == "welder") return "look at " + of;
    if (done == "history") return "look at the history of " + of;
    if (done == "person" || done == "equipment") return "have the keeper enter " + of;
    if (done == "log") return "log what is missing of " + of;
    if (done == "withdraw" && which == "indication") return "withdraw a find of " + of;
    if ((done == "correct" || done == "move") && !which.empty()) return done + " #" + which + " of " + of;
    return done + (remedy.on.empty() ? "" : " " + joined(remedy.on, " "));
}

/// What is to be said there; the reason is asked wherever one is needed.
std::string mends(const Remedy &remedy) {
    std::string fields;
    for (const auto &field : remedy.fields)
        if (field != "why" && field != "replaces" && field != "forget" && field != "found" && field != "sure")
            fields += (fields.empty() ? ": " : ", ") + field;
    const std::string words = deed_words(remedy) + fields, path = path_of(remedy);
    return path.empty() ? escaped(words) : link_to(path, words);
}

/// 'line:1:14: ' before what is wrong with a line: where a field holds one line, the sign alone is told.
std::string place_in_words(const std::string &text) {
    const std::string before = "line:1:";
    if (!text.starts_with(before)) return text;
    const std::size_t end = text.find_first_not_of("0123456789", before.size());
    if (end == std::string::npos || end == before.size() || text[end] != ':') return text;
    return "at sign " + text.substr(before.size(), end - before.size()) + text.substr(end);
}

/// What is typed for it at the command line, and where a page has it.
struct CommandOnPage {
    std::string_view command, page;
};
constexpr CommandOnPage commands_on_pages[] = {
    {"'verify'", "the keeper's check of the record"},
    {"'criteria list'", "the keeper's page of criteria sets"},
    {"'criteria types'", "the keeper's page of words for imperfections"},
    {"'remark'", "a remark on its page"}};

/// The name of a rule behind a question, '(depth-over-wall)', without what joins its words.
std::string question_in_words(std::string line) {
    const std::size_t open = line.rfind(" (");
    if (line.find("is that meant?") == std::string::npos || open == std::string::npos || !line.ends_with(")"))
        return line;
    if (line.find(' ', open + 2) == std::string::npos)
        std::replace(line.begin() + static_cast<std::ptrdiff_t>(open), line.end(), '-', ' ');
    return line;
}

} // namespace

std::string page_words(const std::string &message) {
    std::vector<std::string> lines;
    std::istringstream in(message);
    for (std::string line; std::getline(in, line);) {
        for (const auto &[command, page] : commands_on_pages)
            if (const std::size_t at = line.find(command); at != std::string::npos)
                line.replace(at, command.size(), page);
        lines.push_back(question_in_words(place_in_words(line)));
    }
    return joined(lines, "\n");
}

int status_of(const Refusal &refusal, bool writes) {
    for (const auto &one : statuses)
        if (one.kind == refusal.kind()) return writes ? one.sent : one.asked;
    return 500;
}

std::string refusal_html(const Refusal &refusal) {
    std::string out = "<div class=\"refused\" role=\"alert\" data-field=\"" + escaped(refusal.field()) +
                      "\"><p>" + escaped(page_words(refusal.what())) + "</p>";
    if (!refusal.remedies().empty()) {
        out += "<p>What would mend it: ";
        for (const auto &remedy : refusal.remedies())
            out += (&remedy == &refusal.remedies().front() ? "" : ", or ") + mends(remedy);
        out += ".</p>";
    }
    return out + "</div>\n";
}

std::string asked_for(const Visit &visit, const Refusal &refusal) {
    if (!refusal.missing()) return "";
    const std::string &field = refusal.field();
    if (is_question(field))
        return "<div class=\"field tick\"><input type=\"checkbox\" id=\"a-sure\" name=\"" + field +
               "\" value=\"" + visit.answer_to_questions() +
               "\"><label for=\"a-sure\">It is meant so</label></div>";
    return "<div class=\"field\"><label for=\"a-field\">" + escaped(field == "why" ? "The reason" : field) +
           "</label><input id=\"a-field\" autocomplete=\"off\" name=\"" + escaped(field) + "\"></div>";
}

Answer refusal_page(Visit &visit, const Refusal &refusal) {
    const int status = status_of(refusal, visit.writes());
    std::string main = refusal_html(refusal);
    if (visit.request.part) {
        main += asked_for(visit, refusal);
    } else {
        main = "<h1>" + std::string(visit.writes() ? "Nothing was stored" : "That cannot be shown") +
               "</h1>\n" + main;
        if (visit.writes() && refusal.missing()) {
            main += "<form method=\"post\" action=\"" + escaped(visit.request.path) + "\">";
            for (const auto &[name, value] : visit.request.form.pairs())
                if (name != refusal.field() && !is_question(name))
                    main += "<input type=\"hidden\" name=\"" + escaped(name) + "\" value=\"" +
                            escaped(value) + "\">";
            main +=
                asked_for(visit, refusal) + "<p class=\"deeds\"><button>Send it again</button></p></form>\n";
        }
        const std::string back = visit.came_from();
        main += "<p class=\"deeds\">" +
                button_to(visit, back, back == "/" ? "What is to be examined" : "Back to where you were") +
                "</p>";
    }
    Answer out = page_of(visit, {"Refused", main, "", {}, status});
    // A module keeps it until the same person sits here again.
    if (visit.request.part && refusal.field() == "sits") {
        out.status = 403;
        out.headers.emplace_back("X-Bench-Wants", "seat");
    }
    if (status == 503) out.headers.emplace_back("Retry-After", "2");
    return out;
}

} // namespace beadbook
