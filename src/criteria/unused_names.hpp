#pragma once

#include "criteria/model.hpp"
#include "language/yaml.hpp"

namespace beadbook {

/// The named formulas and tables of a set whose name stands in no formula and no condition of it.
std::vector<UnusedName> unused_names(const Yaml &root);

} // namespace beadbook
