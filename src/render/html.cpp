#include "render/html.hpp"

#include <algorithm>
#include <utility>

namespace beadbook {
namespace {

// Written as WeasyPrint 57 reads it too: no property within a shorthand, no gap of a row, and nothing that is
// to go on over several sheets in a flexible box, of which it prints one sheet and drops the rest.
constexpr std::string_view page_style = R"(
:root { color-scheme: light dark; --ink: #222; --quiet: #555; --paper: #fff; --rule: #ccc }
@media screen and (prefers-color-scheme: dark) { :root { --ink: #e8e6e1; --quiet: #b0aca4; --paper: #1c1b19; --rule: #4a4741 } }
@page { margin: 14mm 16mm 15mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8.5pt "DejaVu Sans", sans-serif } }
body { font: 10.5pt/1.4 Georgia, "DejaVu Serif", serif; color: var(--ink); background: var(--paper); max-width: 180mm; margin: 8mm auto }
@media screen { body { padding: 0 4mm } }
@media print { body { max-width: none; margin: 0 } }
h1 { font-size: 17pt; margin: 0 0 1mm }
h2 { font-size: 11.5pt; margin: 5mm 0 1mm; border-bottom: 0.4mm solid }
p { margin: 0 0 2mm } ul { margin: 0 0 2mm; padding-left: 6mm } li { margin-bottom: 1mm }
table { border-collapse: collapse; width: 100%; margin-bottom: 2mm }
td, th { text-align: left; vertical-align: top; padding: 0.6mm 3mm 0.6mm 0; border-bottom: 0.1mm solid; border-bottom-color: var(--rule) }
td.r, th.r { text-align: right } td.r + td:not(.r), th.r + th:not(.r) { padding-left: 4mm } .whole { white-space: nowrap } .long { overflow-wrap: anywhere }
td.n { width: 17%; color: var(--quiet) } td.v { width: 40% } tr.two td { width: 33% } tr.two td.n { width: 17% } td.o { color: var(--quiet); font-size: 9pt }
h1, h2, tr, figure, li:not(:has(li)) { break-inside: avoid } h1, h2 { break-after: avoid-page }
.quiet, .source { color: var(--quiet); font-size: 9pt } .accept, .reject, .open { font-weight: bold }
pre { font: 9pt/1.2 "DejaVu Sans Mono", monospace; overflow-x: auto }
div.sign { display: flex; margin-top: 11mm; break-inside: avoid }
div.sign span { flex: 1; min-width: 60mm; border-top: 0.3mm solid; padding-top: 1mm; color: var(--quiet) }
div.sign span + span { margin-left: 12mm }
p.care { margin-top: 3mm; font-size: 8.5pt; color: var(--quiet) }
div.sheet { break-before: page } @media screen { div.table { overflow-x: auto } }
@media screen and (max-width: 46rem) {
div.sign { display: block } div.sign span, div.sign span + span { display: block; margin: 11mm 0 0 }
table.list, table.list tbody, table.list tr, table.list td { display: block; width: auto } table.list thead, table.list td:empty { display: none }
table.list tr { padding: 1mm 0; border-bottom: 0.1mm solid; border-bottom-color: var(--rule) } table.list td { border: 0; padding: 0; text-align: left } table.list td:first-child { font-weight: bold }
table.list td[data-of]::before { content: attr(data-of) ": "; color: var(--quiet); font-weight: normal } table.list td.r + td:not(.r) { padding-left: 0 }
table.two, table.two tbody { display: block } tr.two { display: grid; grid-template-columns: 34% 66% } tr.two td, tr.two td.n { width: auto } tr.two td:empty { display: none }
}
)";

/// As a style writes a text between quotes.
std::string style_text(std::string_view text) {
    static constexpr std::string_view digits = "0123456789abcdef";
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || c == '"' || c == '\\' || c == '<')
            (((out += '\\') += digits[byte / 16]) += digits[byte % 16]) += ' ';
        else
            out += c;
    }
    return out + "\"";
}

/// What stands at the foot of each sheet, so that one which is laid aside is known again. Sheets for several
/// people are handed out apart, so they are not counted through.
std::string foot_style(const Document &document) {
    if (document.foot.empty()) return "";
    std::vector<std::string> parts;
    for (const auto &block : document.blocks)
        if (const auto *sheet = std::get_if<NewSheet>(&block); sheet && !sheet->of.empty())
            parts.push_back(sheet->of);
    const auto marked = [&](const std::string &of) {
        return " { @bottom-left { content: " + style_text(of + " · " + document.foot) +
               "; font: 8.5pt \"DejaVu Sans\", sans-serif }" +
               (parts.size() > 1 ? " @bottom-right { content: none }" : "") + " }\n";
    };
    std::string out = "@page" + marked(document.title);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string name = "of" + std::to_string(i + 1);
        out += "@page " + name + marked(parts[i]) + "." + name + " { page: " + name + " }\n";
    }
    return out;
}

