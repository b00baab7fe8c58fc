#include "report/summary_charts.hpp"

#include "measure/text.hpp"
#include "report/summary_document.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <utility>

namespace beadbook {
namespace {

constexpr std::size_t most_rows = 30;
constexpr double left_edge = 14;

std::string whole_percent(double share) {
    char text[16];
    std::snprintf(text, sizeof text, "%.0f %%", 100 * share);
    return text;
}

/// A picture that grows downwards, of a given width.
struct Chart {
    Picture picture;
    double size, wide, y = 2;

    Chart(const std::string &kind, const std::string &title, double width)
        : size(width < 500 ? 12 : 13), wide(width - 2 * left_edge) {
        picture.kind = kind;
        picture.title = title;
        picture.width = width;
    }
    double x(double share) const { return left_edge + wide * share; }
    template <class Shape>
    void put(Shape shape) {
        picture.shapes.emplace_back(std::move(shape));
    }
    void words(double at, std::string text, Anchor anchor = Anchor::start, bool quiet = false) {
        put(PictureText{at, y, size, std::move(text), anchor, false, quiet});
    }
    /// A name at the left with its numbers at the right, or in a line below where both do not fit.
    void line(const std::string &name, const std::string &numbers) {
        y += size;
        // Beside the lines at both ends, never on them.
        words(left_edge + 4, name);
        if (text_width(name, size) + text_width(numbers, size) + 20 > wide) y += size + 3;
        words(left_edge + wide - 4, numbers, Anchor::end, true);
        y += 4;
    }
    /// 0 to 100 % at quarters, lines up to `top`, under all that is there.
    void axis(double top) {
        std::vector<PictureShape> guides;
        for (int k = 0; k <= 4; ++k)
            guides.emplace_back(PictureLine{Role::guide, x(k / 4.0), top, x(k / 4.0), y});
        picture.shapes.insert(picture.shapes.begin(), guides.begin(), guides.end());
        put(PictureLine{Role::scale, x(0), y, x(1), y});
        y += size + 3;
        for (int k = 0; k <= 4; ++k)
            words(x(k / 4.0), whole_percent(k / 4.0),
                  k == 0   ? Anchor::start
                  : k == 4 ? Anchor::end
                           : Anchor::middle,
                  true);
        y += 5;
    }
    Picture done(std::string told) {
        picture.height = std::ceil(y);
        picture.told = std::move(told);
        return std::move(picture);
    }
};

std::string counts_of(const FindCount &one) {
    return std::to_string(one.finds) + (one.finds == 1 ? " find" : " finds") + ", " +
           std::to_string(one.rejecting) + " rejecting";
}

/// By imperfection: its finds, and the share of all that it makes with those before.
struct ParetoRow {
    const FindCount *of;
    double share, so_far;
    std::string numbers() const { return counts_of(*of) + ", " + whole_percent(so_far) + " so far"; }
};

std::vector<ParetoRow> pareto_rows(const Summary &summary) {
    std::vector<ParetoRow> out;
    std::size_t before = 0;
    for (const auto &one : summary.imperfections) {
        before += one.finds;
        const auto all = static_cast<double>(std::max<std::size_t>(summary.finds, 1));
        out.push_back({&one, static_cast<double>(one.finds) / all, static_cast<double>(before) / all});
    }
    return out;
}

/// What so far makes is a mark on each bar's line, joined by none: a line would run through the words.
Picture pareto(const std::vector<ParetoRow> &rows, double width) {
    Chart chart("pareto", "Finds by imperfection", width);
    const double top = chart.y;
    std::vector<PictureShape> above;
    std::string told;
    for (std::size_t i = 0; i < std::min(rows.size(), most_rows); ++i) {
        const ParetoRow &row = rows[i];
        chart.line(row.of->name, row.numbers());
        const double part = row.of->finds == 0 ? 0
                                               : row.share * static_cast<double>(row.of->rejecting) /
                                                     static_cast<double>(row.of->finds);
        above.emplace_back(PictureBox{Role::bar, chart.x(0), chart.y, chart.wide * row.share, 12});
        if (part > 0) above.emplace_back(PictureBox{Role::part, chart.x(0), chart.y, chart.wide * part, 12});
        above.emplace_back(PictureEllipse{Role::share, chart.x(row.so_far), chart.y + 6, 3.5, 3.5});
        told += (told.empty() ? "" : " ") + row.of->name + ": " + row.numbers() + ".";
        chart.y += 20;
    }
    chart.axis(top);
    for (auto &shape : above) chart.put(std::move(shape));
    chart.y += chart.size + 2;
    chart.put(PictureBox{Role::bar, chart.x(0), chart.y - 9, 14, 9});
    chart.words(chart.x(0) + 19, "finds");
    chart.put(PictureBox{Role::part, chart.x(0) + 76, chart.y - 9, 14, 9});
    chart.words(chart.x(0) + 95, "rejecting");
    chart.put(PictureEllipse{Role::share, chart.x(0) + 183, chart.y - 4, 3.5, 3.5});
    chart.words(chart.x(0) + 191,
                chart.wide < 500 ? "with those before" : "share with those before it, so far");
    chart.y += 6;
    return chart.done(told);
}

std::string pareto_lines(const std::vector<ParetoRow> &rows) {
    std::size_t widest = 0;
    for (const auto &row : rows) widest = std::max(widest, row.of->name.size());
    std::string out;
    for (std::size_t i = 0; i < std::min(rows.size(), most_rows); ++i) {
        std::string bar(static_cast<std::size_t>(std::lround(30 * rows[i].share)), '#');
        bar.resize(30, ' ');
        std::string so_far = whole_percent(rows[i].so_far);
        so_far.insert(0, 6 - std::min<std::size_t>(so_far.size(), 6), ' ');
        out += "    " + padded(rows[i].of->name, widest + 1) + "  " + bar + so_far + " so far\n";
    }
    return out;
}

/// Four quarters of a weld with a column on each.
void quarters(Chart &chart, const Summary &summary, const std::string &title, WeldPart first, bool closed) {
    std::vector<const FindCount *> counts(4, nullptr);
    std::size_t most = 0;
    for (std::size_t k = 0; k < 4; ++k)
        for (const auto &one : summary.places)
            if (one.name == name_of(static_cast<WeldPart>(static_cast<std::size_t>(first) + k))) {
                counts[k] = &one;
                most = std::max(most, one.finds);
            }
    if (most == 0) return;
    constexpr double high = 60;
    chart.y += chart.size;
    chart.words(left_edge, title, Anchor::start, true);
    chart.y += 8 + high + chart.size;
    for (std::size_t k = 0; k < 4; ++k) {
        const double from = chart.x(static_cast<double>(k) / 4), wide = chart.wide / 4;
        const double finds = counts[k] ? static_cast<double>(counts[k]->finds) : 0;
        const double rejecting = counts[k] ? static_cast<double>(counts[k]->rejecting) : 0;
        const double column = high * finds / static_cast<double>(most);
        const double part = high * rejecting / static_cast<double>(most);
        chart.put(PictureBox{Role::bar, from + wide * 0.2, chart.y - column, wide * 0.6, column});
        if (part > 0) chart.put(PictureBox{Role::part, from + wide * 0.2, chart.y - part, wide * 0.6, part});
        const std::string number = std::to_string(counts[k] ? counts[k]->finds : 0) + ", " +
                                   std::to_string(counts[k] ? counts[k]->rejecting : 0) +
                                   (chart.wide < 500 ? " rej." : " rejecting");
        chart.put(PictureText{from + wide / 2, chart.y - column - 4, chart.size, number, Anchor::middle});
        chart.put(PictureBox{Role::weld, from, chart.y, wide, 14});
    }
    chart.y += 14 + chart.size + 3;
    for (int k = 0; k <= 4; ++k) {
        const std::string mark = closed ? (k % 4 == 0 ? "12" : std::to_string(3 * k))
                                        : (k == 0   ? "0"
                                           : k == 4 ? "end"
                                                    : std::to_string(k) + "/4");
        chart.words(chart.x(k / 4.0), mark, k == 0 ? Anchor::start : k == 4 ? Anchor::end : Anchor::middle);
    }
    chart.y += 10;
}

Picture places(const Summary &summary, double width) {
    Chart chart("places", "Finds by place", width);
    quarters(chart, summary, "girth welds, by the clock", WeldPart::at_12, true);
    quarters(chart, summary, "welds with ends, from the datum", WeldPart::first, false);
    std::string told;
    for (const auto &one : summary.places)
        told += (told.empty() ? "" : " ") + one.name + ": " + counts_of(one) + ".";
    return chart.done(told);
}

Picture shares(const std::string &title, const std::vector<NamedShare> &rows, double width) {
    Chart chart("shares", title, width);
    const double top = chart.y;
    std::vector<PictureShape> above;
    std::string told;
    for (std::size_t i = 0; i < std::min(rows.size(), most_rows); ++i) {
        const auto &[name, share] = rows[i];
        chart.line(name, share_words(share));
        told += (told.empty() ? "" : " ") + name + ": " + share_words(share) + ".";
        const double y = chart.y + 6;
        if (share.of > 0) {
            above.emplace_back(PictureLine{Role::interval, chart.x(share.low), y, chart.x(share.high), y});
            for (const double end : {share.low, share.high})
                above.emplace_back(PictureLine{Role::interval, chart.x(end), y - 5, chart.x(end), y + 5});
            above.emplace_back(PictureEllipse{Role::share, chart.x(share.value()), y, 4.5, 4.5});
        }
        chart.y += 18;
    }
    chart.axis(top);
    for (auto &shape : above) chart.put(std::move(shape));
    return chart.done(told);
}

std::string rest_words(const std::string &caption, std::size_t all) {
    if (all <= most_rows) return caption;
    return caption + (caption.empty() ? "" : ": ") + "the first " + std::to_string(most_rows) + " of " +
           std::to_string(all);
}

} // namespace

std::optional<Figure> imperfection_chart(const Summary &summary, const std::string &caption) {
    const auto rows = pareto_rows(summary);
    if (rows.empty()) return std::nullopt;
    return Figure{pareto(rows, 780), pareto(rows, 340), rest_words(caption, rows.size()),
                  (caption.empty() ? "" : "    " + caption + "\n") + pareto_lines(rows)};
}

std::optional<Figure> place_chart(const Summary &summary, const std::string &caption) {
    const bool any = std::any_of(summary.places.begin(), summary.places.end(), [](const FindCount &one) {
        return one.finds > 0 && one.name != name_of(WeldPart::unknown);
    });
    if (!any) return std::nullopt;
    return Figure{places(summary, 780), places(summary, 340), caption, ""};
}

std::optional<Figure> share_chart(const std::string &title, const std::vector<NamedShare> &rows) {
    if (std::none_of(rows.begin(), rows.end(), [](const NamedShare &row) { return row.share.of > 0; }))
        return std::nullopt;
    return Figure{shares(title, rows, 780), shares(title, rows, 340), rest_words(title, rows.size()), ""};
}

} // namespace beadbook
