#pragma once

#include "measure/exact.hpp"
#include "qualify/trait.hpp"

namespace beadbook {

/// A weld as far as qualification sees it: a test coupon, or one weld of the shop's work. An empty word and
/// an absent size are not known.
struct Weld {
    std::array<std::string, word_traits> words;
    std::array<std::optional<Exact>, trait_count - word_traits> sizes;

    const std::string &word(Trait t) const { return words[index_of(t)]; }
    std::string &word(Trait t) { return words[index_of(t)]; }
    const std::optional<Exact> &size(Trait t) const { return sizes[index_of(t) - word_traits]; }
    std::optional<Exact> &size(Trait t) { return sizes[index_of(t) - word_traits]; }
    bool knows(Trait t) const { return is_size(t) ? size(t).has_value() : !word(t).empty(); }
    void forget(Trait t) {
        if (is_size(t))
            size(t).reset();
        else
            word(t).clear();
    }
    friend bool operator==(const Weld &, const Weld &) = default;
};

} // namespace beadbook
