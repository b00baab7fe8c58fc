#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/label_layout.hpp"
#include "report/map_marks.hpp"
#include "report/weld_map.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace beadbook {
namespace {

constexpr double band_height = 34;

/// Draws from the top down: `y_` is where the next thing begins.
class Unrolled {
public:
    Unrolled(const WeldMap &map, double width, Bands bands)
        : map_(map), bands_(bands), width_(width), size_(width < 500 ? 12 : 13), x1_(width - x0_),
          length_(std::max<std::int64_t>(map.shown_length(), 1)) {}

    Picture draw() {
        out_.kind = "weld-map";
        out_.title = "Where on the weld";
        out_.told = told_of(map_);
        out_.width = width_;
        out_.data = {{"x0", std::to_string(static_cast<int>(x0_))},
                     {"x1", std::to_string(static_cast<int>(x1_))},
                     {"start", "0"},
                     {"length", std::to_string(map_.line.length ? map_.line.length->nm : 0)},
                     {"unit", map_.unit == Unit::inch ? "in" : "mm"}};
        const auto &sides = info(Attribute::side).words;
        const bool both = bands_ == Bands::to_tap || !any_placed();
        for (std::size_t i = 0; i < sides.size(); ++i)
            if (const auto side = static_cast<std::uint8_t>(i + 1);
                any_on(side) || (both && !(map_.fillet && sides[i] == "root")))
                band(side, sides[i]);
        // Where no find has a side, nothing is told apart by it.
        if (any_on(0)) band(0, any_on(1) || any_on(2) || both ? "side not said" : "");
        scale();
        list_of_unplaced();
        legend();
        out_.height = std::ceil(y_ + 4);
        return std::move(out_);
    }

private:
    bool any_on(std::uint8_t side) const {
        return std::any_of(map_.finds.begin(), map_.finds.end(),
                           [&](const MappedFind &f) { return f.side == side && f.place; });
    }
    bool any_placed() const {
        return std::any_of(map_.finds.begin(), map_.finds.end(),
                           [](const MappedFind &f) { return f.place.has_value(); });
    }
    double x_of(std::int64_t nm) const {
        return x0_ + (x1_ - x0_) * static_cast<double>(nm) / static_cast<double>(length_);
    }
    double units_of(std::int64_t nm) const { return x_of(nm) - x0_; }
    void words(double x, double y, std::string text, Anchor anchor = Anchor::start, bool quiet = false) {
        out_.shapes.emplace_back(PictureText{x, y, size_, std::move(text), anchor, false, quiet});
    }

    /// The parts of a stretch: two where it runs over the datum of a closed weld.
    std::vector<std::pair<double, double>> parts(const Span &span) const {
        const auto around = map_.line.closed && map_.line.length ? length_ : 0;
        if (around == 0 || span.to.nm <= around)
            return {{x_of(span.from.nm), std::min(x_of(span.to.nm), x1_)}};
        if (span.from.nm >= around) return {{x_of(span.from.nm - around), x_of(span.to.nm - around)}};
        return {{x_of(span.from.nm), x1_}, {x0_, std::min(x_of(span.to.nm - around), x1_)}};
    }

    void band(std::uint8_t side, const std::string &name) {
        std::vector<const MappedFind *> finds;
        std::vector<LabelWish> wishes;
        for (const auto &find : map_.finds) {
            if (find.side != side || !find.place) continue;
            finds.push_back(&find);
            const auto first = parts(*find.place).front();
            wishes.push_back({(first.first + first.second) / 2, label_width(find, size_)});
        }
        if (!name.empty()) {
            y_ += size_ + 2;
            words(x0_, y_, name, Anchor::start, true);
        }
        y_ += 4;
        const auto spots = spread_labels(wishes, x0_, x1_);
        const double row = size_ + 6;
        std::size_t rows = 0;
        for (const auto &spot : spots) rows = std::max(rows, spot.row + 1);
        const double top = y_ + row * static_cast<double>(rows) + (rows > 0 ? 5 : 0);

        PictureGroup group;
        group.data = {{"side", side == 0 ? "unsaid" : name}};
        group.shapes.emplace_back(PictureBox{Role::weld, x0_, top, x1_ - x0_, band_height});
        group.shapes.emplace_back(
            PictureLine{Role::guide, x0_, top + band_height / 2, x1_, top + band_height / 2});
        hour_lines(group, top);
        const auto bottom_of = [&](std::size_t i) {
            return top - 5 - row * static_cast<double>(spots[i].row) - 3;
        };
        // Leaders lie under all labels, whose halo hides them where they cross.
        for (std::size_t i = 0; i < finds.size(); ++i)
            group.shapes.emplace_back(PictureLine{Role::guide, wishes[i].at, top + band_height / 2,
                                                  spots[i].left + wishes[i].width / 2, bottom_of(i) + 2});
        for (std::size_t i = 0; i < finds.size(); ++i) {
            PictureGroup one = marked(*finds[i], top);
            add_label(one, *finds[i], spots[i].left, bottom_of(i), size_);
            group.shapes.emplace_back(std::move(one));
        }
        out_.shapes.emplace_back(std::move(group));
        y_ = top + band_height;
        brackets(side);
        y_ += 8;
    }

