#pragma once

#include <chrono>
#include <string>

namespace beadbook {

/// A page as PDF, by the first of weasyprint and chromium in `path` (as PATH is written) that makes one; each
/// is started for it and ended after `at_most`. Nothing is fetched: the page is complete in itself. Throws
/// DataError: neither is there, with what to install; all failed, each with its own words.
std::string pdf_of(const std::string &page, const std::string &path,
                   std::chrono::milliseconds at_most = std::chrono::minutes(2));

} // namespace beadbook
