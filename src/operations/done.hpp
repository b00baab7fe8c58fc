#pragma once

#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// What an operation gives back, with the doubts that travel with it: no shell can forget them.
template <class T>
struct Done {
    T value;
    std::vector<std::string> notes;
};

} // namespace beadbook
