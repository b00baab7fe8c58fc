#include "language/names.hpp"

#include <algorithm>
#include <stdexcept>

namespace beadbook {

bool Names::add(Name name) {
    if (find(name.text) || formulas.contains(name.text)) return false;
    if (name.kind == Name::Kind::quantity && name.slot >= Missing::most_quantities)
        throw std::logic_error("too many quantities for one table of names");
    all_.push_back(std::move(name));
    return true;
}

const Name *Names::find(std::string_view text) const {
    const auto found = std::find_if(all_.begin(), all_.end(), [&](const Name &n) { return n.text == text; });
    return found == all_.end() ? nullptr : &*found;
}

std::string Names::called(Slot quantity) const {
    for (const auto &name : all_)
        if (name.kind == Name::Kind::quantity && name.slot == quantity) return name.text;
    return "";
}

} // namespace beadbook
