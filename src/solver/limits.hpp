#pragma once

#include <cstddef>

/// How much the program beadbook-cover takes; whoever asks it looks first.
namespace beadbook::solver_limits {

constexpr std::size_t sets = 100'000, elements = 100'000, entries = 5'000'000;
constexpr std::size_t input_bytes = 64U << 20; ///< more than `entries` numbers take
constexpr std::size_t milliseconds = 600'000;

} // namespace beadbook::solver_limits
