#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace beadbook {

/// How a part of a picture is meant. A renderer tells them apart by shape, hatch and weight before colour.
enum class Role {
    ink,      ///< always dark on light: a code that a camera reads
    weld,     ///< the weld's own surface
    edge,     ///< outlines
    guide,    ///< thin lines that lead the eye
    scale,    ///< a ruler, an axis
    kept,     ///< a find that keeps no class from being accepted
    rejects,  ///< a find that does
    open,     ///< a find of which it cannot be said
    bracket,  ///< the stretch that a reason counts in
    limit,    ///< where a limit stands
    beyond,   ///< the side of a limit that is out
    within,   ///< a measurement that is in
    over,     ///< a measurement that is out
    bar,      ///< a count
    part,     ///< the part of a count that rejects
    share,    ///< a share, and the line through several
    interval, ///< how sure a share is
};

enum class Anchor { start, middle, end };

/// All numbers are in the picture's own units, y downwards.
struct PictureLine {
    Role role;
    double x1, y1, x2, y2;
};
struct PictureBox {
    Role role;
    double x, y, width, height;
};
struct PictureEllipse {
    Role role;
    double x, y, across, down; ///< the middle, and half of each axis
};
/// Straight pieces from point to point; filled if it is closed.
struct PicturePath {
    Role role;
    std::vector<std::pair<double, double>> points;
    bool closed = false;
};
struct PictureText {
    double x, y; ///< of the base line
    double size;
    std::string text;
    Anchor anchor = Anchor::start;
    bool strong = false, quiet = false;
};
/// Square cells of one size in rows, dark where a row holds true.
struct PictureCells {
    double x, y, cell;
    std::vector<std::vector<bool>> rows;
};
struct PictureShape;
/// Shapes that are one thing. The title is told of it, the data are for programs: "side" becomes data-side.
struct PictureGroup {
    std::string title;
    std::vector<std::pair<std::string, std::string>> data;
    std::vector<PictureShape> shapes;
};
using AnyShape = std::variant<PictureLine, PictureBox, PictureEllipse, PicturePath, PictureText, PictureCells,
                              PictureGroup>;
struct PictureShape : AnyShape {
    using AnyShape::AnyShape;
};

/// A drawing as plain data: it knows roles, never colours.
struct Picture {
    std::string kind; ///< "weld-map", "limits": of one word
    double width = 0, height = 0;
    std::string title;
    std::string told; ///< the facts that it shows, in sentences, for who does not see it
    std::vector<std::pair<std::string, std::string>> data;
    std::vector<PictureShape> shapes;
};

/// How wide a text is at most, by its characters: fonts differ, so it is on the safe side.
double text_width(const std::string &text, double size);

} // namespace beadbook
