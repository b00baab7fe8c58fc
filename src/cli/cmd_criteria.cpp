#include "cli/shared.hpp"

#include "criteria/lint.hpp"
#include "criteria/shipped.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace po = boost::program_options;

namespace beadbook {
namespace {

ExitCode list_sets(const Args &args, Session &session) {
    nlohmann::json list = nlohmann::json::array();
    for (const auto &name : shipped_sets()) {
        const auto set = shipped_criteria(name);
        if (args.flag("json"))
            list.push_back({{"set", set->name},
                            {"title", set->title},
                            {"edition", set->edition},
                            {"classes", set->class_names()},
                            {"rules", set->rules.size()},
                            {"hash", set->hash}});
        else
            session.out << padded(name, 24) << set->title << " (" << set->edition << "); classes "
                        << listed(set->class_names()) << "\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

std::string condition_words(const Rule &rule) {
    std::string out;
    for (const auto *list : {&rule.when, &rule.where})
        for (const auto &c : *list) out += (out.empty() ? "" : ", ") + c.text;
    return out;
}

std::string measure_words(const Rule &rule) {
    switch (rule.kind) {
    case Rule::Kind::each: return rule.measure.text;
    case Rule::Kind::gap: return "gap";
    case Rule::Kind::sum: return "sum of " + std::string(info(rule.summed).name);
    case Rule::Kind::count: return "count";
    case Rule::Kind::combine: return "types at the borderline";
    case Rule::Kind::presence: break;
    }
    return "allowed";
}

nlohmann::json rule_json(const CriteriaSet &set, const Rule &rule) {
    nlohmann::json out{
        {"id", rule.id}, {"title", rule.title}, {"clause", rule.clause}, {"measure", measure_words(rule)}};
    if (rule.kind != Rule::Kind::presence) out["compare"] = name_of(rule.compare);
    if (const auto words = condition_words(rule); !words.empty()) out["conditions"] = words;
    if (rule.window) out["window"] = rule.window->text;
    if (rule.linked) out["linked"] = rule.linked->text;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        out["limits"][set.classes[c].id] = {{"limit", rule.limits[c].text},
                                            {"standing", name_of(rule.standings[c].kind)},
                                            {"source", rule.standings[c].source}};
    return out;
}

ExitCode show_set(const Args &args, Session &session) {
    const auto set = open_criteria(args.at(1));
    if (args.flag("json")) {
        nlohmann::json rules = nlohmann::json::array(), gaps = nlohmann::json::array();
        for (const auto &rule : set->rules) rules.push_back(rule_json(*set, rule));
        for (const auto &gap : set->gaps) gaps.push_back(gap.text);
        session.out << nlohmann::json{{"set", set->name},
                                      {"title", set->title},
                                      {"edition", set->edition},
                                      {"source", set->source},
                                      {"classes", set->class_names()},
                                      {"hash", set->hash},
                                      {"rules", rules},
                                      {"gaps", gaps}}
                           .dump(2)
                    << "\n";
        return ExitCode::done;
    }
    session.out << set->title << "\n" << set->edition << "; " << set->source << "\n" << set->notes << "\n\n";
    for (const auto &rule : set->rules) {
        session.out << rule.id << ": " << rule.title << "\n  ";
        if (const auto words = condition_words(rule); !words.empty())
            session.out << "where " << words << ": ";
        session.out << measure_words(rule);
        if (rule.window) session.out << " in any " << rule.window->text;
        if (rule.linked) session.out << " of a line (" << rule.linked->text << ")";
        session.out << (rule.kind == Rule::Kind::presence ? "" : " " + std::string(name_of(rule.compare)));
        for (std::size_t c = 0; c < set->classes.size(); ++c)
            session.out << (c > 0 ? ";" : "") << " " << set->classes[c].id << ": " << rule.limits[c].text
                        << (rule.standings[c].kind == Standing::Kind::memory ? " (memory)" : "");
        session.out << "\n  [" << rule.clause << "; " << name_of(rule.standings[0].kind) << ": "
                    << rule.standings[0].source << "]\n";
        if (!rule.reading.empty()) session.out << "  our reading: " << rule.reading << "\n";
    }
    if (!set->gaps.empty()) session.out << "\nKnown gaps:\n";
    for (const auto &gap : set->gaps) session.out << "  - " << gap.text << "\n";
    session.out << "\n" << caution;
    return ExitCode::done;
}

/// The text of a set: a shipped one or a file.
std::string text_of(const std::string &name, Session &session) {
    const auto shipped = shipped_sets();
    const bool built_in = std::find(shipped.begin(), shipped.end(), name) != shipped.end();
    return built_in ? shipped_file(name + ".yaml") : read_input(name, session);
}

ExitCode check_set(const Args &args, Session &session) {
    const std::string text = text_of(args.at(1), session);
    const Loaded loaded = load_criteria(text);
    for (const auto &issue : loaded.issues) session.err << print(issue, args.at(1), text);
    if (!loaded.set) return ExitCode::bad_data;
    session.out << args.at(1) << ": " << loaded.set->rules.size() << " rules hold\n";
    if (args.flag("coverage"))
        for (const auto &one : uncovered_types(*loaded.set, Vocabulary::shipped()))
            session.out << name_of(one.exam) << ", always 'cannot say': " << listed(one.types) << "\n";
    return ExitCode::done;
}

ExitCode list_types(Session &session) {
    const Vocabulary &v = Vocabulary::shipped();
    for (std::size_t t = 0; t < v.size(); ++t) {
        const ImperfectionType &type = v[static_cast<TypeId>(t)];
        session.out << type.quick << std::string(6 - type.quick.size(), ' ') << type.iso
                    << std::string(6 - type.iso.size(), ' ') << type.name
                    << (type.also.empty() ? "" : " (" + listed(type.also) + ")") << "\n";
    }
    return ExitCode::done;
}

ExitCode run_criteria(const Args &args, Session &session) {
    const std::string &verb = args.at(0);
    if (verb == "list" && args.positional().size() == 1) return list_sets(args, session);
    if (verb == "types" && args.positional().size() == 1) return list_types(session);
    if (verb == "show" && args.positional().size() == 2) return show_set(args, session);
    if (verb == "check" && args.positional().size() == 2) return check_set(args, session);
    throw UsageError("expected list, types, show SET or check SET");
}

} // namespace

Command criteria_command() {
    return {"criteria",
            "list | types | show SET | check SET",
            "the criteria sets, their rules with clause and standing, and the words for imperfections",
            "SET is a shipped name or a file. The language is described in criteria/README.md.",
            "beadbook criteria check my-shop.yaml --coverage",
            1,
            2,
            [](po::options_description &o) {
                o.add_options()("coverage", po::bool_switch(),
                                "with check: types of imperfection that no rule speaks of");
                add_json(o);
            },
            run_criteria};
}

} // namespace beadbook
