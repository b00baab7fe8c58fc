#pragma once

#include "measure/quantity.hpp"
#include "measure/unit.hpp"

#include <cstdint>
#include <string>

namespace beadbook {

/// A place on a picture, in hundredths of a pixel.
struct PicturePoint {
    std::int64_t x = 0, y = 0;
};

/// The ends of a known length and of a find, as somebody set them.
struct PhotoMarks {
    PicturePoint known_from, known_to, find_from, find_to;
    std::int64_t off = 300; ///< by how much each mark may be off, in hundredths of a pixel
};

/// What was measured on a picture. Neither number is ever rounded to what is less.
struct PhotoSize {
    Typed size, uncertainty;
};

/// The find's length: the known length times the ratio of the two distances. Each of the four marks may be
/// off; that is taken in quadrature through the ratio, so that with d and f for the distances of the known
/// length and the find, and p for how far a mark may be off, u = size * sqrt(2 p^2 / d^2 + 2 p^2 / f^2). Both
/// are rounded up to the second figure of u, and to 0.001 in or 0.01 mm at the finest: nobody reads more from
/// a picture. Perspective, lens, another plane and a fault of the known length are not in it. Throws Refusal
/// (field "known", "marks" or "off").
PhotoSize size_on_photo(const PhotoMarks &marks, Exact known, Unit unit);

} // namespace beadbook