/// A cell is never so narrow that a word or a day is cut in it; only what is longer than any word is, a hash
/// say.
std::string uncut(const std::string &text) {
    constexpr std::size_t longest = 24;
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
        const std::string word = text.substr(at, end - at);
        const bool parted = word.find('-') != std::string::npos && word.size() > 1;
        const char *kind = word.size() > longest ? "long" : parted ? "whole" : nullptr;
        out +=
            kind ? "<span class=\"" + std::string(kind) + "\">" + escaped(word) + "</span>" : escaped(word);
        if (end < text.size()) out += text[end];
        at = end + 1;
    }
    return out;
}

std::string tagged(const TextRun &run, const std::string &text) {
    switch (run.tone) {
    case Tone::strong: return "<b>" + text + "</b>";
    case Tone::quiet: return "<span class=\"quiet\">" + text + "</span>";
    case Tone::accept: return "<span class=\"accept\">" + text + "</span>";
    case Tone::reject: return "<span class=\"reject\">" + text + "</span>";
    case Tone::cannot_say: return "<span class=\"open\">" + text + "</span>";
    case Tone::plain: break;
    }
    return text;
}

class HtmlRenderer {
public:
    /// `part_of_page`: of one at the bench, where lists open, and whoever takes the part finds rows by the
    /// text of their first cell.
    HtmlRenderer(std::string ids, SvgStyle style, bool part_of_page, ExamPath exam_path = {})
        : ids_(std::move(ids)), style_(style), part_of_page_(part_of_page), exam_path_(std::move(exam_path)) {
    }

    std::string operator()(const Document &document) {
        for (const auto &block : document.blocks) std::visit([&](const auto &b) { show(b); }, block);
        if (marked_sheets_ > 0) out_ += "</section>\n";
        return std::move(out_);
    }

private:
    std::string words(const Words &w) const {
        std::string out;
        for (const auto &run : w.runs()) {
            if (run.typed) continue;
            const std::string text = tagged(run, escaped(run.text));
            out += run.exam > 0 && exam_path_
                       ? "<a href=\"" + escaped(exam_path_(run.exam)) + "\">" + text + "</a>"
                       : text;
        }
        return out;
    }
    static std::string cell_words(const Words &w) {
        std::string out;
        for (const auto &run : w.runs())
            if (!run.typed) out += tagged(run, uncut(run.text));
        return out;
    }
    static std::string source(const std::string &text) {
        return text.empty() ? "" : " <span class=\"source\">[" + escaped(text) + "]</span>";
    }

