#pragma once

#include "criteria/model.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// Of a set's text (`CriteriaSet::text`) the file itself and those between it and that one; without one, all.
std::vector<std::string> texts_above(const std::string &text, const std::string &below);

/// What a set silences by its own word, or a file that it extends which is not shipped does. Without places.
std::vector<Silence> own_silences(const CriteriaSet &set);

} // namespace beadbook
