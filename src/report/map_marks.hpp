#pragma once

#include "report/weld_map.hpp"

namespace beadbook {

/// Each way a find may be marked, with its words in the legend.
const std::vector<std::pair<MappedFind::State, std::string>> &state_names();
Role role_of(MappedFind::State state);

/// "#3" under which it is marked; one of which it cannot be said has a question mark.
std::string label_of(const MappedFind &find);
double label_width(const MappedFind &find, double size);
/// Its number from `left`, on a base line; in a box if the find rejects.
void add_label(PictureGroup &to, const MappedFind &find, double left, double base, double size);
/// The find itself: an ellipse if it is round and whole, else a box; what rejects is solid, what is open is
/// hatched with a broken outline, any other is hollow. Never too small to be seen.
void add_mark(PictureGroup &to, const MappedFind &find, double from, double until, double middle, double high,
              bool whole);

} // namespace beadbook
