#pragma once

#include <string>

namespace beadbook {

/// A list in JSON that is printed as its elements come: all of a long one are never in memory.
class JsonListInParts {
public:
    /// The next element, as json_text writes it, and what goes before it.
    std::string operator()(const std::string &element);
    /// The elements of a list that json_text wrote, none or more.
    std::string all_of(const std::string &list);
    /// What closes it.
    std::string end() const;

private:
    bool any_ = false;
};

} // namespace beadbook
