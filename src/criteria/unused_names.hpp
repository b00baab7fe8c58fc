#pragma once

#include "criteria/model.hpp"
#include "language/yaml.hpp"

namespace beadbook {

/// The named formulas and tables of a set whose name stands in no formula and no condition of it.
std::vector<UnusedName> unused_names(const Yaml &root);

/// Whether some text in it speaks of that name, as a word of its own.
bool stands_in(const Yaml &node, const std::string &name);

} // namespace beadbook
