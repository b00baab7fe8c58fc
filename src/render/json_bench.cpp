#include "render/json_bench.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {

std::string json_text(const BenchOpen &bench, const std::vector<std::string> &notes) {
    nlohmann::json out{{"link", bench.link}, {"by", bench.person}};
    if (!notes.empty()) out["notes"] = notes;
    return out.dump() + "\n"; // one line, so that a program need not wait for more
}

} // namespace beadbook
