#include "report/limit_bars.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace beadbook {
namespace {

constexpr std::size_t most_bars = 20, most_bar_lines = 10, bars_in_one = 4;

std::string measure_of(const Rule &rule, std::size_t k) {
    const std::string title = rule.title.empty() ? rule.id : rule.title;
    const Window *window = rule.window(k);
    switch (rule.kind) {
    case Rule::Kind::each: return title + ": " + rule.measure.text;
    case Rule::Kind::gap: return title + ": free distance";
    case Rule::Kind::sum:
    case Rule::Kind::count: break;
    default: return title;
    }
    const std::string of =
        rule.kind == Rule::Kind::count ? "number" : "sum of " + std::string(info(rule.summed).name);
    return title + ": " + of +
           (!window                                    ? ""
            : window->kind == Window::Kind::whole_weld ? " over the whole weld"
                                                       : " in any " + window->text);
}

LimitRow limit_row(const Case &c, std::size_t k, const Rule &rule, const Exact &measured,
                   const Exact &limit) {
    LimitRow out;
    const PrintedPair p = print_against(rule, measured, limit, c.unit);
    out.what = measure_of(rule, k);
    out.measured = p.first;
    out.limit = p.second;
    out.source = authority(rule.clause, rule.standings[k]);
    out.least = !is_maximum(rule.compare);
    out.kept = holds(measured, rule.compare, limit);
    const double m = measured.to_double(), l = limit.to_double();
    out.share_of_limit = l > 0 ? m / l : m > 0 ? 2 : 1;
    out.ratio = !out.least ? out.share_of_limit : m > 0 ? l / m : 2;
    return out;
}

std::string tags_in_row(const std::vector<int> &numbers) {
    std::vector<std::string> tags;
    for (const int n : numbers) tags.push_back("#" + std::to_string(n));
    if (tags.size() > 4)
        return tags.front() + " to " + tags.back() + " (" + std::to_string(tags.size()) + ")";
    return joined(tags, ", ");
}

void worst_first(std::vector<LimitRow> &rows) {
    std::stable_sort(rows.begin(), rows.end(),
                     [](const LimitRow &a, const LimitRow &b) { return a.ratio > b.ratio; });
}

std::string row_head(const LimitRow &row) { return (row.who.empty() ? "" : row.who + ", ") + row.what; }
std::string row_numbers(const LimitRow &row) {
    return row.measured + (row.least ? ", at least " : ", limit ") + row.limit;
}

/// As far as a bar is drawn, in limits: what is far out is cut there, and the cut is shown.
constexpr double farthest = 4;
double scale_end(const LimitRow &row) { return std::clamp(row.share_of_limit * 1.08, 1.25, farthest); }

std::string told_of_rows(const std::vector<LimitRow> &rows) {
    std::string out;
    for (const auto &row : rows)
        out += (out.empty() ? "" : " ") + row_head(row) + ": " + row_numbers(row) +
               (row.kept ? ", within; " : ", out; ") + row.source + ".";
    return out;
}

/// In as many lines as it takes: what a bar is of is never cut.
std::vector<std::string> in_lines(const std::string &text, double size, double width) {
    std::vector<std::string> out(1);
    for (const auto word : words_of(text)) {
        const std::string longer = out.back() + (out.back().empty() ? "" : " ") + std::string(word);
        if (out.back().empty() || text_width(longer, size) <= width)
            out.back() = longer;
        else
            out.emplace_back(word);
    }
    return out;
}

} // namespace

std::vector<LimitRow> limit_rows(const Case &c, std::size_t k, const ClassJudgement &judged) {
    std::vector<LimitRow> out;
    for (const auto &f : judged.findings) {
        if (!f.has_numbers || f.rule < 0 || f.effect == Verdict::accept) continue;
        LimitRow row = limit_row(c, k, c.set.rules[static_cast<std::size_t>(f.rule)], f.measured, f.limit);
        row.who = tags_in_row(f.indications);
        out.push_back(std::move(row));
    }
    worst_first(out);
    return out;
}

std::vector<LimitRow> limit_rows(const Case &c, std::size_t k, const Proof &proof) {
    std::vector<LimitRow> out;
    for (const auto &entry : proof.entries) {
        if (!decides(entry) || !entry.has_numbers || entry.rule < 0) continue;
        LimitRow row =
            limit_row(c, k, c.set.rules[static_cast<std::size_t>(entry.rule)], entry.measured, entry.limit);
        if (entry.entry > 0) row.who = "#" + std::to_string(entry.entry);
        out.push_back(std::move(row));
    }
    worst_first(out);
    return out;
}