    /// To scale along the weld, and across it in the same scale as far as the band reaches.
    PictureGroup marked(const MappedFind &find, double top) const {
        PictureGroup out;
        out.title = find.words;
        out.data = {{"number", std::to_string(find.number)}};
        const double high =
            std::clamp(find.width ? units_of(*find.width) : 0.0, find.round ? 5.0 : 4.0, band_height - 4);
        double middle = top + band_height / 2;
        if (find.across) middle += units_of((find.across->from.nm + find.across->to.nm) / 2);
        middle = std::clamp(middle, top + high / 2 + 1, top + band_height - high / 2 - 1);
        const auto all = parts(*find.place);
        for (const auto &[from, to] : all) add_mark(out, find, from, to, middle, high, all.size() == 1);
        return out;
    }

    void hour_lines(PictureGroup &group, double top) const {
        if (!map_.line.closed || !map_.line.length) return;
        for (int hour = 1; hour < 12; ++hour) {
            const double x = x0_ + (x1_ - x0_) * hour / 12;
            const double in = hour % 3 == 0 ? band_height : 5;
            group.shapes.emplace_back(PictureLine{Role::guide, x, top, x, top + in});
        }
    }

    void brackets(std::uint8_t side) {
        std::vector<LabelWish> wishes;
        std::vector<const MappedReason *> reasons;
        std::vector<std::vector<std::string>> texts;
        for (const auto &reason : map_.reasons) {
            if (reason.side != side) continue;
            const auto part = parts(reason.place).front();
            auto text = folded(reason.words);
            const double wide = std::max(widest(text), part.second - part.first + 6);
            reasons.push_back(&reason);
            texts.push_back(std::move(text));
            wishes.push_back({(part.first + part.second) / 2, wide});
        }
        const auto spots = spread_rows(wishes);
        const auto tops = tops_of(spots, texts);
        for (std::size_t i = 0; i < reasons.size(); ++i) {
            const double y = tops[spots[i].row] + 4;
            for (const auto &[from, to] : parts(reasons[i]->place)) {
                const double a = std::max(from - 2, 1.0),
                             b = std::min(std::max(to, from + 3) + 2, width_ - 1);
                out_.shapes.emplace_back(
                    PicturePath{Role::bracket, {{a, y}, {a, y + 6}, {b, y + 6}, {b, y}}, false});
            }
            const double half = widest(texts[i]) / 2;
            const double middle = std::clamp(wishes[i].at, x0_ + half, std::max(x0_ + half, x1_ - half));
            for (std::size_t k = 0; k < texts[i].size(); ++k)
                words(middle, y + 7 + size_ + (size_ + 3) * static_cast<double>(k), texts[i][k],
                      Anchor::middle);
        }
        y_ = tops.back();
    }
    /// Where each row of brackets begins, and where the last one ends: as high as the longest text in it.
    std::vector<double> tops_of(const std::vector<LabelSpot> &spots,
                                const std::vector<std::vector<std::string>> &texts) const {
        std::vector<std::size_t> lines;
        for (std::size_t i = 0; i < spots.size(); ++i) {
            lines.resize(std::max(lines.size(), spots[i].row + 1));
            lines[spots[i].row] = std::max(lines[spots[i].row], texts[i].size());
        }
        std::vector<double> out{y_};
        for (const std::size_t n : lines)
            out.push_back(out.back() + size_ + 15 + (size_ + 3) * static_cast<double>(n - 1));
        return out;
    }
    double widest(const std::vector<std::string> &lines) const {
        double out = 0;
        for (const auto &line : lines) out = std::max(out, text_width(line, size_));
        return out;
    }
    /// No bracket is moved aside: it tells where.
    std::vector<LabelSpot> spread_rows(const std::vector<LabelWish> &wishes) const {
        std::vector<LabelSpot> out;
        std::vector<std::pair<double, double>> ends;
        for (const auto &wish : wishes) {
            const double left = std::max(x0_, std::min(wish.at - wish.width / 2, x1_ - wish.width));
            std::size_t row = 0;
            const auto taken = [&](std::size_t r) {
                for (std::size_t i = 0; i < out.size(); ++i)
                    if (out[i].row == r && left < ends[i].second + 6 && ends[i].first < left + wish.width + 6)
                        return true;
                return false;
            };
            while (taken(row)) ++row;
            out.push_back({left, row});
            ends.emplace_back(left, left + wish.width);
        }
        return out;
    }
    /// In lines that are no wider than the weld: a limit is never cut off.
    std::vector<std::string> folded(const std::string &text) const {
        std::vector<std::string> out;
        std::istringstream in(text);
        for (std::string word; in >> word;)
            if (!out.empty() && text_width(out.back() + " " + word, size_) <= x1_ - x0_)
                out.back() += " " + word;
            else
                out.push_back(word);
        return out;
    }

