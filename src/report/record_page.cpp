#include "report/record_page.hpp"

#include "measure/text.hpp"
#include "report/paint.hpp"
#include "report/range_report.hpp"

namespace beadbook {
namespace {

/// The sheet as blocks of lines: what it is, and the words; text and page are drawn from the same.
struct Row {
    std::string name, value, note;
};
struct Block {
    std::string title;
    std::vector<Row> rows;
};

std::string text_at(const nlohmann::json &json, const char *key) {
    if (!json.is_object() || !json.contains(key)) return "";
    return json[key].is_string() ? json[key].get<std::string>() : json[key].dump();
}

Block who(const RecordSheet &s) {
    Block out{"Welder", {{"mark", s.welder.mark, ""}}};
    if (!s.welder.name.empty()) out.rows.push_back({"name", s.welder.name, ""});
    if (!s.welder.employer.empty()) out.rows.push_back({"employer", s.welder.employer, ""});
    return out;
}

Block standing(const RecordSheet &s) {
    Block out{"Standing on " + print(s.on), {}};
    out.rows.push_back({"state", std::string(name_of(s.validity.state)), s.validity.reason});
    out.rows.push_back({"rule", authority(s.validity.from), "way " + s.record.way});
    for (const auto &e : s.events)
        out.rows.push_back(
            {e.kind, print(e.day), e.text + (e.who.empty() ? "" : " (logged by " + e.who + ")")});
    return out;
}

Block test(const RecordSheet &s) {
    Block out{"Test as welded", {}};
    out.rows.push_back({"coupon", s.record.carried() ? "carried in from elsewhere" : s.record.test.id, ""});
    for (const auto &field : coupon_fields()) {
        const std::string value = s.record.test.get(field.name);
        const bool own = field.name != "process" && field.name != "welder" && field.name != "units" &&
                         field.name != "criteria" && field.name != "class";
        if (!value.empty() && own) out.rows.push_back({field.name, value, ""});
        if (field.name == "process" && !value.empty())
            out.rows.push_back({"process", s.weld.word(Trait::process),
                                value == s.weld.word(Trait::process) ? "" : "of " + value});
    }
    if (s.record.carried()) out.rows.push_back({"document", "SHA-256 " + s.record.document, ""});
    return out;
}

Block examined(const RecordSheet &s) {
    Block out{"Examined and graded", {}};
    const auto &e = s.record.evidence;
    if (e.contains("criteria"))
        out.rows.push_back({"criteria",
                            text_at(e["criteria"], "set") + ", " + text_at(e["criteria"], "edition"),
                            "SHA-256 " + text_at(e["criteria"], "hash")});
    if (e.contains("exams"))
        for (const auto &x : e["exams"])
            out.rows.push_back(
                {text_at(x, "method"), text_at(x, "date"),
                 text_at(x, "examiner") +
                     (text_at(x, "level").empty() ? "" : ", level " + text_at(x, "level")) +
                     (text_at(x, "procedure").empty() ? "" : ", " + text_at(x, "procedure")) +
                     (text_at(x, "incomplete").empty() ? ""
                                                       : "; does not count: " + text_at(x, "incomplete"))});
    if (e.contains("mechanical")) out.rows.push_back({"mechanical", text_at(e, "mechanical"), ""});
    if (e.contains("verdict")) out.rows.push_back({"verdict", text_at(e, "verdict"), ""});
    if (e.contains("grade")) {
        const auto &g = e["grade"];
        out.rows.push_back({"grade", "passed for class " + text_at(g, "class"),
                            "by " + text_at(g, "by") + " at " + text_at(g, "at") +
                                (text_at(g, "against verdict") == "true" ? "; against the verdict" : "") +
                                (text_at(g, "remark").empty() ? "" : "; " + text_at(g, "remark"))});
    }
    if (e.contains("retest after"))
        out.rows.push_back(
            {"retest", "after " + text_at(e, "retest after"), "coupons " + text_at(e, "coupons")});
    for (const auto &o : s.record.overridden) out.rows.push_back({"set aside", o, ""});
    if (!s.record.override_why.empty()) out.rows.push_back({"because", s.record.override_why, ""});
    return out;
}

Block qualified(const RecordSheet &s) {
    Block out{"Qualifies by " + s.rules.title + " (" + s.rules.edition + ")", {}};
    for (const auto &one : s.range) {
        if (!may_matter(s.range, *one.variable)) continue;
        std::string name(info(one.variable->of).name);
        if (!one.variable->work.text.empty()) name += " (" + one.variable->work.text + ")";
        if (one.parts.empty()) out.rows.push_back({name, "nothing", "no rule speaks of such a test"});
        for (const auto &part : one.parts) {
            std::string value = print(part, s.record.test.unit());
            if (!part.rule->work.text.empty()) value += ", for " + part.rule->work.text;
            if (part.applies == Truth::unknown)
                value = "cannot say: " + name_of(part.lacks.front()) + " is missing";
            out.rows.push_back({name, value, authority(part.rule->clause, part.rule->standing)});
            name.clear();
        }
    }
    for (const auto &gap : s.rules.gaps)
        out.rows.push_back({&gap == &s.rules.gaps.front() ? "not in these rules" : "", gap, ""});
    return out;
}

Block proof(const RecordSheet &s) {
    return {"Proof",
            {{"granted", s.granted.at, "by " + s.granted.who},
             {"rules", s.rules.name, "SHA-256 " + s.record.rules_hash},
             {"entry", s.hash, ""},
             {"head of the record", s.head, ""}}};
}

std::vector<Block> blocks(const RecordSheet &s) {
    std::vector<Block> out{who(s), standing(s), qualified(s), test(s)};
    if (!s.record.evidence.is_null()) out.push_back(examined(s));
    out.push_back(proof(s));
    return out;
}

std::string title_of(const RecordSheet &s) {
    return "Qualification " + std::to_string(s.record.number) + " of welder " + s.welder.mark + ", " +
           s.weld.word(Trait::process);
}

std::string escaped(const std::string &text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&': out += "&amp;"; break;
        case '<': out += "&lt;"; break;
        case '>': out += "&gt;"; break;
        case '"': out += "&quot;"; break;
        default: out += c;
        }
    }
    return out;
}

