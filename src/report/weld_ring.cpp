#include "measure/print.hpp"
#include "report/map_marks.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace beadbook {
namespace {

constexpr double outer = 116, inner = 84, letters = 12;

/// A label's box round the ring, to keep others away from it.
struct RingLabel {
    double left, top, right, bottom;
    bool hits(const RingLabel &b) const {
        return left < b.right + 2 && b.left < right + 2 && top < b.bottom + 2 && b.top < bottom + 2;
    }
};

class Ring {
public:
    Ring(const WeldMap &map, std::size_t most_labels)
        : map_(map), length_(map.line.length->nm), most_(most_labels) {}

    Picture draw() {
        out_.kind = "weld-ring";
        out_.title = "Round the tube";
        out_.told = told_of(map_);
        out_.data = {{"length", std::to_string(length_)}, {"unit", map_.unit == Unit::inch ? "in" : "mm"}};
        face();
        for (const auto &find : map_.finds)
            if (find.place) mark(find);
        labels();
        return fitted();
    }

private:
    using At = std::pair<double, double>;
    double turn_of(std::int64_t nm) const {
        return 2 * std::numbers::pi * static_cast<double>(nm) / static_cast<double>(length_);
    }
    static At at(double turn, double radius) { return {radius * std::sin(turn), -radius * std::cos(turn)}; }

    void face() {
        out_.shapes.emplace_back(PictureEllipse{Role::weld, 0, 0, outer, outer});
        out_.shapes.emplace_back(PictureEllipse{Role::kept, 0, 0, inner, inner});
        for (int hour = 0; hour < 12; ++hour) {
            const double turn = std::numbers::pi * hour / 6;
            const At a = at(turn, inner), b = at(turn, inner - (hour % 3 == 0 ? 9 : 5));
            out_.shapes.emplace_back(PictureLine{Role::scale, a.first, a.second, b.first, b.second});
            const At t = at(turn, inner - 19);
            out_.shapes.emplace_back(PictureText{t.first, t.second + letters * 0.36, letters,
                                                 std::to_string(hour == 0 ? 12 : hour), Anchor::middle,
                                                 hour % 3 == 0, hour % 3 != 0});
        }
        out_.shapes.emplace_back(PictureText{0, -4, letters, "clock", Anchor::middle, false, true});
        out_.shapes.emplace_back(PictureText{0, 12, letters,
                                             print(length_, Dimension::length, map_.unit) + " round",
                                             Anchor::middle, false, true});
    }

    static std::pair<double, double> radii(const MappedFind &find) {
        if (find.side == 1) return {outer - 9, outer - 1};
        if (find.side == 2) return {inner + 1, inner + 9};
        return {(outer + inner) / 2 - 4, (outer + inner) / 2 + 4};
    }
    double middle_of(const MappedFind &find) const {
        return (turn_of(find.place->from.nm) + turn_of(find.place->to.nm)) / 2;
    }

    void mark(const MappedFind &find) {
        const auto [low, high] = radii(find);
        double from = turn_of(find.place->from.nm), to = turn_of(find.place->to.nm);
        const double least = 4.5 / outer; // never too small to be seen
        if (to - from < least) {
            const double middle = (from + to) / 2;
            from = middle - least / 2;
            to = middle + least / 2;
        }
        to = std::min(to, from + 2 * std::numbers::pi);
        const int steps = std::max(2, static_cast<int>((to - from) / 0.05));
        PicturePath path{role_of(find.state), {}, true};
        for (int i = 0; i <= steps; ++i) path.points.push_back(at(from + (to - from) * i / steps, high));
        for (int i = steps; i >= 0; --i) path.points.push_back(at(from + (to - from) * i / steps, low));
        PictureGroup one;
        one.title = find.words;
        one.data = {{"number", std::to_string(find.number)}};
        one.shapes.emplace_back(std::move(path));
        out_.shapes.emplace_back(std::move(one));
    }

