#pragma once

#include "report/document.hpp"

#include <functional>
#include <string>
#include <vector>

namespace beadbook {

/// A document as a part of a page, where each row of a table that begins with one of the names leads to what
/// it names.
std::string linked_rows(Document document, const std::vector<std::string> &names,
                        const std::function<std::string(const std::string &)> &path, const std::string &ids);

/// Tables with titles over their columns, each to be moved sideways where the page is too narrow for it.
std::string wide_tables(std::string html);

} // namespace beadbook
