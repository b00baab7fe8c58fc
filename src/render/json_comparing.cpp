#include "render/json_comparing.hpp"

#include "measure/text.hpp"
#include "render/json_parts.hpp"
#include "render/json_weld.hpp"

namespace beadbook {
namespace {

using CompareJson = nlohmann::json;

std::string_view id_of(SaidOfThing::Kind kind) {
    switch (kind) {
    case SaidOfThing::Kind::value: return "limit";
    case SaidOfThing::Kind::none: return "none";
    case SaidOfThing::Kind::free: return "no limit";
    case SaidOfThing::Kind::ask: return "a person decides";
    case SaidOfThing::Kind::not_said: return "not said";
    case SaidOfThing::Kind::measured: return "by a measure";
    case SaidOfThing::Kind::no_row: return "no row of its table";
    case SaidOfThing::Kind::blank: return "blank";
    case SaidOfThing::Kind::gap: return "gap";
    case SaidOfThing::Kind::narrower: return "under further conditions";
    case SaidOfThing::Kind::no_rule: return "no rule";
    case SaidOfThing::Kind::outside: break;
    }
    return "outside its scope";
}

CompareJson said_json(const ComparedSets &all, const CriteriaSet &set, std::size_t class_index,
                      const SaidOfThing &said) {
    CompareJson out{{"says", id_of(said.kind)}};
    if (!said.by_a_rule()) return out;
    const Rule &rule = set.rules[said.rule];
    out.update(authority_json(rule.clause, rule.standings[class_index]));
    out["rule"] = rule.id;
    out["as written"] = rule.limits[class_index].text;
    if (said.kind == SaidOfThing::Kind::value) out["compare"] = name_of(rule.compare);
    for (const std::size_t other : said.also) out["and by"].push_back(set.rules[other].id);
    if (said.from) out["from"] = render::number(*said.from, rule.dimension(), all.unit);
    if (said.to) out["to"] = render::number(*said.to, rule.dimension(), all.unit);
    return out;
}

CompareJson names_json(const TypeSet &types) {
    CompareJson out = CompareJson::array();
    for (std::size_t t = 0; t < Vocabulary::shipped().size(); ++t)
        if (types[t]) out.push_back(Vocabulary::shipped()[static_cast<TypeId>(t)].name);
    return out;
}

CompareJson thing_json(const ComparedSets &all, const ComparedClasses &classes, const ComparedThing &thing) {
    CompareJson stretches = CompareJson::array();
    for (const auto &one : thing.stretches) {
        CompareJson at{{"from", render::number(one.from, Dimension::length, all.unit)},
                       {"first", said_json(all, *all.first, classes.first, one.first)},
                       {"second", said_json(all, *all.second, classes.second, one.second)},
                       {"first is", name_of(one.outcome)}};
        if (one.to) at["to"] = render::number(*one.to, Dimension::length, all.unit);
        stretches.push_back(std::move(at));
    }
    CompareJson out{{"exam", name_of(thing.exam)},
                    {"types", names_json(thing.types)},
                    {"measure", thing_in_words(all, classes, thing)},
                    {"conditions", thing.conditions},
                    {"thickness", std::move(stretches)}};
    if (thing.differs_in_other_unit) out["differs in the other unit"] = true;
    return out;
}

template <class Id>
CompareJson only_json(const ComparedSets &all, const OnlyInOne &only, Id id) {
    CompareJson out{{"first", CompareJson::array()}, {"second", CompareJson::array()}};
    for (const std::size_t i : only.first) out["first"].push_back(id(*all.first, i));
    for (const std::size_t i : only.second) out["second"].push_back(id(*all.second, i));
    return out;
}

CompareJson classes_json(const ComparedSets &all, const ComparedClasses &classes) {
    CompareJson things = CompareJson::array(), by_exam = CompareJson::object();
    for (const auto &thing : classes.things) things.push_back(thing_json(all, classes, thing));
    for (const Exam exam : all_exams()) {
        const auto at = static_cast<std::size_t>(exam);
        by_exam[std::string(name_of(exam))] = {{"first", names_json(classes.only_first[at])},
                                               {"second", names_json(classes.only_second[at])}};
    }
    return {{"first", all.first->classes[classes.first].id},
            {"second", all.second->classes[classes.second].id},
            {"things", std::move(things)},
            {"types in one only", std::move(by_exam)},
            {"written otherwise",
             {{"scope",
               only_json(all, classes.scope, [](const auto &s, std::size_t i) { return s.scope[i].id; })},
              {"required exams", only_json(all, classes.required,
                                           [](const auto &s, std::size_t i) { return s.required[i].id; })},
              {"rules",
               only_json(all, classes.rules, [](const auto &s, std::size_t i) { return s.rules[i].id; })},
              {"not counted", only_json(all, classes.relevance,
                                        [](const auto &s, std::size_t i) { return s.relevance[i].id; })},
              {"counted as one", only_json(all, classes.merges,
                                           [](const auto &s, std::size_t i) { return s.merges[i].id; })}}}};
}

CompareJson set_json(const CriteriaSet &set) {
    return {{"set", set.name}, {"title", set.title}, {"edition", set.edition}, {"hash", set.hash}};
}

} // namespace

std::string json_text(const ComparedSets &all, const std::vector<std::string> &notes) {
    CompareJson classes = CompareJson::array();
    for (const auto &one : all.classes) classes.push_back(classes_json(all, one));
    CompareJson out{
        {"first", set_json(*all.first)}, {"second", set_json(*all.second)}, {"compared", std::move(classes)}};
    for (const auto &one : all.otherwise) {
        CompareJson item{{"what", one.what}};
        if (!one.first.empty()) item["first"] = one.first;
        if (!one.second.empty()) item["second"] = one.second;
        out["otherwise"].push_back(std::move(item));
    }
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
