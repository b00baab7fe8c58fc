#pragma once

#include "report/document.hpp"

#include <string>

namespace beadbook {

/// One page, complete in itself, that prints on A4 and Letter.
std::string html(const Document &document);

/// The same without the page around it, for a page that has more.
std::string fragment(const Document &document);

/// Text made safe for a page.
std::string escaped(std::string_view text);

} // namespace beadbook
