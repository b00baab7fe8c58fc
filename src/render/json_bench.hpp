#pragma once

#include "report/bench_document.hpp"

namespace beadbook {

std::string json_text(const BenchOpen &bench, const std::vector<std::string> &notes = {});
std::string json_text(const WayIn &way, const std::vector<std::string> &notes = {});

} // namespace beadbook
