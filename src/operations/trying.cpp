#include "operations/trying.hpp"

#include "criteria/shipped.hpp"
#include "language/yaml.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view folder = "cases/";

bool decides(const Finding &finding, const CriteriaSet &set, const std::string &rule) {
    return finding.rule >= 0 && set.rules[static_cast<std::size_t>(finding.rule)].id == rule;
}

TriedCase tried(WorkedCase worked) {
    TriedCase out{std::move(worked), {}, {}, false};
    const CriteriaSet &set = *out.worked.set;
    out.judgement = judge(set, out.worked.coupon.facts(), out.worked.exams, out.worked.indications);
    bool decided = out.worked.decided_by.empty();
    for (const auto &[id, expected] : out.worked.expected) {
        const ClassJudgement &got = out.judgement.classes[*set.class_index(id)];
        if (got.verdict != expected) out.classes.push_back(id);
        decided = decided || std::any_of(got.findings.begin(), got.findings.end(), [&](const Finding &f) {
                      return f.effect == got.verdict && decides(f, set, out.worked.decided_by);
                  });
    }
    out.other_rule = !decided;
    return out;
}

/// What the cases together try of the set.
void add_coverage(TriedCases &out) {
    const CriteriaSet &set = *out.set;
    std::vector<bool> decisive(set.rules.size());
    std::vector<std::vector<UntriedLimit>> sides(set.rules.size());
    for (std::size_t r = 0; r < set.rules.size(); ++r)
        for (const auto &one : set.classes) sides[r].push_back({set.rules[r].id, one.id, false, false});
    for (const auto &tried : out.cases)
        for (std::size_t c = 0; c < set.classes.size(); ++c) {
            const ClassJudgement &got = tried.judgement.classes[c];
            for (const auto &f : got.findings) {
                if (f.rule < 0) continue;
                decisive[static_cast<std::size_t>(f.rule)] = true;
                if (f.kind == Finding::Kind::over_limit)
                    sides[static_cast<std::size_t>(f.rule)][c].over = true;
            }
            if (got.nearest && got.nearest->rule >= 0)
                sides[static_cast<std::size_t>(got.nearest->rule)][c].within = true;
        }
    for (std::size_t r = 0; r < set.rules.size(); ++r) {
        if (!decisive[r]) out.never_decisive.push_back(set.rules[r].id);
        for (std::size_t c = 0; c < set.classes.size(); ++c)
            if (set.rules[r].limits[c].kind == Limit::Kind::value &&
                !(sides[r][c].within && sides[r][c].over))
                out.untried.push_back(sides[r][c]);
    }
}

/// Whether the file is a criteria set of that name.
bool is_set_called(Catalogue &catalogue, const std::string &path, const std::string &name) {
    try {
        Issues issues;
        const Yaml root = read_yaml(catalogue.outside().read(path), issues);
        const Yaml *set = root.kind == Yaml::Kind::map ? root.find("set") : nullptr;
        return set && set->text == name && root.find("cases") == nullptr;
    } catch (const DataError &) {
        return false;
    }
}

/// A file that bears a shipped set's name, where it lies beside the cases or above their folder, under its
/// name or under theirs: read in place of that one, it is refused if it is another. Empty: there is none.
std::string own_of_shipped_name(Catalogue &catalogue, const Source &cases, const std::string &name) {
    if (cases.text || !means_file(cases.name)) return "";
    const std::size_t slash = cases.name.rfind('/');
    const std::string folder_of = slash == std::string::npos ? "" : cases.name.substr(0, slash + 1);
    const std::string own = slash == std::string::npos ? cases.name : cases.name.substr(slash + 1);
    for (const std::string &path :
         {folder_of + name + ".yaml", folder_of + "../" + name + ".yaml", folder_of + "../" + own})
        if (path != cases.name && is_set_called(catalogue, path, name)) return path;
    return "";
}

/// The set of the cases file: a shipped one, or one of one's own, beside that file first, or above its folder
/// where the two are called alike; `.yaml` may be left out.
std::shared_ptr<const CriteriaSet> set_of_cases(Catalogue &catalogue, const Source &cases,
                                                const std::string &name) {
    const auto &shipped = shipped_sets();
    if (std::find(shipped.begin(), shipped.end(), name) != shipped.end()) {
        const std::string changed = own_of_shipped_name(catalogue, cases, name);
        return catalogue.criteria(changed.empty() ? name : changed);
    }
    const std::string file = means_file(name) ? name : name + ".yaml";
    std::vector<std::string> paths{file}, missed;
    const std::size_t slash = cases.name.rfind('/');
    const std::string beside = slash == std::string::npos ? "" : cases.name.substr(0, slash + 1);
    if (!beside.empty() && !file.starts_with('/')) paths.insert(paths.begin(), beside + file);
    // fab.yaml and cases/fab.yaml, as the shipped ones lie: what bears the set's name is not the set.
    for (auto &path : paths)
        if (path == cases.name && !file.starts_with('/')) path = beside + "../" + file;
    for (const std::string &path : paths) {
        try {
            catalogue.outside().read(path);
        } catch (const DataError &e) {
            missed.emplace_back(e.what());
            continue;
        }
        return catalogue.criteria(path);
    }
    if (means_file(name))
        throw DataError(joined(missed, "; ") +
                        "; write its path from the folder of the cases file, or the name " +
                        "of a shipped set");
    try {
        return catalogue.criteria(name);
    } catch (const DataError &e) {
        throw DataError(e.what() + (" (looked for as a file too: " + joined(missed, "; ") + ")"));
    }
}

/// Somebody names the set where its cases are meant.
void refuse_set(const Source &source, const std::string &text) {
    Issues issues;
    const Yaml root = read_yaml(text, issues);
    if (root.kind == Yaml::Kind::map && root.find("rules") && !root.find("cases"))
        throw SetForCases(shown(source.name) +
                          " is a criteria set; expected a file of worked cases, with 'set: " +
                          shown(source.name.substr(source.name.rfind('/') + 1)) + "' and 'cases'");
}

} // namespace

std::size_t TriedCases::failed() const {
    return static_cast<std::size_t>(
        std::count_if(cases.begin(), cases.end(), [](const TriedCase &one) { return !one.holds(); }));
}

TriedCases try_cases(Catalogue &catalogue, const Source &source) {
    const auto shipped = shipped_in(std::string(folder));
    const bool beside =
        !source.text && std::find(shipped.begin(), shipped.end(), source.name) != shipped.end();
    const std::string text =
        beside ? shipped_file(std::string(folder) + source.name + ".yaml") : source.read(catalogue.outside());
    refuse_set(source, text);
    LoadedCases loaded = load_worked_cases(
        text, [&](const std::string &name) { return set_of_cases(catalogue, source, name); });
    if (!loaded.cases) throw mistakes_in("cases", source.name, text, loaded.issues);
    TriedCases out{source.name, loaded.cases->set, {}, {}, {}};
    for (auto &one : loaded.cases->cases) out.cases.push_back(tried(std::move(one)));
    add_coverage(out);
    return out;
}

std::vector<TriedCases> try_all_cases(Catalogue &catalogue) {
    std::vector<TriedCases> out;
    for (const auto &name : shipped_in(std::string(folder))) out.push_back(try_cases(catalogue, {name}));
    return out;
}

} // namespace beadbook
