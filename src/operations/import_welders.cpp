#include "operations/import_welders.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

namespace beadbook {

void WeldersHere::take(std::map<std::string, std::string> &fields) {
    const auto welder = fields.find("welder");
    if (welder == fields.end()) return;
    const auto here = marks_.find(welder->second);
    if (here == marks_.end()) return;
    used_.insert(here->first);
    welder->second = here->second;
}

void WeldersHere::check_used() const {
    for (const auto &[theirs, here] : marks_)
        if (!used_.contains(theirs))
            throw refused("no coupon of the file is of welder '" + shown(theirs) + "', who was to be " +
                          shown(here))
                .at("welder-as");
}

} // namespace beadbook
