#pragma once

#include "language/yaml.hpp"

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// Reads one map with a closed list of keys: every key that was not asked for is an error with the nearest
/// known word, and is read as that one, so that nothing more is told of the slip; a missing one that was
/// needed is an error too. Never throws on the author's mistakes.
class Fields {
public:
    /// Reports unknown keys at once. `node` may be of any kind; if it is no map, that is reported.
    Fields(const Yaml &node, std::string path, const std::vector<std::string> &known, Issues &issues);

    const Yaml *get(std::string_view key) const;
    /// The value, or an error that it is missing.
    const Yaml *need(std::string_view key) const;
    std::string text(std::string_view key) const;
    /// An error too where it is there and blank.
    std::string needed_text(std::string_view key) const;
    /// The name of the file itself: letters, digits, blanks, '.', '_' and '-', so that no two look alike.
    std::string needed_name(std::string_view key) const;
    /// `yes` or `no`.
    bool flag(std::string_view key, bool otherwise) const;
    /// A list of words, or one word alone.
    std::vector<const Yaml *> words(std::string_view key) const;

    /// The entries of a list; an error if it is something else.
    std::vector<const Yaml *> items(std::string_view key) const;

    std::string path_of(std::string_view key) const;
    void error(std::string_view key, const std::string &text) const;
    void error_at(Where where, const std::string &path, const std::string &text) const {
        issues_.error(where, path, text);
    }

private:
    const Yaml &node_;
    std::string path_;
    std::vector<std::pair<std::string, const Yaml *>> meant_; ///< by the key that a misspelt one is near to
    Issues &issues_;
};

/// The scalar's text; an error if it is a list or map.
std::optional<std::string> scalar_text(const Yaml &node, const std::string &path, Issues &issues);

} // namespace beadbook