Picture limit_bars(const std::vector<LimitRow> &rows, double width) {
    Picture out;
    out.kind = "limits";
    out.title = "Measured against the limits";
    out.told = told_of_rows(rows);
    out.width = width;
    const double size = width < 500 ? 12 : 13, x0 = 14, wide = width - 2 * x0, high = 14;
    double y = 2;
    for (const auto &row : rows) {
        PictureGroup group;
        const auto x = [&](double limits) { return x0 + wide * limits / scale_end(row); };
        const bool is_cut = row.share_of_limit > farthest;
        const auto put_lines = [&](const std::string &text, double between, bool quiet) {
            for (const auto &line : in_lines(text, size, wide)) {
                y += size + between;
                group.shapes.emplace_back(PictureText{x0, y, size, line, Anchor::start, false, quiet});
            }
        };
        put_lines(row_head(row), 2, false);
        y += 5;
        const double from = row.least ? x0 : x(1), to = row.least ? x(1) : x0 + wide;
        group.shapes.emplace_back(PictureBox{Role::beyond, from, y, to - from, high});
        group.shapes.emplace_back(PictureBox{Role::edge, x0, y, wide, high});
        group.shapes.emplace_back(PictureBox{row.kept ? Role::within : Role::over, x0, y + 3,
                                             x(std::min(row.share_of_limit, farthest)) - x0, high - 6});
        if (is_cut) // a gap in the bar, as where an axis is broken
            group.shapes.emplace_back(PicturePath{Role::kept,
                                                  {{x0 + wide - 26, y + high + 1},
                                                   {x0 + wide - 20, y - 1},
                                                   {x0 + wide - 14, y - 1},
                                                   {x0 + wide - 20, y + high + 1}},
                                                  true});
        group.shapes.emplace_back(PictureLine{Role::limit, x(1), y - 3, x(1), y + high + 3});
        y += high + size + 3;
        const std::string numbers = row_numbers(row) + (row.kept ? "" : ", out");
        group.shapes.emplace_back(PictureText{x0, y, size, numbers, Anchor::start, !row.kept, false});
        const double left = text_width(numbers, size) * 1.08 + 16;
        const double room = wide - left;
        if (text_width(row.source, size) <= room) {
            group.shapes.emplace_back(
                PictureText{x0 + left, y, size, row.source, Anchor::start, false, true});
        } else {
            put_lines(row.source, 3, true);
        }
        y += 13;
        group.title = row_head(row) + ": " + row_numbers(row);
        out.shapes.emplace_back(std::move(group));
    }
    out.height = std::ceil(y);
    return out;
}

std::string limit_lines(const std::vector<LimitRow> &rows) {
    constexpr double cells = 36;
    std::string out;
    for (std::size_t i = 0; i < std::min(rows.size(), most_bar_lines); ++i) {
        const LimitRow &row = rows[i];
        std::string bar(static_cast<std::size_t>(cells), ' ');
        const auto cell = [&](double limits) {
            return static_cast<std::size_t>(std::min(cells, std::round(cells * limits / scale_end(row))));
        };
        for (std::size_t k = 0; k < cell(std::min(row.share_of_limit, farthest)); ++k)
            bar[k] = row.kept ? '=' : 'X';
        bar[std::min(cell(1), bar.size() - 1)] = '|';
        out += "    " + bar + "  " + (row.who.empty() ? "" : row.who + ": ") + row_numbers(row) + "\n";
    }
    if (rows.empty()) return out;
    out += "    | is the limit";
    if (rows.size() > most_bar_lines)
        out += "; and " + std::to_string(rows.size() - most_bar_lines) + " more";
    return out + "\n";
}

void add_limit_bars(Document &doc, std::vector<LimitRow> rows) {
    if (rows.empty()) return;
    const std::size_t all = rows.size();
    std::string text = limit_lines(rows);
    if (rows.size() > most_bars) rows.resize(most_bars);
    doc.heading("Measured against the limits", 2);
    // In pieces, so that paper may break between them.
    for (std::size_t from = 0; from < rows.size(); from += bars_in_one) {
        const std::vector<LimitRow> some(
            rows.begin() + static_cast<std::ptrdiff_t>(from),
            rows.begin() + static_cast<std::ptrdiff_t>(std::min(from + bars_in_one, rows.size())));
        const bool last = from + bars_in_one >= rows.size();
        doc.add(Figure{limit_bars(some), limit_bars(some, 340),
                       last && all > most_bars ? "and " + std::to_string(all - most_bars) + " more" : "",
                       std::exchange(text, "")});
    }
}

} // namespace beadbook
