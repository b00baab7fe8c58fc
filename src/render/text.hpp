#pragma once

#include "render/paint.hpp"
#include "report/document.hpp"

#include <string>

namespace beadbook {

/// A document for a terminal or a file: wrapped at blanks, by characters and not bytes; coloured if the paint
/// says so.
std::string text(const Document &document, const Paint &paint = Paint(false), std::size_t width = 100);

} // namespace beadbook
