#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace beadbook {

/// Names and values as a browser sends them, in their order; a name may come again.
class SentFields {
public:
    void add(std::string name, std::string value) { all_.emplace_back(std::move(name), std::move(value)); }
    /// Takes the place of all values of that name.
    void set(const std::string &name, std::string value);
    bool has(std::string_view name) const;
    /// The last value of that name.
    std::string text(std::string_view name, const std::string &otherwise = "") const;
    std::vector<std::string> all(std::string_view name) const;
    /// The first name that comes again, but for one that may; empty if there is none.
    std::string doubled(std::string_view but_for) const;
    const std::vector<std::pair<std::string, std::string>> &pairs() const { return all_; }
    bool empty() const { return all_.empty(); }

private:
    std::vector<std::pair<std::string, std::string>> all_;
};

/// The body of a form, a query, or a line of cookies with its own mark between pairs.
SentFields fields_in(std::string_view text, char between = '&');

/// As one word of a path or a query: everything but letters, digits and -._~ as %XX.
std::string url_word(std::string_view text);

} // namespace beadbook
