#include "criteria/vocabulary.hpp"

#include "criteria/set_names.hpp"
#include "criteria/shipped.hpp"
#include "language/fields.hpp"
#include "language/read.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace beadbook {
namespace {

std::string folded(std::string_view word) { return lowered(trimmed(word)); }

std::optional<OwnMeasure> read_own_measure(const Fields &fields) {
    static constexpr std::pair<std::string_view, OwnMeasure> words[] = {
        {"extent", OwnMeasure::extent}, {"depth", OwnMeasure::depth},     {"height", OwnMeasure::height},
        {"angle", OwnMeasure::angle},   {"opening", OwnMeasure::opening}, {"several", OwnMeasure::several}};
    const std::string said = fields.text("by");
    for (const auto &[word, measure] : words)
        if (said == word) return measure;
    if (!said.empty())
        fields.error("by", "found '" + shown(said) +
                               "'; expected extent, depth, height, angle, opening or several");
    return std::nullopt;
}

std::vector<ImperfectionType::CauseOfSome> read_causes_of_some(const Fields &fields, Issues &issues) {
    std::vector<ImperfectionType::CauseOfSome> out;
    const Yaml *list = fields.get("of some");
    if (!list) return out;
    static const Names names = [] {
        Names all;
        add_set_names(all);
        return all;
    }();
    for (const auto &node : list->items) {
        const Fields of(node, "types.of some", {"cause", "remedy", "when", "basis"}, issues);
        of.need("when");
        of.need("basis");
        out.push_back({of.text("cause"), of.text("remedy"), read_conditions(of, "when", names, issues)});
    }
    return out;
}

} // namespace

std::string_view name_of(Shape shape) {
    return shape == Shape::linear ? "linear" : shape == Shape::rounded ? "rounded" : "unknown";
}

Shape read_shape(const Fields &fields) {
    const std::string word = fields.text("shape");
    if (word == "linear") return Shape::linear;
    if (word == "rounded") return Shape::rounded;
    if (!word.empty()) fields.error("shape", "found '" + shown(word) + "'; expected linear or rounded");
    return Shape::unknown;
}

const Vocabulary &Vocabulary::shipped() {
    static const Vocabulary vocabulary = [] {
        Issues issues;
        Vocabulary v = read(shipped_file("vocabulary.yaml"), issues);
        if (issues.any_error()) throw std::logic_error("built-in vocabulary: " + issues.all().front().text);
        return v;
    }();
    return vocabulary;
}

Vocabulary Vocabulary::read(const std::string &text, Issues &issues) {
    static const std::vector<std::string> keys{"name",     "iso",     "quick",  "under",  "shape",
                                               "also",     "cause",   "remedy", "small",  "basis",
                                               "measured", "unclear", "by",     "of some"};
    Vocabulary v;
    v.hash_ = sha256(text);
    const Yaml root = read_yaml(text, issues);
    const Fields top(root, "", {"types"}, issues);
    const Yaml *types = top.need("types");
    if (!types) return v;
    for (const auto &node : types->items) {
        const Fields fields(node, "types", keys, issues);
        ImperfectionType type;
        type.name = fields.needed_text("name");
        type.quick = fields.needed_text("quick");
        type.shape = read_shape(fields);
        type.measured = fields.flag("measured", false);
        type.by = read_own_measure(fields);
        type.usual = {fields.text("cause"), fields.text("remedy"), read_causes_of_some(fields, issues)};
        if (const Yaml *small = fields.get("small")) {
            const Fields of(*small, "types.small", {"cause", "remedy"}, issues);
            type.small = {of.needed_text("cause"), of.needed_text("remedy")};
        }
        if (!type.usual.cause.empty() || !type.small.cause.empty()) fields.need("basis");
        if (const Yaml *iso = fields.get("iso"))
            type.iso = Fields(*iso, "types.iso", {"code", "standing"}, issues).needed_text("code");
        const std::string under = fields.text("under");
        if (!under.empty()) {
            type.under = v.find(under);
            if (!type.under) fields.error("under", "no type above this one is called '" + shown(under) + "'");
            if (type.under && type.shape == Shape::unknown) type.shape = v[*type.under].shape;
        }
        for (const Yaml *word : fields.words("also")) type.also.push_back(word->text);
        for (const Yaml *word : fields.words("unclear")) type.unclear.push_back(folded(word->text));
        const auto id = static_cast<TypeId>(v.types_.size());
        v.types_.push_back(type);
        v.add_word(type.name, id, node.where, issues);
        v.add_word(type.quick, id, node.where, issues);
        if (!type.iso.empty()) v.add_word(type.iso, id, node.where, issues);
        for (const auto &word : type.also) v.add_word(word, id, node.where, issues);
    }
    return v;
}

void Vocabulary::add_word(const std::string &word, TypeId id, Where where, Issues &issues) {
    const auto [entry, fresh] = words_.emplace(folded(word), id);
    if (!fresh && entry->second != id)
        issues.error(where, "types", "'" + word + "' already means " + types_[entry->second].name);
}

std::optional<TypeId> Vocabulary::find(std::string_view word) const {
    const auto found = words_.find(folded(word));
    if (found == words_.end()) return std::nullopt;
    return found->second;
}

std::vector<TypeId> Vocabulary::perhaps(std::string_view word) const {
    constexpr std::size_t least_letters = 3;
    const std::string given = folded(word);
    std::set<TypeId> unclear, whole, begun;
    for (std::size_t id = 0; id < types_.size(); ++id) {
        const auto &names = types_[id].unclear;
        if (std::find(names.begin(), names.end(), given) != names.end())
            unclear.insert(static_cast<TypeId>(id));
    }
    if (given.size() >= least_letters)
        for (const auto &[name, id] : words_)
            if (name.starts_with(given)) (name.find(' ') == name.npos ? whole : begun).insert(id);
    if (!unclear.empty()) return {unclear.begin(), unclear.end()};
    // `cra` is a crack sooner than a crater pipe, as nothing is worse; but `inc` is no inclusion sooner than
    // incomplete fusion.
    const auto crack = find("crack");
    std::set<TypeId> out = whole;
    for (const TypeId one : begun)
        if (std::none_of(whole.begin(), whole.end(),
                         [&](TypeId wider) { return is_a(one, wider) || crack == wider; }))
            out.insert(one);
    return {out.begin(), out.end()};
}

std::vector<TypeId> Vocabulary::sharing(std::string_view word) const {
    const std::string given = folded(word);
    std::set<TypeId> out;
    if (given.empty()) return {};
    for (const auto &[name, id] : words_)
        if (name.starts_with(given) || name.ends_with(" " + given)) out.insert(id);
    return {out.begin(), out.end()};
}

bool Vocabulary::is_a(TypeId type, TypeId wider) const {
    for (std::optional<TypeId> t = type; t; t = types_[*t].under)
        if (*t == wider) return true;
    return false;
}

TypeId Vocabulary::widest(TypeId type) const {
    while (types_[type].under) type = *types_[type].under;
    return type;
}

const ImperfectionType &Vocabulary::explained(TypeId id) const {
    for (std::optional<TypeId> t = id; t; t = types_[*t].under)
        if (!types_[*t].usual.cause.empty()) return types_[*t];
    return types_[id];
}

std::vector<std::string> Vocabulary::names() const {
    std::vector<std::string> out;
    for (const auto &type : types_) {
        out.push_back(type.name);
        out.insert(out.end(), type.also.begin(), type.also.end());
    }
    return out;
}

} // namespace beadbook
