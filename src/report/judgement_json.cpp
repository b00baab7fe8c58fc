#include "report/judgement_json.hpp"

#include "measure/print.hpp"

namespace beadbook {
namespace {

std::string_view name_of(Finding::Kind kind) {
    switch (kind) {
    case Finding::Kind::over_limit: return "out of limit";
    case Finding::Kind::not_allowed: return "not allowed";
    case Finding::Kind::missing_data: return "missing data";
    case Finding::Kind::person_decides: return "a person decides";
    case Finding::Kind::not_covered: return "not covered";
    case Finding::Kind::exam_missing: return "exam missing";
    case Finding::Kind::not_measured: return "not measured";
    case Finding::Kind::within: break;
    }
    return "within";
}

std::string exact_text(const Exact &value) {
    // Larger than any JSON number may be, so as text: "4762500" or "25400000/3".
    const auto digits = [](Int128 v) {
        std::string out;
        const bool negative = v < 0;
        if (negative) v = -v;
        do out.insert(out.begin(), static_cast<char>('0' + static_cast<int>(v % 10)));
        while ((v /= 10) != 0);
        return (negative ? "-" : "") + out;
    };
    return digits(value.num()) + (value.is_whole() ? "" : "/" + digits(value.den()));
}

nlohmann::json number(const Exact &value, Dimension d, Unit unit) {
    return {{"text", print(value, d, unit)}, {"exact", exact_text(value)}};
}

nlohmann::json finding_json(const Case &c, std::size_t class_index, const Finding &f) {
    nlohmann::json out{{"kind", name_of(f.kind)},
                       {"effect", name_of(f.effect)},
                       {"sentence", sentence(c, class_index, f)},
                       {"authority", authority(c, class_index, f)}};
    if (f.rule >= 0) {
        const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
        const Standing &standing = rule.standings[class_index];
        out["rule"] = rule.id;
        out["clause"] = rule.clause;
        out["standing"] = name_of(standing.kind);
        out["source"] = standing.source;
        if (f.has_numbers) {
            out["measured"] = number(f.measured, rule.dimension(), c.unit);
            out["limit"] = number(f.limit, rule.dimension(), c.unit);
            out["margin"] = number(f.limit - f.measured, rule.dimension(), c.unit);
            if (f.ratio < 1e12) out["ratio"] = f.ratio; // JSON knows no infinity
        }
    }
    if (!f.indications.empty()) out["indications"] = f.indications;
    if (f.place)
        out["place"] = {{"from nm", f.place->from.nm},
                        {"to nm", f.place->to.nm},
                        {"text", print_place(*f.place, c.coupon.line, c.unit)}};
    if (f.missing.any()) out["missing"] = names_of(f.missing);
    for (const Exam e : f.exams) out["exams"].push_back(name_of(e));
    return out;
}

} // namespace

nlohmann::json judgement_json(const Case &c, const Judgement &judgement) {
    nlohmann::json classes = nlohmann::json::array();
    for (std::size_t k = 0; k < judgement.classes.size(); ++k) {
        const ClassJudgement &one = judgement.classes[k];
        nlohmann::json entry{{"class", c.set.classes[k].id}, {"verdict", name_of(one.verdict)}};
        entry["findings"] = nlohmann::json::array();
        for (const auto &f : one.findings) entry["findings"].push_back(finding_json(c, k, f));
        if (one.nearest) entry["nearest"] = finding_json(c, k, *one.nearest);
        classes.push_back(std::move(entry));
    }
    return {{"criteria", {{"set", c.set.name}, {"edition", c.set.edition}, {"hash", c.set.hash}}},
            {"classes", classes}};
}

} // namespace beadbook
