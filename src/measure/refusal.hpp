#pragma once

#include <stdexcept>
#include <string>

namespace beadbook {

/// Data that cannot be taken: says what was found, what was expected and how to mend it.
struct DataError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// The record file cannot be used: busy, damaged, foreign, newer, read-only, disk full.
struct StoreError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

} // namespace beadbook
