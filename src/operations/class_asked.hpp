#pragma once

#include "criteria/model.hpp"

namespace beadbook {

/// The class of a set that is called so, by index. Throws Refusal at `field`: it has none.
std::size_t class_asked(const CriteriaSet &set, const std::string &id, const char *field);

} // namespace beadbook
