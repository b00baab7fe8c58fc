#pragma once

#include "criteria/model.hpp"

#include <memory>
#include <utility>

namespace beadbook {

/// The set that another one extends, read by itself: what its numbers were before they were changed.
struct SetBelow {
    std::shared_ptr<const CriteriaSet> set;                      ///< null: it extends none
    std::vector<std::pair<std::string, std::string>> stands_for; ///< class here, class there; none: the same

    /// Null where there is none of that id.
    const Rule *rule(const std::string &id) const;
    /// By its index there, of a class by its id here.
    std::optional<std::size_t> class_of(const std::string &id) const;
};

} // namespace beadbook
