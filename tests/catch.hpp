#pragma once

// Catch2 2 (Debian 12) has one header; Catch2 3 (newer distributions) has this one.
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
#else
#include <catch2/catch.hpp>
#endif
