#include "render/json_bench.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {

std::string json_text(const BenchOpen &bench, const std::vector<std::string> &notes) {
    nlohmann::json out{{"link", bench.link}};
    if (!bench.person.empty()) out["by"] = bench.person;
    if (!notes.empty()) out["notes"] = notes;
    return out.dump() + "\n"; // one line, so that a program need not wait for more
}

std::string json_text(const WayIn &way, const std::vector<std::string> &notes) {
    nlohmann::json out{{"link", way.origin + "/"},
                       {"configuration", way.configuration},
                       {"authority", way.authority},
                       {"new authority", way.new_authority}};
    if (!notes.empty()) out["notes"] = notes;
    return out.dump() + "\n";
}

} // namespace beadbook
