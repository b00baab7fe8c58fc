#pragma once

#include "language/yaml.hpp"

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// The text of a set that another one extends, by the name that stands in the file; nothing if there is none.
using BaseText = std::function<std::optional<std::string>(const std::string &name)>;
/// The shipped sets.
std::optional<std::string> shipped_base(const std::string &name);

/// A set's file once its base stands under it.
struct Extended {
    Yaml root;        ///< as if all had been written in one file
    std::string text; ///< the file, and below it the texts of its bases, so that it can be read again alone
    std::string base; ///< the set that it extends; empty if it stands alone
    std::string base_edition;
    Where base_where;      ///< where all stands that comes from the base
    std::string inherited; ///< how sure what is inherited is at most, in words
    std::string base_text; ///< of that set, with the texts of its own bases below it
    std::vector<std::pair<std::string, std::string>> stands_for; ///< class here, class there; none: the same
};

/// Reads a file and what it extends. What comes from the base stands at the place of `extends`, for messages.
/// An unknown base, a circle and a mistake in the base are issues there.
Extended read_extended(const std::string &text, const BaseText &base, Issues &issues);

/// The sets below one, nearest first, by the text that stands with it (`Extended::text`).
std::vector<std::string> sets_below(const std::string &text);
/// What a class of it is called in one of those; nothing where none there stands for it.
std::optional<std::string> class_below(const std::string &text, const std::string &class_id,
                                       const std::string &below);

} // namespace beadbook
