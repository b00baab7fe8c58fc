// A document as text in lines that are not broken.
#pragma once

#include "render/text.hpp"

namespace beadbook::test {

inline std::string wide(const Document &document) { return text(document, Paint(false), 1000); }

} // namespace beadbook::test
