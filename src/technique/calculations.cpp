#include "technique/calculation_tables.hpp"

namespace beadbook::technique {

const std::vector<Calculation> &calculations() {
    static const std::vector<Calculation> table = [] {
        std::vector<Calculation> out;
        add_magnetic(out);
        add_penetrant(out);
        add_geometry(out);
        add_exposure(out);
        add_weld(out);
        return out;
    }();
    return table;
}

} // namespace beadbook::technique
