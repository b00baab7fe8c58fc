#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// What somebody who signed in may see or do at an address.
enum class Access : unsigned char {
    none,
    own, ///< a welder: what is his own
    all,
};

/// By the one table of who may do what. A route that the table does not name is nobody's.
Access access_to(const std::string &method, const std::string &pattern,
                 const std::vector<std::string> &roles);

} // namespace beadbook
