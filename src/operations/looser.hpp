#pragma once

#include "operations/comparing.hpp"

namespace beadbook {

/// What one class of a file of one's own lets through that a shipped set it looks like does not, at the
/// thickness of the coupon; at any thickness where that is not known.
struct Looser {
    std::string shipped;            ///< name of the set
    std::string shipped_class;      ///< its class, where that is called otherwise
    std::vector<std::string> rules; ///< ids, of the file where it has the rule, each once; never empty
};
/// Of a shipped set nothing. A class is held against the one of its name, else the one that it stands for, or
/// at its place among as many.
std::vector<Looser> looser_than_shipped(const CriteriaSet &own, std::size_t class_index, const Coupon &coupon,
                                        Unit unit);

} // namespace beadbook