    void scale() {
        y_ += 2;
        out_.shapes.emplace_back(PictureLine{Role::scale, x0_, y_, x1_, y_});
        if (map_.line.closed && map_.line.length)
            clock();
        else
            ruler();
        y_ += size_ + 14;
    }
    void tick(double x, double long_by) {
        out_.shapes.emplace_back(PictureLine{Role::scale, x, y_, x, y_ + long_by});
    }
    void clock() {
        for (int hour = 0; hour <= 12; ++hour) {
            const double x = x0_ + (x1_ - x0_) * hour / 12;
            tick(x, hour % 3 == 0 ? 7 : 4);
            if (hour % 3 != 0 && width_ < 500) continue;
            const Anchor at = hour == 0 ? Anchor::start : hour == 12 ? Anchor::end : Anchor::middle;
            const std::string name = hour == 0 || hour == 12 ? "12" : std::to_string(hour);
            words(hour == 0 ? x - 6 : hour == 12 ? x + 6 : x, y_ + 9 + size_, name, at);
        }
        y_ += size_ + 4;
        words((x0_ + x1_) / 2, y_ + 9 + size_,
              "clock, " + print(length_, Dimension::length, map_.unit) + " round", Anchor::middle, true);
    }
    void ruler() {
        const std::int64_t unit = map_.unit == Unit::inch ? nm_per_inch : nm_per_mm;
        // A step of 1, 2 or 5 times a power of ten that leaves room for its number.
        double step = map_.unit == Unit::inch ? 0.1 : 1;
        const double room = width_ < 500 ? 44 : 52;
        for (int i = 0; step * static_cast<double>(unit) / static_cast<double>(length_) * (x1_ - x0_) < room;
             ++i)
            step *= i % 3 == 1 ? 2.5 : 2;
        const auto nm = static_cast<std::int64_t>(std::llround(step * static_cast<double>(unit)));
        const std::string end =
            print(length_, Dimension::length, map_.unit) + (map_.line.length ? "" : " (length not known)");
        const double last = x1_ - text_width(end, size_) - 6;
        for (std::int64_t at = 0; at < length_; at += nm) {
            const double x = x_of(at);
            tick(x, 7);
            if (nm % 2 == 0 && at + nm / 2 < length_) tick(x_of(at + nm / 2), 4);
            std::string number = print(at, Dimension::length, map_.unit);
            number = number.substr(0, number.find(' '));
            if (at > 0 && x + text_width(number, size_) / 2 > last) continue;
            words(at == 0 ? x - 4 : x, y_ + 9 + size_, number, at == 0 ? Anchor::start : Anchor::middle);
        }
        tick(x1_, 7);
        words(x1_ + 4, y_ + 9 + size_, end, Anchor::end);
    }

    void list_of_unplaced() {
        std::vector<const MappedFind *> finds;
        for (const auto &find : map_.finds)
            if (!find.place) finds.push_back(&find);
        if (map_.more_reasons > 0) {
            y_ += size_;
            words(x0_, y_, "and " + counted(map_.more_reasons, "more reason") + ", told in the text");
            y_ += 6;
        }
        if (finds.empty()) return;
        y_ += size_ + 2;
        words(x0_, y_, "without a place", Anchor::start, true);
        y_ += 6;
        double x = x0_;
        y_ += size_;
        for (const auto *find : finds) {
            const double wide = label_width(*find, size_);
            if (x + wide > x1_ && x > x0_) {
                x = x0_;
                y_ += size_ + 7;
            }
            PictureGroup one;
            one.title = find->words;
            one.data = {{"number", std::to_string(find->number)}};
            add_label(one, *find, x, y_, size_);
            out_.shapes.emplace_back(std::move(one));
            x += wide + 8;
        }
        y_ += 8;
    }

    void legend() {
        double x = x0_;
        bool begun = false;
        for (const auto &[state, text] : state_names()) {
            const auto has = [&, which = state](const MappedFind &f) { return f.state == which; };
            if (std::none_of(map_.finds.begin(), map_.finds.end(), has)) continue;
            if (!begun) y_ += size_ + 6;
            begun = true;
            MappedFind sample;
            sample.state = state;
            PictureGroup one;
            add_mark(one, sample, x, x + 16, y_ - size_ / 2 + 2, 8, false);
            out_.shapes.emplace_back(std::move(one));
            words(x + 22, y_, text);
            x += 22 + text_width(text, size_) + 18;
        }
        if (begun) y_ += 4;
    }

    const WeldMap &map_;
    Bands bands_;
    double width_, size_;
    double x0_ = 14, x1_;
    std::int64_t length_;
    double y_ = 2;
    Picture out_;
};

} // namespace

Picture unrolled(const WeldMap &map, double width, Bands bands) { return Unrolled(map, width, bands).draw(); }

} // namespace beadbook