    void show(const Heading &h) {
        const std::string tag = h.level == 1 ? "h1" : "h2";
        out_ += "<" + tag + ">" + words(h.words) + "</" + tag + ">\n";
    }
    void show(const Paragraph &p) {
        if (!p.words.empty()) out_ += "<p>" + words(p.words) + source(p.source) + "</p>\n";
    }
    void show_items(const std::vector<Bullet> &items) {
        out_ += "<ul>\n";
        for (const auto &item : items) {
            out_ += "<li>" + words(item.words) + source(item.source);
            if (!item.under.empty()) show_items(item.under);
            out_ += "</li>\n";
        }
        out_ += "</ul>\n";
    }
    void show(const Bullets &list) { show_items(list.items); }
    void show(const Fold &fold) {
        if (part_of_page_)
            out_ += "<details class=\"reasons\"><summary>" + escaped(fold.title) + "</summary>\n";
        else
            show(Heading{fold.title, 2});
        show_items(fold.items);
        if (part_of_page_) out_ += "</details>\n";
    }
    /// A list of things with a fact a column, too wide for a hand: there each thing is a block of lines. A
    /// table of numbers is compared along its columns, and is moved sideways.
    static bool is_list(const Grid &table) {
        constexpr std::size_t most_beside = 3;
        return table.columns.size() > most_beside &&
               std::count_if(table.columns.begin(), table.columns.end(),
                             [](const Column &c) { return c.numbers; }) <= 1 &&
               std::none_of(table.columns.begin(), table.columns.end(),
                            [](const Column &c) { return c.title.empty(); });
    }
    void show(const Grid &table) {
        const bool list = is_list(table);
        const auto cell = [&](std::size_t c, const std::string &tag, const std::string &text) {
            const bool right = c < table.columns.size() && table.columns[c].numbers;
            const bool told = list && tag == "td" && c > 0 && c < table.columns.size();
            out_ += "<" + tag + (right ? " class=\"r\"" : "") +
                    (told ? " data-of=\"" + escaped(table.columns[c].title) + "\"" : "") + ">" + text + "</" +
                    tag + ">";
        };
        out_ += "<div class=\"table\"><table" + std::string(list ? " class=\"list\"" : "") + ">\n";
        if (std::any_of(table.columns.begin(), table.columns.end(),
                        [](const Column &c) { return !c.title.empty(); })) {
            out_ += "<thead><tr>";
            for (std::size_t c = 0; c < table.columns.size(); ++c)
                cell(c, table.columns[c].title.empty() ? "td" : "th", escaped(table.columns[c].title));
            out_ += "</tr></thead>\n";
        }
        for (const auto &row : table.rows) {
            out_ += "<tr>";
            for (std::size_t c = 0; c < row.size(); ++c)
                cell(c, "td", c == 0 && part_of_page_ ? words(row[c]) : cell_words(row[c]));
            out_ += "</tr>\n";
        }
        out_ += "</table></div>\n";
    }
    static bool is_short(const NamedValue &row) {
        constexpr std::size_t most_signs = 30;
        return row.value.plain().size() + row.note.size() <= most_signs;
    }
    void show_rows(const std::vector<NamedValue> &rows) {
        if (rows.empty()) return;
        out_ += "<div class=\"table\"><table>\n";
        for (const auto &row : rows)
            out_ += "<tr><td class=\"n\">" + escaped(row.name) + "</td><td class=\"v\">" +
                    cell_words(row.value) + "</td><td class=\"o\">" + uncut(row.note) + "</td></tr>\n";
        out_ += "</table></div>\n";
    }
    void show_in_two_columns(const std::vector<NamedValue> &rows) {
        const std::size_t half = (rows.size() + 1) / 2;
        const auto cells = [&](const NamedValue &row) {
            return "<td class=\"n\">" + escaped(row.name) + "</td><td>" + cell_words(row.value) +
                   (row.note.empty() ? "" : " <span class=\"quiet\">" + uncut(row.note) + "</span>") +
                   "</td>";
        };
        out_ += "<table class=\"two\">\n";
        for (std::size_t i = 0; i < half; ++i)
            out_ += "<tr class=\"two\">" + cells(rows[i]) +
                    (half + i < rows.size() ? cells(rows[half + i]) : "<td></td><td></td>") + "</tr>\n";
        out_ += "</table>\n";
    }
    /// On paper many short facts one after another stand in two columns.
    void show(const NamedValues &pairs) {
        constexpr std::ptrdiff_t least_rows = 6;
        if (part_of_page_) return show_rows(pairs.rows);
        std::vector<NamedValue> before;
        for (auto from = pairs.rows.begin(); from != pairs.rows.end();) {
            const auto to = std::find_if_not(from, pairs.rows.end(), is_short);
            if (to - from >= least_rows) {
                show_rows(std::exchange(before, {}));
                show_in_two_columns({from, to});
            } else {
                before.insert(before.end(), from, to);
            }
            from = to;
            if (from != pairs.rows.end()) before.push_back(*from++);
        }
        show_rows(before);
    }
    void show(const Drawing &drawing) { out_ += "<pre>" + escaped(drawing.text) + "</pre>\n"; }
    void picture(const Picture &drawn) { out_ += svg(drawn, ids_ + std::to_string(++pictures_), style_); }
    void show(const Figure &figure) {
        const bool both = figure.narrow && style_ == SvgStyle::by_class;
        out_ += "<figure class=\"" + figure.picture.kind + "-figure\">\n";
        if (both) out_ += "<div class=\"wide\">";
        picture(figure.picture);
        if (both) {
            out_ += "</div><div class=\"narrow\">";
            picture(*figure.narrow);
            out_ += "</div>";
        }
        if (!figure.caption.empty()) out_ += "<figcaption>" + escaped(figure.caption) + "</figcaption>";
        out_ += "</figure>\n";
    }
    void show(const Tiles &tiles) {
        out_ += "<div class=\"tiles\">\n";
        for (const auto &figure : tiles.figures) show(figure);
        out_ += "</div>\n";
    }
    void show(const NewSheet &sheet) {
        if (sheet.of.empty()) {
            out_ += "<div class=\"sheet\"></div>\n";
            return;
        }
        if (marked_sheets_ > 0) out_ += "</section>\n";
        out_ += "<section class=\"of" + std::to_string(++marked_sheets_) + "\">\n";
    }
    void show(const Signatures &s) {
        out_ += "<div class=\"sign\">";
        for (const auto &line : s.lines) out_ += "<span>" + escaped(line) + "</span>";
        out_ += "</div>\n";
    }
    void show(const Caution &) { out_ += "<p class=\"care\">" + escaped(std::string(caution)) + "</p>\n"; }

    std::string ids_;
    SvgStyle style_;
    bool part_of_page_;
    ExamPath exam_path_;
    int pictures_ = 0, marked_sheets_ = 0;
    std::string out_;
};

} // namespace

std::string fragment(const Document &document, const std::string &ids, const ExamPath &exam_path) {
    return HtmlRenderer(ids, SvgStyle::by_class, true, exam_path)(document);
}

std::string html(const Document &document, SvgStyle style, PaperSize paper) {
    const std::string size = paper == PaperSize::a4       ? "@page { size: A4 }\n"
                             : paper == PaperSize::letter ? "@page { size: letter }\n"
                                                          : "";
    return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
           "<meta name=\"viewport\" content=\"width=device-width\"><title>" +
           escaped(document.title) + "</title><style>" + std::string(page_style) +
           std::string(picture_style()) + size + foot_style(document) + "</style></head><body>\n" +
           HtmlRenderer("p", style, false)(document) + "</body></html>\n";
}

} // namespace beadbook
