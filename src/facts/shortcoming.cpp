#include "facts/shortcoming.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

constexpr std::array<std::string_view, 22> shortcoming_ids{"told",
                                                           "grade",
                                                           "verdict",
                                                           "purpose",
                                                           "not examined",
                                                           "exam",
                                                           "same exam",
                                                           "retest",
                                                           "retest unknown",
                                                           "failed day",
                                                           "failed kind",
                                                           "failed whose",
                                                           "unreadable",
                                                           "coupons",
                                                           "training",
                                                           "by machine",
                                                           "entered late",
                                                           "accepted by",
                                                           "described otherwise",
                                                           "rejected before",
                                                           "revoked",
                                                           "revives"};

} // namespace

std::string_view id_of(Shortcoming::Kind kind) { return shortcoming_ids[static_cast<std::size_t>(kind)]; }

std::optional<Shortcoming::Kind> shortcoming_named(std::string_view id) {
    const auto found = std::find(shortcoming_ids.begin(), shortcoming_ids.end(), id);
    if (found == shortcoming_ids.end()) return std::nullopt;
    return static_cast<Shortcoming::Kind>(found - shortcoming_ids.begin());
}

} // namespace beadbook
