#include "report/limit_curves_document.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/criteria_document.hpp"

#include <algorithm>
#include <cmath>

namespace beadbook {
namespace {

std::string names_of_classes(const CriteriaSet &set, const LimitCurve &curve) {
    std::vector<std::string> out;
    for (const std::size_t k : curve.classes) out.push_back(set.classes[k].id);
    return joined(out, ", ");
}

const Rule &rule_in(const LimitCurves &all, std::size_t rule) { return all.set->rules[rule]; }
std::string heading_of(const Rule &rule) { return rule.title.empty() ? rule.id : rule.title; }

/// A number with its unit, of a limit.
std::string limit_text(const LimitCurves &all, const Rule &rule, const Exact &value) {
    return print_limit(value, rule.dimension(), all.set->unit, is_maximum(rule.compare));
}

/// Round numbers from 0 that fit, four to eight of them.
double tick_step(double most) {
    double step = std::pow(10.0, std::floor(std::log10(most / 4)));
    for (int i = 0; most / step > 8; ++i) step *= i % 3 == 1 ? 2.5 : 2;
    return step;
}

bool has_any(const LimitCurve &curve) {
    return std::any_of(curve.at.begin(), curve.at.end(), [](const auto &v) { return v.has_value(); });
}

/// As the file has it, of classes that are alike.
std::string open_limit(const Rule &rule, const LimitCurve &curve) {
    return rule.limits[curve.classes.front()].text;
}

class CurvePicture {
public:
    CurvePicture(const LimitCurves &all, const CurvedRule &curved, double width)
        : all_(all), curved_(curved), rule_(rule_in(all, curved.rule)), width_(width),
          size_(width < 500 ? 12 : 13) {
        for (const auto &curve : curved.curves)
            for (const auto &at : curve.at)
                if (at) most_ = std::max(most_, at->to_double());
        if (most_ <= 0) most_ = 1;
        // To the first quarter of an inch, or 5 mm, beyond which no rule of the set speaks.
        std::size_t last = 0;
        for (const auto &rule : all.rules)
            for (const auto &curve : rule.curves)
                for (std::size_t k = last; k < curve.at.size(); ++k)
                    if (curve.at[k]) last = k;
        const std::size_t part = all.thickness.size() / parts_of_all();
        parts_ = last / part + 1;
    }

    Picture draw() {
        out_.kind = "limit-curve";
        out_.title = heading_of(rule_) + line_words(rule_) + ", limit over thickness";
        out_.width = width_;
        for (const auto &curve : curved_.curves) told(curve);
        double longest = 0;
        for (const auto &curve : curved_.curves) longest = std::max(longest, text_width(label(curve), size_));
        right_ = width_ - std::min(longest + 20, width_ * 0.4);
        axes();
        for (std::size_t i = 0; i < curved_.curves.size(); ++i) line(i);
        names();
        out_.height = bottom_ + 2 * size_ + 14;
        return std::move(out_);
    }

private:
    double unit_nm() const {
        return static_cast<double>(all_.set->unit == Unit::inch ? nm_per_inch : nm_per_mm);
    }
    double x(double nm) const { return left_ + (right_ - left_) * nm / ends(); }
    std::size_t parts_of_all() const { return all_.set->unit == Unit::inch ? 4 : 5; } // 1/4 in or 5 mm
    /// Where the axis ends, in nm.
    double ends() const {
        return static_cast<double>(all_.thickness.back()) * static_cast<double>(parts_) /
               static_cast<double>(parts_of_all());
    }
    double y(double value) const { return bottom_ - (bottom_ - top_) * value / (most_ * 1.08); }
    std::string label(const LimitCurve &curve) const {
        return (curve.classes.size() > 1 ? "classes " : "class ") + names_of_classes(*all_.set, curve);
    }

    void told(const LimitCurve &curve) {
        out_.told += (out_.told.empty() ? "" : " ") + label(curve) + ":";
        bool any = false;
        for (const std::size_t i : all_.told) {
            if (!curve.at[i]) continue;
            out_.told += std::string(any ? "," : "") + " " + limit_text(all_, rule_, *curve.at[i]) + " at " +
                         print(all_.thickness[i], Dimension::length, all_.set->unit);
            any = true;
        }
        if (std::find(curve.open.begin(), curve.open.end(), true) != curve.open.end())
            out_.told += std::string(any ? "; else '" : " '") + open_limit(rule_, curve) + "'", any = true;
        out_.told += any ? "." : " none.";
    }

