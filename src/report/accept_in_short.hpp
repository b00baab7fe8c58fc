#pragma once

#include "operations/judging.hpp"

namespace beadbook {

/// What an accept rests on and does not speak of, a sentence each: how sure its clauses are, levels that
/// nobody on record vouches for, and what its set lacks. Empty without an accept.
std::vector<std::string> accept_in_short(const Judged &judged);

/// Of several accepts: what is the same for all of a set, with its name before it, and what is left to be
/// said of each.
struct AcceptsInShort {
    std::vector<std::string> of_sets;
    std::vector<std::vector<std::string>> of_each;
};
/// `said`: the name of the set, and what `accept_in_short` says.
AcceptsInShort accepts_in_short(const std::vector<std::pair<std::string, std::vector<std::string>>> &said);

} // namespace beadbook