constexpr std::string_view style = R"(
@page { size: A4; margin: 16mm }
body { font: 10.5pt/1.4 Georgia, "DejaVu Serif", serif; color: #222; max-width: 180mm; margin: 8mm auto }
h1 { font-size: 17pt; margin: 0 0 1mm }
p.sub { margin: 0 0 4mm; color: #555 }
h2 { font-size: 11.5pt; margin: 5mm 0 1mm; border-bottom: 0.4mm solid #222 }
table { border-collapse: collapse; width: 100% }
td { vertical-align: top; padding: 0.6mm 3mm 0.6mm 0; border-bottom: 0.1mm solid #ccc; overflow-wrap: anywhere }
td.n { width: 27%; color: #555 } td.v { width: 38% } td.o { color: #555; font-size: 9pt }
h2, tr { break-inside: avoid; break-after: avoid-page }
tr { break-after: auto }
div.sign { display: flex; gap: 12mm; margin-top: 14mm } div.sign span { flex: 1; border-top: 0.3mm solid #222; padding-top: 1mm; color: #555 }
p.care { margin-top: 6mm; font-size: 8.5pt; color: #555 }
)";

} // namespace

std::string record_text(const RecordSheet &s) {
    std::string out = title_of(s) + "\n";
    for (const auto &block : blocks(s)) {
        out += "\n" + block.title + "\n";
        for (const auto &row : block.rows) {
            out += "  " + padded(row.name, 20) + row.value;
            if (!row.note.empty()) out += "  (" + row.note + ")";
            out += "\n";
        }
    }
    return out + "\n" + std::string(caution);
}

nlohmann::json record_json(const RecordSheet &s) {
    nlohmann::json events = nlohmann::json::array();
    for (const auto &e : s.events) {
        nlohmann::json one = e.to_json();
        one["kind"] = e.kind;
        one["by"] = e.who;
        events.push_back(std::move(one));
    }
    nlohmann::json out{{"welder", s.welder.to_json()},
                       {"mark", s.welder.mark},
                       {"qualification", s.record.to_json()},
                       {"test", weld_json(s.weld, s.record.test.unit())},
                       {"rules",
                        {{"name", s.rules.name},
                         {"title", s.rules.title},
                         {"edition", s.rules.edition},
                         {"hash", s.record.rules_hash},
                         {"gaps", s.rules.gaps}}},
                       {"range", range_json(s.range, s.record.test.unit())},
                       {"on", print(s.on)},
                       {"state", name_of(s.validity.state)},
                       {"reason", s.validity.reason},
                       {"events", events},
                       {"granted", {{"at", s.granted.at}, {"by", s.granted.who}}},
                       {"entry hash", s.hash},
                       {"head", s.head}};
    if (s.validity.until) out["until"] = print(*s.validity.until);
    return out;
}

std::string record_html(const RecordSheet &s) {
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>" +
                      escaped(title_of(s)) + "</title><style>" + std::string(style) +
                      "</style></head><body>\n<h1>" + escaped(title_of(s)) + "</h1>\n<p class=\"sub\">" +
                      escaped(print(s.weld, s.record.test.unit())) + "</p>\n";
    for (const auto &block : blocks(s)) {
        out += "<h2>" + escaped(block.title) + "</h2>\n<table>\n";
        for (const auto &row : block.rows)
            out += "<tr><td class=\"n\">" + escaped(row.name) + "</td><td class=\"v\">" + escaped(row.value) +
                   "</td><td class=\"o\">" + escaped(row.note) + "</td></tr>\n";
        out += "</table>\n";
    }
    return out +
           "<div class=\"sign\"><span>graded by, date</span><span>for the employer, date</span></div>\n<p "
           "class=\"care\">" +
           escaped(std::string(caution)) + "</p>\n</body></html>\n";
}

} // namespace beadbook