    void axes() {
        // Lengths in people's unit, so that the ticks are round there; any other kind as it is printed.
        const bool lengths = rule_.dimension() == Dimension::length;
        const double scale = lengths ? unit_nm() : 1;
        const double step = tick_step(most_ / scale) * scale;
        for (double at = 0; at <= most_ * 1.04; at += step) {
            out_.shapes.emplace_back(PictureLine{Role::guide, left_, y(at), right_, y(at)});
            std::string text =
                print(Exact(static_cast<std::int64_t>(std::llround(at))), rule_.dimension(), all_.set->unit);
            if (lengths) text = text.substr(0, text.find(' '));
            out_.shapes.emplace_back(
                PictureText{left_ - 5, y(at) + size_ * 0.36, size_, text, Anchor::end, false, true});
        }
        out_.shapes.emplace_back(
            PictureText{4, top_ - 10, size_,
                        is_maximum(rule_.compare) ? "at most" + unit_words() : "at least" + unit_words(),
                        Anchor::start, false, true});
        out_.shapes.emplace_back(PictureLine{Role::scale, left_, bottom_, right_, bottom_});
        out_.shapes.emplace_back(PictureLine{Role::scale, left_, top_, left_, bottom_});
        for (std::size_t k = 0; k <= parts_; ++k) {
            const double nm = ends() * static_cast<double>(k) / static_cast<double>(parts_);
            out_.shapes.emplace_back(PictureLine{Role::scale, x(nm), bottom_, x(nm), bottom_ + 5});
            std::string text =
                print(static_cast<std::int64_t>(std::llround(nm)), Dimension::length, all_.set->unit);
            if (k < parts_) text = text.substr(0, text.find(' '));
            out_.shapes.emplace_back(PictureText{x(nm), bottom_ + 7 + size_, size_, text, Anchor::middle});
        }
        out_.shapes.emplace_back(PictureText{(left_ + right_) / 2, bottom_ + 9 + 2 * size_, size_,
                                             "thickness", Anchor::middle, false, true});
    }
    std::string unit_words() const {
        if (rule_.dimension() == Dimension::length)
            return ", " + std::string(all_.set->unit == Unit::inch ? "in" : "mm");
        return "";
    }

    /// Broken where the rule does not speak, upright where its limit takes a step, with a dot on the side
    /// that holds; marks along it tell the lines apart by shape.
    void line(std::size_t i) {
        PicturePath part{Role::interval, {}, false};
        const LimitCurve &curve = curved_.curves[i];
        const auto &at = curve.at;
        const auto end = [&] {
            if (part.points.size() > 1) out_.shapes.emplace_back(part);
            part.points.clear();
        };
        std::vector<std::size_t> spoken;
        for (std::size_t k = 0; k < at.size() && along(k) <= right_ + 0.5; ++k) {
            if (!at[k]) {
                end();
                continue;
            }
            spoken.push_back(k);
            bool step = false;
            for (const auto *value : {&curve.under[k], &at[k], &curve.over[k]}) {
                if (!*value) continue;
                part.points.emplace_back(along(k), y((*value)->to_double()));
                step = step || far(**value, *at[k]);
            }
            if (step)
                out_.shapes.emplace_back(PictureEllipse{Role::kept, along(k), y(at[k]->to_double()), 2, 2});
        }
        end();
        if (spoken.empty()) return;
        const std::size_t apart = std::max<std::size_t>(1, std::min(spoken.size(), at.size() / 5));
        bool marked = false;
        for (std::size_t n = (i + 1) * apart / (curved_.curves.size() + 1); n < spoken.size(); n += apart) {
            // The name at the end has its own.
            if (marked && along(spoken[n]) >= right_ - 12) continue;
            mark(i, along(spoken[n]), y(at[spoken[n]]->to_double()));
            marked = true;
        }
    }
    double along(std::size_t k) const { return x(static_cast<double>(all_.thickness[k])); }
    /// More than what a slope makes in 1 nm.
    bool far(const Exact &a, const Exact &b) const {
        return std::abs(a.to_double() - b.to_double()) > most_ / 1000;
    }

    void mark(std::size_t i, double cx, double cy) {
        constexpr double r = 4;
        switch (i % 4) {
        case 0: out_.shapes.emplace_back(PictureEllipse{Role::kept, cx, cy, r, r}); break;
        case 1: out_.shapes.emplace_back(PictureBox{Role::kept, cx - r, cy - r, 2 * r, 2 * r}); break;
        case 2:
            out_.shapes.emplace_back(PicturePath{
                Role::kept, {{cx, cy - r - 1}, {cx + r + 1, cy + r}, {cx - r - 1, cy + r}}, true});
            break;
        default:
            out_.shapes.emplace_back(PicturePath{
                Role::kept, {{cx, cy - r - 1}, {cx + r + 1, cy}, {cx, cy + r + 1}, {cx - r - 1, cy}}, true});
        }
    }

    /// Beside where each line ends, moved down until they are apart.
    void names() {
        std::vector<std::pair<double, std::size_t>> ends;
        for (std::size_t i = 0; i < curved_.curves.size(); ++i) {
            if (!has_any(curved_.curves[i])) continue; // the table beneath says it
            double last = top_;
            for (const auto &at : curved_.curves[i].at)
                if (at) last = y(at->to_double());
            ends.emplace_back(last, i);
        }
        std::sort(ends.begin(), ends.end());
        double from = top_ - size_;
        const double need = (size_ + 4) * static_cast<double>(ends.size());
        for (const auto &[wanted, i] : ends) {
            const double at = std::max(from, std::min(wanted, bottom_ - need + (size_ + 4)));
            mark(i, right_ + 9, at);
            out_.shapes.emplace_back(
                PictureText{right_ + 17, at + size_ * 0.36, size_, label(curved_.curves[i])});
            from = at + size_ + 4;
        }
    }

