#pragma once

#include "technique/calculation.hpp"

namespace beadbook::technique {

// One table a subject; calculations() is all of them in this order.
void add_magnetic(std::vector<Calculation> &out);
void add_penetrant(std::vector<Calculation> &out);
void add_geometry(std::vector<Calculation> &out);
void add_exposure(std::vector<Calculation> &out);
void add_weld(std::vector<Calculation> &out);

} // namespace beadbook::technique
