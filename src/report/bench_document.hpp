#pragma once

#include "report/document.hpp"

namespace beadbook {

/// A bench that answers now.
struct BenchOpen {
    std::string link; ///< lets one browser in, once
    std::string person;
};
Document document_of(const BenchOpen &bench);

} // namespace beadbook
