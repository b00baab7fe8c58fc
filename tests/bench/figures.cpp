#include "figures.hpp"

#include <algorithm>
#include <cstdio>
#include <nlohmann/json.hpp>

namespace beadbook::bench {

void Figures::add(const std::string &name, double value, const std::string &unit, const std::string &note) {
    all_.push_back({name, unit, value});
    if (json_) return;
    std::printf("%-44s %12.3f %s%s%s\n", name.c_str(), value, unit.c_str(), note.empty() ? "" : "; ",
                note.c_str());
    std::fflush(stdout);
}

const Figures::Figure &Figures::of(const std::string &name) const {
    return *std::find_if(all_.begin(), all_.end(), [&](const Figure &f) { return f.name == name; });
}

void Figures::ratio(const std::string &a, const std::string &b, const std::string &bar) {
    add(a + " / " + b, of(a).value / of(b).value, "times" + bar);
}

void Figures::finish() const {
    if (!json_) return;
    nlohmann::ordered_json out = nlohmann::ordered_json::object();
    for (const auto &f : all_) out[f.name] = {{"value", f.value}, {"unit", f.unit}};
    std::printf("%s\n", out.dump(2).c_str());
}

double median(std::vector<double> all) {
    std::sort(all.begin(), all.end());
    return all[all.size() / 2];
}

} // namespace beadbook::bench
