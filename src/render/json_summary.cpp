#include "render/json_summary.hpp"

#include "render/json_parts.hpp"

namespace beadbook {
namespace {

nlohmann::json share_json(const Share &share) {
    nlohmann::json out{{"count", share.count}, {"of", share.of}, {"low", share.low}, {"high", share.high}};
    if (share.of > 0) out["share"] = share.value();
    return out;
}

nlohmann::json outcome_json(const Outcome &one) {
    return {{"coupons", one.coupons},
            {"accepted", one.accepted},
            {"mechanical tests failed", one.bends_failed},
            {"rejected", one.rejected},
            {"cannot say", one.cannot_say},
            {"not judged", one.not_judged},
            {"share", share_json(one.share)},
            {"first pass", share_json(one.first_pass)}};
}

nlohmann::json lines_json(const std::vector<Outcome> &lines) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : lines) {
        out.push_back(outcome_json(one));
        if (!one.name.empty()) out.back()["name"] = one.name;
    }
    return out;
}

nlohmann::json lines_json(const std::vector<FindCount> &lines) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : lines)
        out.push_back({{"name", one.name},
                       {"finds", one.finds},
                       {"rejecting", one.rejecting},
                       {"coupons", one.coupons}});
    return out;
}

nlohmann::json lines_json(const std::vector<RuleCount> &lines) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : lines) {
        out.push_back({{"name", one.name}, {"reasons", one.reasons}, {"coupons", share_json(one.coupons)}});
        if (!one.title.empty()) out.back()["title"] = one.title;
    }
    return out;
}

} // namespace

std::string json_text(const Summaries &all, const std::vector<std::string> &notes) {
    nlohmann::json groups = nlohmann::json::array();
    for (const auto &group : all.groups) {
        const Summary &s = group.summary;
        nlohmann::json one = outcome_json(s.all);
        one["of"] = selection_words(group.of);
        one["finds"] = s.finds;
        if (s.held > 0) one["measured and held"] = s.held;
        if (s.unjudged > 0) one["measured and not judged"] = s.unjudged;
        if (s.by_own_files > 0) one["by own files"] = s.by_own_files;
        if (s.with_cautions > 0) one["with cautions"] = s.with_cautions;
        if (s.withdrawn_rejects > 0) one["withdrawn rejects"] = s.withdrawn_rejects;
        one["by imperfection"] = lines_json(s.imperfections);
        one["by rule"] = lines_json(s.rules);
        one["by place"] = lines_json(s.places);
        one["by joint"] = lines_json(s.joints);
        one["by welder"] = lines_json(s.welders);
        one["by week"] = lines_json(s.weeks);
        groups.push_back(std::move(one));
    }
    return render::finished({{"groups", std::move(groups)}}, notes);
}

} // namespace beadbook
