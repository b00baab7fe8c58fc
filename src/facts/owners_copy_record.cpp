#include "facts/owners_copy_record.hpp"

namespace beadbook {

std::string readers_words(const CopyRead &read) {
    return read.by + " and " + read.second + " (page " + read.page + " of " + read.copy + ")";
}

std::string confirmed_words(const CopyRead &read) {
    return "confirmed by " + read.by + " (page " + read.page + ", edition " + read.copy +
           (read.second.empty() ? "" : ", countersigned by " + read.second) + ")";
}

} // namespace beadbook
