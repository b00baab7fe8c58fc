#pragma once

#include "operations/office.hpp"
#include "operations/selection.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// The records that lists go through: one, or those of several shops, each with its own people, equipment and
/// copies of criteria, by which its coupons are judged. Of several, marks of coupons and welders are told as
/// SHOP.MARK.
class Shops {
public:
    struct Shop {
        std::string name; ///< empty: the only one
        Office *office = nullptr;
    };

    Shops(Office &only) : all_{{"", &only}} {} // one record is as good as many
    explicit Shops(std::vector<Shop> all) : all_(std::move(all)) {}

    const std::vector<Shop> &all() const { return all_; }

    /// What a selection asks of one of them, in its own marks; nothing if it asks for a welder of another
    /// one.
    std::optional<Selection> asked_of(const Shop &shop, const Selection &of) const;

private:
    std::vector<Shop> all_;
};

/// A mark or name as it is told beside those of other shops.
std::string told_of_shop(const std::string &shop, const std::string &mark);
/// A mark of the record that something was imported from, as another coupon may be called so here; and back.
std::string told_of_elsewhere(const std::string &mark);
std::string mark_elsewhere(const std::string &told);

} // namespace beadbook
