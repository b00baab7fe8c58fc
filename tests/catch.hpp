#pragma once

// Catch2 2 (Debian 12) has one header; Catch2 3 (newer distributions) has this one, with other names.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
inline auto says(const std::string &text) { return Catch::Matchers::ContainsSubstring(text); }
#else
#include <catch2/catch.hpp>
inline auto says(const std::string &text) { return Catch::Matchers::Contains(text); }
#endif
