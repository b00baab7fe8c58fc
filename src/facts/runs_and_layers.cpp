#include "facts/runs_and_layers.hpp"

#include "facts/each_process.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool is_single(const std::string &runs) { return runs == "sl" || runs.starts_with("single"); }
bool is_multi(const std::string &runs) { return runs == "ml" || runs.starts_with("multi"); }

/// Whether `runs` of one process each may have so many layers in all.
bool may_have(const std::vector<std::string> &runs, const Exact &layers) {
    std::int64_t least = 0;
    for (const auto &one : runs) least += is_multi(one) ? 2 : 1;
    const bool exactly = std::all_of(runs.begin(), runs.end(), is_single);
    return layers >= Exact(least) && (!exactly || layers == Exact(least));
}

} // namespace

std::string runs_of_other_layers(const CouponRecord &coupon) {
    const auto layers = coupon.fields.find("layers");
    const std::string said = coupon.get("runs");
    if (layers == coupon.fields.end() || said.empty()) return "";
    const std::size_t count = std::max<std::size_t>(processes_of(coupon).size(), 1);
    std::vector<std::string> runs;
    for (std::size_t p = 0; p < count; ++p)
        runs.push_back(lowered(said_of_process(coupon, "runs", p, count, true)));
    // That there are fewer layers than processes is told by itself.
    if (std::none_of(runs.begin(), runs.end(), [](const auto &r) { return is_single(r) || is_multi(r); }))
        return "";
    const auto each = parts_of_several(layers->second.text);
    bool fits = may_have(runs, layers->second.value);
    if (each.size() == count)
        for (std::size_t p = 0; p < count; ++p)
            fits = fits && may_have({runs[p]}, parse_amount(each[p], Dimension::number));
    return fits ? "" : "runs " + shown(said) + ", layers " + layers->second.text;
}

std::string layers_under_processes(const CouponRecord &coupon) {
    const auto layers = coupon.fields.find("layers");
    const auto processes = processes_of(coupon);
    if (layers == coupon.fields.end() || processes.size() < 2 ||
        layers->second.value >= Exact(static_cast<std::int64_t>(processes.size())))
        return "";
    return "process " + shown(coupon.get("process")) + ", layers " + layers->second.text;
}

} // namespace beadbook
