#pragma once

#include "language/issue.hpp"
#include "language/yaml.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Keys of a rule that may hold a value for each class; the first five are limits.
constexpr std::array<std::string_view, 7> class_maps{"at most", "at least", "under",      "over",
                                                     "allowed", "window",   "standing of"};
bool holds_class_by_class(const Yaml::Entry &entry);

/// An entry of `changes` that gives a rule of the base another limit, clause or the like says where that is
/// from, for each class that it changes.
void ask_standing_anew(const Yaml &change, const Yaml &rule, const std::vector<std::string> &classes,
                       Issues &issues);
/// So does a set that lets a formula, table or quantity mean something else, for each rule of the base that
/// speaks of it.
void ask_standing_of_named(const Yaml &own, const Yaml &base, const std::string &base_name, Issues &issues);

} // namespace beadbook
