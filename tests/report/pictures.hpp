#pragma once

#include "report/picture.hpp"

#include <functional>
#include <string>
#include <vector>

namespace beadbook::test {

/// Every shape of a picture, those in groups too.
inline void each_shape(const std::vector<PictureShape> &shapes,
                       const std::function<void(const PictureShape &)> &take) {
    for (const auto &shape : shapes) {
        take(shape);
        if (const auto *group = std::get_if<PictureGroup>(&shape)) each_shape(group->shapes, take);
    }
}

template <class Shape>
std::vector<Shape> shapes_of(const Picture &picture) {
    std::vector<Shape> out;
    each_shape(picture.shapes, [&](const PictureShape &shape) {
        if (const auto *one = std::get_if<Shape>(&shape)) out.push_back(*one);
    });
    return out;
}

inline std::vector<std::string> texts_in(const Picture &picture) {
    std::vector<std::string> out;
    for (const auto &one : shapes_of<PictureText>(picture)) out.push_back(one.text);
    return out;
}

struct TextBounds {
    double left, top, right, bottom;
    std::string text;
    bool overlaps(const TextBounds &b) const {
        return left < b.right && b.left < right && top < b.bottom && b.top < bottom;
    }
};

/// Where a text may reach: capitals and figures are about 0.73 of the size high, and nothing here has tails
/// that go deeper than 0.2.
inline TextBounds bounds_of(const PictureText &t) {
    const double width = text_width(t.text, t.size);
    const double left = t.anchor == Anchor::start    ? t.x
                        : t.anchor == Anchor::middle ? t.x - width / 2
                                                     : t.x - width;
    return {left, t.y - 0.73 * t.size, left + width, t.y + 0.2 * t.size, t.text};
}

/// Two texts that stand in one another, or one that leaves the picture: what it says; empty if all is well.
inline std::string crowded(const Picture &picture) {
    std::vector<TextBounds> all;
    for (const auto &text : shapes_of<PictureText>(picture)) all.push_back(bounds_of(text));
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].left < -0.5 || all[i].right > picture.width + 0.5 || all[i].top < -0.5 ||
            all[i].bottom > picture.height + 0.5)
            return all[i].text + " leaves the picture";
        for (std::size_t j = i + 1; j < all.size(); ++j)
            if (all[i].overlaps(all[j])) return all[i].text + " on " + all[j].text;
    }
    return "";
}

} // namespace beadbook::test
