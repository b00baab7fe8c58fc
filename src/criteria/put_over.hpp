#pragma once

#include "language/yaml.hpp"

namespace beadbook {

/// Puts what a file says over the set that it extends: its own head; classes renamed; parts left out
/// (`without`), replaced by id, changed key by key (`changes`) and added; standings lowered (`inherited`).
/// The keys that ask for it are gone from the outcome. `base` has classes.
Yaml put_over(Yaml own, Yaml base, const std::string &base_name, Issues &issues);

/// The scalar under a key of a map; empty if it is none.
std::string text_under(const Yaml &map, std::string_view key);
/// A scalar alone or the items of a list; none for null.
std::vector<const Yaml *> one_or_items(const Yaml *node);

} // namespace beadbook
