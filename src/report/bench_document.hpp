#pragma once

#include "report/document.hpp"

namespace beadbook {

/// A bench that answers now.
struct BenchOpen {
    std::string link;   ///< lets one browser in, once
    std::string person; ///< empty: whoever signs in
};
Document document_of(const BenchOpen &bench);

/// The files that nginx needs, written.
struct WayIn {
    std::string folder, configuration, authority; ///< paths
    std::string origin;                           ///< that tablets ask
    bool new_authority = false;
};
Document document_of(const WayIn &way);

} // namespace beadbook
