#include "operations/reading.hpp"

#include "criteria/shipped.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The text of one folder's shipped file, else of the file or text itself.
std::string text_of(const Catalogue &catalogue, const Source &source, const std::string &folder) {
    const auto shipped = folder.empty() ? shipped_sets() : shipped_in(folder);
    const bool named = std::find(shipped.begin(), shipped.end(), source.name) != shipped.end();
    if (named && !source.text) return shipped_file(folder + source.name + ".yaml");
    try {
        return source.read(catalogue.outside());
    } catch (const DataError &e) {
        if (source.text || means_file(source.name)) throw;
        throw DataError(e.what() + did_you_mean(source.name, shipped));
    }
}

template <class T, class Load, class Part>
Checked<T> checked(const Catalogue &catalogue, const Source &source, const std::string &folder, Load load,
                   Part part) {
    Checked<T> out{source.name, text_of(catalogue, source, folder), nullptr, {}};
    const auto loaded = load(out.text);
    out.value = loaded.*part;
    out.issues = loaded.issues;
    return out;
}

} // namespace

std::vector<std::shared_ptr<const CriteriaSet>> all_criteria(Catalogue &catalogue) {
    std::vector<std::shared_ptr<const CriteriaSet>> out;
    for (const auto &name : shipped_sets()) out.push_back(catalogue.criteria(name));
    return out;
}
std::vector<std::shared_ptr<const RangeRules>> all_rules(Catalogue &catalogue) {
    std::vector<std::shared_ptr<const RangeRules>> out;
    for (const auto &name : shipped_range_rule_names()) out.push_back(catalogue.rules(name));
    return out;
}
std::vector<std::shared_ptr<const Practice>> all_practices(Catalogue &catalogue) {
    std::vector<std::shared_ptr<const Practice>> out;
    for (const auto &name : shipped_practice_names()) out.push_back(catalogue.practice(name));
    return out;
}

CheckedCriteria check_criteria(Catalogue &catalogue, const Source &source, bool coverage) {
    const auto load = [&](const std::string &text) {
        return load_criteria(text, Vocabulary::shipped(), bases_beside(catalogue.outside(), source.name));
    };
    CheckedCriteria out{checked<CriteriaSet>(catalogue, source, "", load, &Loaded::set), {}};
    if (const std::string built_in = out.value ? Catalogue::built_in_like(*out.value) : ""; !built_in.empty())
        out.issues.push_back({Severity::warning,
                              {1, 1},
                              "set",
                              built_in +
                                  " is built in and says something else, so nothing can be registered by "
                                  "this set; give it a name of its own",
                              {}});
    if (coverage && out.value) out.coverage = uncovered_types(*out.value, Vocabulary::shipped());
    return out;
}
Checked<RangeRules> check_rules(Catalogue &catalogue, const Source &source) {
    return checked<RangeRules>(catalogue, source, "welder/", load_range_rules, &LoadedRules::rules);
}
Checked<Practice> check_practice(Catalogue &catalogue, const Source &source) {
    return checked<Practice>(catalogue, source, "technique/", load_practice, &LoadedPractice::practice);
}

std::string editor_schema(const std::string &kind) {
    static const std::vector<std::string> kinds{"criteria", "cases", "rules", "practice", "work"};
    if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end())
        throw DataError("there is no schema for '" + shown(kind) + "'; expected " + listed(kinds, "or") +
                        did_you_mean(kind, kinds));
    return shipped_file(kind + ".schema.json");
}

const Vocabulary &imperfection_types() { return Vocabulary::shipped(); }
const std::vector<ConditionInfo> &known_conditions() { return condition_infos(); }

} // namespace beadbook
