#pragma once

#include <string>

namespace beadbook {

/// A page as PDF, by the first of weasyprint and chromium that stands in `path` (as PATH is written), which
/// is started for it and ended after two minutes. Nothing is fetched: the page is complete in itself. Throws
/// DataError: neither is there, with what to install; it failed, with its own words.
std::string pdf_of(const std::string &page, const std::string &path);

} // namespace beadbook
