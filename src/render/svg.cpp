#include "render/svg.hpp"

#include "render/escaped.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

namespace beadbook {
namespace {

/// Colours are properties that a page may set: ink, quiet, paper, weld, reject, open, bar, share.
constexpr std::string_view class_style = R"(
svg.picture { --p-ink: var(--ink, #222); --p-quiet: var(--quiet, #555); --p-paper: var(--paper, #fff);
  --p-weld: var(--weld, #e9e3d4); --p-reject: var(--reject, #a3161a); --p-open: var(--open, #8a5a00);
  --p-bar: var(--bar, #6f8796); --p-share: var(--share, #1f4e79);
  display: block; width: 100%; height: auto; color-scheme: inherit; font-family: DejaVu Sans, Verdana, sans-serif }
@media screen and (prefers-color-scheme: dark) { svg.picture { --p-ink: var(--ink, #e8e6e1); --p-quiet: var(--quiet, #b0aca4);
  --p-paper: var(--paper, #1c1b19); --p-weld: var(--weld, #3b382f); --p-reject: var(--reject, #ff9a8f);
  --p-open: var(--open, #f0c060); --p-bar: var(--bar, #7f97a6); --p-share: var(--share, #9cc7ee) } }
svg.picture text { fill: var(--p-ink) } svg.picture text.q { fill: var(--p-quiet) } svg.picture text.s { font-weight: bold }
svg.picture .halo { paint-order: stroke; stroke: var(--p-paper); stroke-width: 3px; stroke-linejoin: round }
.p-ink { fill: #000; stroke: none } .p-inkpaper { fill: #fff; stroke: none }
.p-weld { fill: var(--p-weld); stroke: var(--p-ink); stroke-width: 1 }
.p-edge { fill: none; stroke: var(--p-ink); stroke-width: 1.2 }
.p-guide { fill: none; stroke: var(--p-quiet); stroke-width: .6; opacity: .7 }
.p-scale { fill: none; stroke: var(--p-ink); stroke-width: .9 }
.p-kept { fill: var(--p-paper); stroke: var(--p-ink); stroke-width: 1.1 }
.p-rejects { fill: var(--p-reject); stroke: var(--p-reject); stroke-width: 1.4 }
.p-open { stroke: var(--p-open); stroke-width: 1.3; stroke-dasharray: 2.5 1.5 }
.p-bracket { fill: none; stroke: var(--p-reject); stroke-width: 1.6 }
.p-limit { fill: none; stroke: var(--p-ink); stroke-width: 2 }
.p-beyond { stroke: none }
.p-within { fill: var(--p-bar); stroke: var(--p-ink); stroke-width: .8 }
.p-over { fill: var(--p-reject); stroke: var(--p-ink); stroke-width: .8 }
.p-bar { fill: var(--p-bar); stroke: var(--p-ink); stroke-width: .8 }
.p-part { stroke: var(--p-ink); stroke-width: .8 }
.p-share { fill: var(--p-share); stroke: var(--p-share); stroke-width: 1.4 }
.p-interval { fill: none; stroke: var(--p-share); stroke-width: 1.4 }
.p-hatch-a { fill: none; stroke: var(--p-open); stroke-width: 1.2 } .p-hatch-b { fill: none; stroke: var(--p-quiet); stroke-width: .6 }
.p-hatch-c { fill: none; stroke: var(--p-reject); stroke-width: 2 } .p-hatch-paper { fill: var(--p-paper) }
figure { margin: 2mm 0 3mm; break-inside: avoid } figcaption { font-size: 9pt; color: var(--quiet, #555) }
figure .narrow { display: none } .weld-ring-figure svg.picture { max-width: 115mm; margin: 0 auto }
@media print { .weld-ring-figure svg.picture { max-width: 84mm } }
@media screen and (max-width: 560px) { figure .wide { display: none } figure .narrow { display: block } }
div.tiles { font-size: 0 } div.tiles figure { display: inline-block; vertical-align: top; margin: 0 3mm 3mm 0 }
.label-figure { width: 56mm } .label-figure svg.picture { background: #fff; --p-ink: #000; --p-quiet: #333; --p-paper: #fff }
)";

struct RoleLook {
    std::string_view name;
    std::string_view plain; ///< attributes of its own
    char hatch = 0;         ///< a pattern fills it
};

constexpr std::array<RoleLook, 17> role_looks{{
    {"ink", "fill=\"#000\""},
    {"weld", "fill=\"#e9e3d4\" stroke=\"#222\" stroke-width=\"1\""},
    {"edge", "fill=\"none\" stroke=\"#222\" stroke-width=\"1.2\""},
    {"guide", "fill=\"none\" stroke=\"#888\" stroke-width=\"0.6\""},
    {"scale", "fill=\"none\" stroke=\"#222\" stroke-width=\"0.9\""},
    {"kept", "fill=\"#fff\" stroke=\"#222\" stroke-width=\"1.1\""},
    {"rejects", "fill=\"#a3161a\" stroke=\"#a3161a\" stroke-width=\"1.4\""},
    {"open", "stroke=\"#8a5a00\" stroke-width=\"1.3\" stroke-dasharray=\"2.5 1.5\"", 'a'},
    {"bracket", "fill=\"none\" stroke=\"#a3161a\" stroke-width=\"1.6\""},
    {"limit", "fill=\"none\" stroke=\"#222\" stroke-width=\"2\""},
    {"beyond", "stroke=\"none\"", 'b'},
    {"within", "fill=\"#6f8796\" stroke=\"#222\" stroke-width=\"0.8\""},
    {"over", "fill=\"#a3161a\" stroke=\"#222\" stroke-width=\"0.8\""},
    {"bar", "fill=\"#6f8796\" stroke=\"#222\" stroke-width=\"0.8\""},
    {"part", "stroke=\"#222\" stroke-width=\"0.8\"", 'c'},
    {"share", "fill=\"#1f4e79\" stroke=\"#1f4e79\" stroke-width=\"1.4\""},
    {"interval", "fill=\"none\" stroke=\"#1f4e79\" stroke-width=\"1.4\""},
}};

const RoleLook &look_of(Role role) { return role_looks[static_cast<std::size_t>(role)]; }

std::string coordinate(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f", value);
    std::string out = text;
    out.erase(out.find_last_not_of('0') + 1);
    if (out.back() == '.') out.pop_back();
    return out == "-0" ? "0" : out;
}

class SvgWriter {
public:
    SvgWriter(std::string id, SvgStyle style) : id_(std::move(id)), plain_(style == SvgStyle::plain) {}

    std::string operator()(const Picture &picture, std::string_view inner_style) {
        const bool file = !inner_style.empty();
        std::string body;
        for (const auto &shape : picture.shapes) draw(body, shape);
        std::string out =
            std::string("<svg") + (file ? " xmlns=\"http://www.w3.org/2000/svg\"" : "") +
            " class=\"picture " + picture.kind + "\" role=\"img\"" +
            attribute("viewBox", "0 0 " + coordinate(picture.width) + " " + coordinate(picture.height));
        if (plain_ || file) out += attribute("width", picture.width) + attribute("height", picture.height);
        if (plain_) out += " style=\"width:100%;height:auto\" font-family=\"DejaVu Sans\"";
        out += attribute("aria-labelledby", id_ + "t") +
               (picture.told.empty() ? "" : attribute("aria-describedby", id_ + "d"));
        for (const auto &[name, value] : picture.data) out += attribute("data-" + name, value);
        out += "><title id=\"" + id_ + "t\">" + escaped(picture.title) + "</title>";
        if (!picture.told.empty()) out += "<desc id=\"" + id_ + "d\">" + escaped(picture.told) + "</desc>";
        if (file) out += "<style>" + std::string(inner_style) + "</style>";
        return out + patterns() + body + "</svg>";
    }

private:
    static std::string attribute(const std::string &name, const std::string &value) {
        return " " + name + "=\"" + escaped(value) + "\"";
    }
    static std::string attribute(const std::string &name, double value) {
        return attribute(name, coordinate(value));
    }

    std::string look(Role role) {
        const RoleLook &of = look_of(role);
        std::string out = plain_ ? " " + std::string(of.plain) : " class=\"p-" + std::string(of.name) + "\"";
        if (of.hatch != 0 && plain_) out += " fill=\"#fff\"";
        if (of.hatch != 0 && !plain_) {
            hatched_[static_cast<std::size_t>(of.hatch - 'a')] = true;
            out += " fill=\"url(#" + id_ + of.hatch + ")\"";
        }
        return out;
    }

    /// Only those that something is filled with.
    std::string patterns() const {
        static constexpr std::array<std::string_view, 3> lines{"M0 6L6 0", "M0 0L6 6", "M0 0L6 6M0 6L6 0"};
        std::string out;
        for (std::size_t i = 0; i < hatched_.size(); ++i) {
            if (!hatched_[i]) continue;
            const std::string letter(1, static_cast<char>('a' + i));
            out += "<pattern id=\"" + id_ + letter +
                   "\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\"><rect width=\"6\" "
                   "height=\"6\" class=\"p-hatch-paper\"/><path d=\"" +
                   std::string(lines[i]) + "\" class=\"p-hatch-" + letter + "\"/></pattern>";
        }
        return out.empty() ? "" : "<defs>" + out + "</defs>";
    }

    void draw(std::string &out, const PictureShape &shape) {
        std::visit([&](const auto &s) { put(out, s); }, static_cast<const AnyShape &>(shape));
    }
    void put(std::string &out, const PictureLine &s) {
        out += "<line" + look(s.role) + attribute("x1", s.x1) + attribute("y1", s.y1) +
               attribute("x2", s.x2) + attribute("y2", s.y2) + "/>";
    }
    void put(std::string &out, const PictureBox &s) {
        out += "<rect" + look(s.role) + attribute("x", s.x) + attribute("y", s.y) +
               attribute("width", s.width) + attribute("height", s.height) + "/>";
        if (plain_ && look_of(s.role).hatch != 0) out += hatch_lines(s, look_of(s.role).hatch);
    }
    /// Patterns make a PDF a hundred times as large, so a plain box is hatched line by line.
    static std::string hatch_lines(const PictureBox &s, char hatch) {
        static constexpr std::array<std::string_view, 3> colours{"#8a5a00", "#777", "#a3161a"};
        std::string way;
        const auto lines = [&](bool rising) {
            for (double along = 5; along < s.width + s.height; along += 5) {
                // From where the line enters the box to where it leaves it, by the way along the top.
                const double low = std::max(0.0, along - s.height), high = std::min(along, s.width);
                const auto y = [&](double x) { return rising ? along - x : s.height - along + x; };
                way += "M" + coordinate(s.x + low) + " " + coordinate(s.y + y(low)) + "L" +
                       coordinate(s.x + high) + " " + coordinate(s.y + y(high));
            }
        };
        if (hatch != 'b') lines(true);
        if (hatch != 'a') lines(false);
        return "<path fill=\"none\" stroke=\"" + std::string(colours[static_cast<std::size_t>(hatch - 'a')]) +
               "\" stroke-width=\"0.7\"" + attribute("d", way) + "/>";
    }
    void put(std::string &out, const PictureEllipse &s) {
        out += "<ellipse" + look(s.role) + attribute("cx", s.x) + attribute("cy", s.y) +
               attribute("rx", s.across) + attribute("ry", s.down) + "/>";
    }
    void put(std::string &out, const PicturePath &s) {
        std::string way;
        for (const auto &[x, y] : s.points)
            way += (way.empty() ? "M" : "L") + coordinate(x) + " " + coordinate(y);
        // The line through shares has the colour of its points, which are filled.
        const Role role = s.role == Role::share && !s.closed ? Role::interval : s.role;
        out += "<path" + look(role);
        out += attribute("d", way + (s.closed ? "Z" : "")) + "/>";
    }
    void put(std::string &out, const PictureText &s) {
        out += "<text" + attribute("x", s.x) + attribute("y", s.y) + attribute("font-size", s.size);
        if (s.anchor != Anchor::start)
            out += attribute("text-anchor", std::string(s.anchor == Anchor::middle ? "middle" : "end"));
        if (plain_)
            out += std::string(s.quiet ? " fill=\"#555\"" : " fill=\"#222\"") +
                   (s.strong ? " font-weight=\"bold\"" : "");
        else
            out += std::string(" class=\"halo") + (s.strong ? " s" : "") + (s.quiet ? " q" : "") + "\"";
        out += ">" + escaped(s.text) + "</text>";
    }
    /// Black on white in every scheme, or a camera could not read it.
    void put(std::string &out, const PictureCells &s) {
        std::string way;
        for (std::size_t y = 0; y < s.rows.size(); ++y)
            for (std::size_t x = 0; x < s.rows[y].size();) {
                std::size_t run = 0;
                while (x + run < s.rows[y].size() && s.rows[y][x + run]) ++run;
                if (run > 0)
                    way += "M" + std::to_string(x) + " " + std::to_string(y) + "h" + std::to_string(run) +
                           "v1h-" + std::to_string(run) + "z";
                x += run > 0 ? run : 1;
            }
        out += "<path" + look(Role::ink) + attribute("shape-rendering", std::string("crispEdges")) +
               attribute("transform", "translate(" + coordinate(s.x) + " " + coordinate(s.y) + ") scale(" +
                                          coordinate(s.cell) + ")") +
               attribute("d", way) + "/>";
    }
    void put(std::string &out, const PictureGroup &s) {
        out += "<g";
        for (const auto &[name, value] : s.data) out += attribute("data-" + name, value);
        out += ">";
        if (!s.title.empty()) out += "<title>" + escaped(s.title) + "</title>";
        for (const auto &shape : s.shapes) draw(out, shape);
        out += "</g>";
    }

    std::string id_;
    bool plain_;
    std::array<bool, 3> hatched_{};
};

} // namespace

std::string svg(const Picture &picture, const std::string &id, SvgStyle style) {
    return SvgWriter(id, style)(picture, "");
}

std::string svg_file(const Picture &picture) {
    return SvgWriter("p", SvgStyle::by_class)(picture, class_style) + "\n";
}

std::string_view picture_style() { return class_style; }

} // namespace beadbook