    const LimitCurves &all_;
    const CurvedRule &curved_;
    const Rule &rule_;
    double width_, size_, most_ = 0;
    double left_ = 58, right_ = 0, top_ = 34, bottom_ = 200;
    std::size_t parts_ = 1;
    Picture out_;
};

Grid table_of_curves(const LimitCurves &all, const CurvedRule &curved) {
    Grid out{{{"thickness"}}, {}};
    for (const std::size_t i : all.told)
        out.columns.push_back({print(all.thickness[i], Dimension::length, all.set->unit), true});
    const Rule &rule = rule_in(all, curved.rule);
    for (const auto &curve : curved.curves) {
        std::vector<Words> row{(curve.classes.size() > 1 ? "classes " : "class ") +
                               names_of_classes(*all.set, curve)};
        for (const std::size_t i : all.told)
            row.emplace_back(curve.at[i]     ? limit_text(all, rule, *curve.at[i])
                             : curve.open[i] ? open_limit(rule, curve)
                                             : std::string("-"));
        out.rows.push_back(std::move(row));
    }
    return out;
}

/// " in any 6 in"; " in any 6 in (class A), over the whole weld (class B)".
std::string stretch_words(const LimitCurves &all, const Rule &rule) {
    std::string out;
    if (rule.windows.empty()) return out;
    for (const std::size_t k : all.classes) {
        const Window &window = rule.windows[k];
        out += (!out.empty() ? ", " : " ") + (window.kind == Window::Kind::whole_weld
                                                  ? std::string("over the whole weld")
                                                  : "in any " + window.text);
        if (!rule.window_by_class) return out;
        out += " (class " + all.set->classes[k].id + ")";
    }
    return out;
}

/// Of classes without a number: "class A: none".
std::string words_beside(const LimitCurves &all, const Rule &rule) {
    std::vector<std::string> out;
    for (const std::size_t k : all.classes)
        if (rule.limits[k].kind != Limit::Kind::value)
            out.push_back("class " + all.set->classes[k].id + ": " + rule.limits[k].text);
    return joined(out, "; ");
}

std::string authorities(const LimitCurves &all, const Rule &rule) {
    std::vector<std::string> kinds;
    for (const std::size_t k : all.classes) {
        std::string kind(name_of(rule.standings[k].kind));
        if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end()) kinds.push_back(std::move(kind));
    }
    return rule.clause + " (" + all.set->edition + "), " + listed(kinds);
}

} // namespace

std::string why_no_curve(const LimitCurves &all, const UncurvedRule &other) {
    const Rule &rule = rule_in(all, other.rule);
    std::vector<std::string> limits;
    for (const std::size_t k : all.classes)
        limits.push_back(all.set->classes[k].id + ": " + rule.limits[k].text);
    if (other.no_number) return joined(limits, "; ");
    if (other.of_finds) return "its limit follows from the find itself";
    if (other.lacks.any())
        return "it hangs on " + listed(names_of(other.lacks)) + " (" + joined(limits, "; ") + ")";
    return "it is not for such a coupon";
}

Document document_of(const LimitCurves &all) {
    const CriteriaSet &set = *all.set;
    Document doc;
    doc.title = set.title + " (" + set.edition + "), limits over thickness";
    doc.heading(doc.title);
    doc.line(
        (all.classes.size() < set.classes.size() ? "Class " + set.classes[all.classes.front()].id + " alone. "
                                                 : "") +
        "Of two members as thick as that, welded through; worked out every " +
        print(all.thickness.front(), Dimension::length, set.unit) + ", to " +
        print(all.thickness.back(), Dimension::length, set.unit) +
        ". Where a condition stands beside a rule, its limit holds only there; a dash: the rule does not "
        "speak there, or for such a coupon, or its table has no row; a formula: it hangs on what is not told "
        "of the coupon.");
    for (const auto &curved : all.rules) {
        const Rule &rule = rule_in(all, curved.rule);
        doc.heading(heading_of(rule), 2);
        const std::string where = condition_words(rule.when, rule.where);
        doc.line(measure_words(rule) + stretch_words(all, rule) + line_words(rule) +
                     (rule.prorated ? ", in proportion on a shorter weld" : "") +
                     (where.empty() ? "" : ", where " + where),
                 authorities(all, rule));
        doc.add(Figure{CurvePicture(all, curved, 780).draw(), CurvePicture(all, curved, 340).draw(), "", ""});
        doc.add(table_of_curves(all, curved));
        if (const std::string words = words_beside(all, rule); !words.empty()) doc.line(words);
    }
    if (!all.others.empty()) doc.heading("Without a curve", 2);
    for (const auto &other : all.others)
        doc.item(heading_of(rule_in(all, other.rule)) + ": " + why_no_curve(all, other),
                 authorities(all, rule_in(all, other.rule)));
    return doc.caution();
}

} // namespace beadbook