    void labels() {
        const auto placed = std::count_if(map_.finds.begin(), map_.finds.end(),
                                          [](const MappedFind &f) { return f.place.has_value(); });
        const bool all = static_cast<std::size_t>(placed) <= most_;
        std::vector<RingLabel> taken;
        PictureGroup leaders, names;
        std::size_t left_out = 0;
        for (const auto &find : map_.finds) {
            if (!find.place) continue;
            if (!all && (find.state == MappedFind::State::kept || taken.size() >= most_)) {
                ++left_out;
                continue;
            }
            const double wide = label_width(find, letters), turn = middle_of(find);
            const RingLabel spot = free_spot(turn, wide, taken);
            taken.push_back(spot);
            const At from = at(turn, outer);
            leaders.shapes.emplace_back(PictureLine{Role::guide, from.first, from.second,
                                                    (spot.left + spot.right) / 2,
                                                    (spot.top + spot.bottom) / 2});
            add_label(names, find, spot.left, spot.bottom - 3, letters);
        }
        taken_ = taken;
        out_.shapes.emplace_back(std::move(leaders));
        out_.shapes.emplace_back(std::move(names));
        if (left_out > 0) note_ = "numbers of " + std::to_string(left_out) + " more: unrolled";
    }

    /// Outwards along its own direction, a little to either side of it, until it touches no other.
    static RingLabel free_spot(double turn, double wide, const std::vector<RingLabel> &taken) {
        for (double radius = outer + 14;; radius += 4)
            for (const double aside : {0.0, 0.06, -0.06, 0.12, -0.12}) {
                const At m = at(turn + aside, radius + std::abs(std::sin(turn + aside)) * wide / 2);
                const RingLabel one{m.first - wide / 2, m.second - letters / 2 - 1.5, m.first + wide / 2,
                                    m.second + letters / 2 + 1.5};
                if (std::none_of(taken.begin(), taken.end(), [&](const RingLabel &b) { return one.hits(b); }))
                    return one;
            }
    }

    static void move(PictureShape &shape, double x, double y) {
        struct Mover {
            double x, y;
            void operator()(PictureLine &s) const { s.x1 += x, s.x2 += x, s.y1 += y, s.y2 += y; }
            void operator()(PictureBox &s) const { s.x += x, s.y += y; }
            void operator()(PictureEllipse &s) const { s.x += x, s.y += y; }
            void operator()(PicturePath &s) const {
                for (auto &p : s.points) p.first += x, p.second += y;
            }
            void operator()(PictureText &s) const { s.x += x, s.y += y; }
            void operator()(PictureCells &s) const { s.x += x, s.y += y; }
            void operator()(PictureGroup &s) const {
                for (auto &one : s.shapes) move(one, x, y);
            }
        };
        std::visit(Mover{x, y}, static_cast<AnyShape &>(shape));
    }

    /// The ring with its labels moved into a picture that begins at 0.
    Picture fitted() {
        RingLabel all{-outer - 8, -outer - 8, outer + 8, outer + 8};
        for (const auto &one : taken_)
            all = {std::min(all.left, one.left - 4), std::min(all.top, one.top - 4),
                   std::max(all.right, one.right + 4), std::max(all.bottom, one.bottom + 4)};
        const double half = std::max({-all.left, all.right, 160.0});
        for (auto &shape : out_.shapes) move(shape, half, -all.top);
        out_.width = std::ceil(2 * half);
        out_.height = std::ceil(all.bottom - all.top);
        if (!note_.empty()) {
            out_.height += letters + 6;
            out_.shapes.emplace_back(
                PictureText{half, out_.height - 5, letters, note_, Anchor::middle, false, true});
        }
        return std::move(out_);
    }

    const WeldMap &map_;
    std::int64_t length_;
    std::size_t most_;
    std::vector<RingLabel> taken_;
    std::string note_;
    Picture out_;
};

} // namespace

std::optional<Picture> ring(const WeldMap &map, std::size_t most_labels) {
    if (!map.line.closed || !map.line.length || map.line.length->nm <= 0) return std::nullopt;
    return Ring(map, most_labels).draw();
}

} // namespace beadbook
