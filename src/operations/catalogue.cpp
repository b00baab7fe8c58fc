#include "operations/catalogue.hpp"

#include "criteria/shipped.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

/// The same letters and figures, in whatever capitals and with whatever between them.
bool looks_alike(std::string_view a, std::string_view b) {
    const auto plain = [](std::string_view name) {
        std::string out = lowered(name);
        std::erase_if(out, [](unsigned char c) { return std::isalnum(c) == 0; });
        return out;
    };
    return plain(a) == plain(b);
}

/// The one that is built in and says something else than what calls itself so; empty if there is none.
template <class Shipped>
std::string taken_for(const std::string &own, const std::string &hash, const std::vector<std::string> &names,
                      Shipped shipped) {
    for (const auto &built_in : names)
        if (looks_alike(own, built_in) && (own != built_in || shipped(built_in)->hash != hash))
            return built_in;
    return "";
}

/// From the shelf, else by name among the shipped ones, else from a file.
template <class Shelf, class Shipped, class Load, class Part>
auto taken(Shelf &shelf, const Outside &outside, std::string_view what, const std::string &name,
           const std::vector<std::string> &names, Shipped shipped, Load load, Part part) {
    auto &out = shelf[name];
    if (out) return out;
    if (!means_file(name)) {
        if (std::find(names.begin(), names.end(), name) == names.end())
            throw DataError(
                "there " +
                std::string(what == "rules" ? "are no rules '" : "is no " + std::string(what) + " '") +
                shown(name) + "'; expected " + listed(names, "or") +
                ", or a file of your own that ends in .yaml" + did_you_mean(name, names));
        return out = shipped(name);
    }
    const std::string text = outside.read(name);
    const auto loaded = load(text);
    if (!(loaded.*part)) throw mistakes_in(what, name, text, loaded.issues);
    // What passes by a file must not be told as what passes by the one that is built in.
    const std::string &own = (loaded.*part)->name;
    if (const std::string built_in = taken_for(own, (loaded.*part)->hash, names, shipped); !built_in.empty())
        throw DataError(shown(name) + ": it calls itself " + shown(own) + "; " + built_in +
                        " is built in and says something else; give it a name of its own");
    return out = loaded.*part;
}

template <class Shelf, class Load, class Part>
auto kept(Shelf &shelf, Ledger &ledger, const std::string &hash, Load load, Part part) {
    // What is missing may be kept later, by an import say: only what was found is remembered.
    auto &out = shelf[hash];
    if (!out)
        if (const auto text = ledger.criteria_text(hash)) out = load(*text).*part;
    return out;
}

} // namespace

bool means_file(const std::string &name) {
    return name.find('/') != std::string::npos || name.ends_with(".yaml");
}

DataError mistakes_in(std::string_view what, const std::string &file, const std::string &text,
                      const std::vector<Issue> &issues) {
    std::string all;
    for (const auto &issue : told_once(issues))
        if (issue.severity == Severity::error) all += print(issue, file, text);
    return DataError("the " + std::string(what) + " file has mistakes:\n" + all.substr(0, all.size() - 1));
}

BaseText bases_beside(const Outside &outside, const std::string &file) {
    return [&outside, file](const std::string &name) -> std::optional<std::string> {
        if (!means_file(name)) return shipped_base(name);
        const std::size_t slash = file.rfind('/');
        const bool whole = name.starts_with('/') || slash == std::string::npos;
        try {
            return outside.read(whole ? name : file.substr(0, slash + 1) + name);
        } catch (const DataError &) {
            return std::nullopt;
        }
    };
}

std::shared_ptr<const CriteriaSet> Catalogue::criteria(const std::string &name) {
    const auto load = [&](const std::string &text) {
        return load_criteria(text, Vocabulary::shipped(), bases_beside(outside_, name));
    };
    return taken(criteria_, outside_, "criteria set", name, shipped_sets(), shipped_criteria, load,
                 &Loaded::set);
}
std::shared_ptr<const RangeRules> Catalogue::rules(const std::string &name) {
    return taken(rules_, outside_, "rules", name, shipped_range_rule_names(), shipped_range_rules,
                 load_range_rules, &LoadedRules::rules);
}
std::shared_ptr<const Practice> Catalogue::practice(const std::string &name) {
    return taken(practices_, outside_, "practice", name, shipped_practice_names(), shipped_practice,
                 load_practice, &LoadedPractice::practice);
}

std::string Catalogue::built_in_like(const CriteriaSet &set) {
    return taken_for(set.name, set.hash, shipped_sets(), shipped_criteria);
}

std::shared_ptr<const CriteriaSet> Catalogue::kept_criteria(Ledger &ledger, const std::string &hash) {
    return kept(criteria_by_hash_, ledger, hash, load_checked_criteria, &Loaded::kept);
}
std::shared_ptr<const RangeRules> Catalogue::kept_rules(Ledger &ledger, const std::string &hash) {
    return kept(rules_by_hash_, ledger, hash, load_range_rules, &LoadedRules::kept);
}
std::shared_ptr<const Practice> Catalogue::kept_practice(Ledger &ledger, const std::string &hash) {
    return kept(practices_by_hash_, ledger, hash, load_practice, &LoadedPractice::kept);
}

} // namespace beadbook
