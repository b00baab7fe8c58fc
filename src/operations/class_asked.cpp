#include "operations/class_asked.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

namespace beadbook {

std::size_t class_asked(const CriteriaSet &set, const std::string &id, const char *field) {
    if (const auto index = set.class_index(id)) return *index;
    throw refused(set.name + " has no class '" + shown(id) + "'; it has " + listed(set.class_names()))
        .at(field);
}

} // namespace beadbook
