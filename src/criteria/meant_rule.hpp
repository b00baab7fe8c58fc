#pragma once

#include "language/yaml.hpp"

#include <string>

namespace beadbook {

/// What is said to a change that names no rule: which of the base could be meant, and how it is written.
std::string no_id_words(const Yaml &change, const Yaml &base, const std::string &base_name);

} // namespace beadbook
