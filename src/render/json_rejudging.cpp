#include "render/json_rejudging.hpp"

#include "render/json_parts.hpp"

namespace beadbook {
namespace {

nlohmann::json side_json(const VerdictBy &side) {
    return {{"set", side.set},
            {"class", side.class_id},
            {"verdict", name_of(side.verdict)},
            {"rules", side.rules},
            {"lacks", side.lacks}};
}

} // namespace

std::string json_text(const Rejudged &done, const std::vector<std::string> &notes) {
    nlohmann::json flips = nlohmann::json::array(), rules = nlohmann::json::object(),
                   left_out = nlohmann::json::array();
    for (const auto &flip : done.flips)
        flips.push_back(
            {{"coupon", flip.mark}, {"before", side_json(flip.before)}, {"after", side_json(flip.after)}});
    for (const auto &[rule, count] : done.rules)
        rules[rule] = {{"before", count.before}, {"after", count.after}};
    for (const auto &one : done.left_out) left_out.push_back({{"coupon", one.mark}, {"why", one.why}});
    return render::finished({{"compared", done.compared},
                             {"differ", std::move(flips)},
                             {"rejected by", std::move(rules)},
                             {"not compared", std::move(left_out)}},
                            notes);
}

} // namespace beadbook
