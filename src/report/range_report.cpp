#include "report/range_report.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string lacks_text(const std::vector<Lack> &lacks) {
    std::vector<std::string> names;
    for (const auto &lack : lacks) names.push_back(name_of(lack));
    return listed(names);
}

const VariableRange *range_for(const std::vector<VariableRange> &range, const Variable *variable) {
    const auto found = std::find_if(range.begin(), range.end(),
                                    [&](const VariableRange &r) { return r.variable->of == variable->of; });
    return found == range.end() ? nullptr : &*found;
}

/// How far the work's size is from what the nearest part allows: "0.07 in over".
std::string distance(const RangePart &part, const Exact &value, Unit unit) {
    const Dimension d = info(*info(part.rule->of).size).dimension;
    for (const auto &[compare, edge] : part.edges) {
        if (holds(value, compare, edge)) continue;
        if (value == edge) return ", exactly at the end that is not included";
        const PrintedPair pair = print_pair(value, edge, d, unit);
        return ", " + pair.difference + (is_maximum(compare) ? " over" : " under");
    }
    return "";
}

} // namespace

std::string explain_range(const RangeRules &rules, const std::vector<VariableRange> &range, Unit unit) {
    std::string out;
    for (const auto &one : range) {
        if (!may_matter(range, *one.variable)) continue;
        out += info(one.variable->of).name;
        if (!one.variable->work.text.empty()) out += " (in work with " + one.variable->work.text + ")";
        out += ":\n";
        if (one.parts.empty()) out += "  nothing: no rule speaks of such a test\n";
        for (const auto &part : one.parts) {
            out += "  " + print(part, unit);
            if (!part.rule->work.text.empty()) out += ", for " + part.rule->work.text;
            if (part.applies == Truth::unknown) out += " -- cannot say without " + lacks_text(part.lacks);
            out += "  [" + authority(part.rule->clause, part.rule->standing) + "]\n";
            if (!part.rule->reading.empty()) out += "    our reading: " + part.rule->reading + "\n";
        }
    }
    if (!rules.gaps.empty()) out += "Not in these rules, so never qualified by them:\n";
    for (const auto &gap : rules.gaps) out += "  - " + gap + "\n";
    return out;
}

nlohmann::json range_json(const std::vector<VariableRange> &range, Unit unit) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : range) {
        if (!may_matter(range, *one.variable)) continue;
        nlohmann::json parts = nlohmann::json::array();
        for (const auto &part : one.parts) {
            nlohmann::json json{{"allows", print(part, unit)},
                                {"rule", part.rule->id},
                                {"clause", part.rule->clause},
                                {"standing", name_of(part.rule->standing.kind)},
                                {"source", part.rule->standing.source}};
            if (!part.rule->work.text.empty()) json["for"] = part.rule->work.text;
            for (const auto &lack : part.lacks) json["lacks"].push_back(name_of(lack));
            parts.push_back(std::move(json));
        }
        nlohmann::json json{{"variable", info(one.variable->of).name}, {"parts", parts}};
        if (!one.variable->work.text.empty()) json["in work with"] = one.variable->work.text;
        out.push_back(std::move(json));
    }
    return out;
}

std::string explain_fail(const VariableCover &fail, const std::vector<VariableRange> &range, const Weld &work,
                         Unit unit) {
    const Trait of = fail.variable->of;
    const std::string name(info(of).name);
    if (fail.covered == Truth::unknown) return name + ": cannot say without " + lacks_text(fail.lacks);
    const std::string has = !work.knows(of) ? "?"
                            : is_size(of)   ? print(of, *work.size(of), unit)
                                            : work.word(of);
    std::string out = name + " " + has + ": ";
    const VariableRange *one = range_for(range, fail.variable);
    std::vector<std::string> allowed;
    for (const auto &part : one ? one->parts : std::vector<RangePart>{}) {
        if (part.applies != Truth::yes) continue;
        std::string text = print(part, unit);
        if (is_size(of) && work.knows(of)) text += distance(part, *work.size(of), unit);
        if (!part.rule->work.text.empty()) text += ", for " + part.rule->work.text;
        allowed.push_back(text + " [" + authority(part.rule->clause, part.rule->standing) + "]");
    }
    if (allowed.empty()) return out + "no rule lets this test qualify any";
    out += "this test allows ";
    for (std::size_t i = 0; i < allowed.size(); ++i) out += (i > 0 ? "; " : "") + allowed[i];
    return out;
}

nlohmann::json weld_json(const Weld &weld, Unit unit) {
    nlohmann::json out = nlohmann::json::object();
    for (std::size_t i = 0; i < trait_count; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (!weld.knows(trait)) continue;
        out[std::string(info(trait).name)] =
            is_size(trait) ? print(trait, *weld.size(trait), unit) : weld.word(trait);
    }
    return out;
}

} // namespace beadbook
