#include "facts/owners_copy_record.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {

std::string readers_words(const CopyRead &read) {
    return read.by + " and " + read.second + " (page " + read.page + " of " + read.copy + ")";
}

std::string confirmed_words(const CopyRead &read) {
    return "confirmed by " + read.by + " (page " + read.page + ", edition " + read.copy +
           (read.second.empty() ? "" : ", countersigned by " + read.second) + ")";
}

bool same_person(const std::string &one, const std::string &other) {
    const auto plain = [](const std::string &name) {
        std::string out = lowered(name);
        std::erase_if(out, [](char c) { return c == ' ' || c == '.' || c == ','; });
        return out;
    };
    return plain(one) == plain(other);
}

} // namespace beadbook
