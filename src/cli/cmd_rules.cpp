#include "cli/shared.hpp"

#include "criteria/shipped.hpp"
#include "measure/text.hpp"
#include "report/range_report.hpp"

namespace beadbook {
namespace {

ExitCode list_rules(const Args &args, Session &session) {
    nlohmann::json list = nlohmann::json::array();
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = shipped_range_rules(name);
        if (args.flag("json"))
            list.push_back({{"rules", name},
                            {"title", rules->title},
                            {"edition", rules->edition},
                            {"hash", rules->hash}});
        else
            session.out << padded(name, 16) << rules->title << " (" << rules->edition << ")\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

std::string allowance(const RangeRule &rule) {
    if (rule.by.empty()) return rule.text;
    std::string out;
    for (const auto &[word, allowed] : rule.by)
        out += (out.empty() ? "" : "; ") + word + ": " + listed(allowed);
    return out;
}

nlohmann::json rule_json(const RangeRule &rule) {
    return {{"id", rule.id},
            {"of", info(rule.of).name},
            {"test", rule.test.text},
            {"work", rule.work.text},
            {"allows", allowance(rule)},
            {"clause", rule.clause},
            {"standing", name_of(rule.standing.kind)},
            {"source", rule.standing.source}};
}

void show_validity(const RangeRules &rules, Session &session) {
    for (const auto &way : rules.validity) {
        session.out << "  way " << way.id << ": "
                    << (way.lasts ? "lasts " + way.lasts->text : std::string("no fixed end"));
        if (way.use_every)
            session.out << (way.kept_by_use ? ", goes on while used within every "
                                            : ", to be used within every ")
                        << (way.whole_months ? "so many calendar months: " : "") << way.use_every->text;
        session.out << " [" << authority(way.from) << "]\n";
        if (way.extension)
            session.out << "    extended by " << way.extension->adds.text << " on " << way.extension->welds
                        << " examined welds of the last " << way.extension->within.text << " ["
                        << authority(way.extension->from) << "]\n";
    }
    const auto step = [&](const std::string &name, int coupons, const Authority &from) {
        session.out << "  " << name << ": " << coupons << (coupons == 1 ? " coupon" : " coupons") << " ["
                    << authority(from) << "]\n";
    };
    if (const auto &s = rules.retest.immediate)
        step("retest at once, for each that failed", s->coupons, s->from);
    if (const auto &s = rules.retest.after_training) step("retest after training", s->coupons, s->from);
    if (rules.renewal) step("renewal of a lapsed one", rules.renewal->coupons, rules.renewal->from);
}

ExitCode show_rules(const Args &args, Session &session) {
    const auto rules = open_range_rules(args.at(1));
    if (args.flag("json")) {
        nlohmann::json list = nlohmann::json::array();
        for (const auto &rule : rules->rules) list.push_back(rule_json(rule));
        session.out << nlohmann::json{{"rules", rules->name},      {"title", rules->title},
                                      {"edition", rules->edition}, {"source", rules->source},
                                      {"hash", rules->hash},       {"ranges", list},
                                      {"gaps", rules->gaps}}
                           .dump(2)
                    << "\n";
        return ExitCode::done;
    }
    session.out << rules->title << "\n"
                << rules->edition << "; " << rules->source << "\n"
                << rules->notes << "\n";
    for (const auto &variable : rules->variables) {
        session.out << "\n"
                    << session.paint().strong(std::string(info(variable.of).name))
                    << (variable.work.text.empty() ? "" : " (limits work with " + variable.work.text + ")")
                    << "\n";
        for (const auto &rule : rules->rules) {
            if (rule.of != variable.of) continue;
            session.out << "  " << rule.id << ": ";
            if (!rule.test.text.empty()) session.out << "test " << rule.test.text << ": ";
            session.out << allowance(rule);
            if (!rule.work.text.empty()) session.out << ", for work " << rule.work.text;
            session.out << "\n    [" << rule.clause << "; " << name_of(rule.standing.kind) << ": "
                        << rule.standing.source << "]\n";
            if (!rule.reading.empty()) session.out << "    our reading: " << rule.reading << "\n";
        }
    }
    session.out << "\n" << session.paint().strong("validity") << "\n";
    show_validity(*rules, session);
    if (!rules->gaps.empty()) session.out << "\nKnown gaps:\n";
    for (const auto &gap : rules->gaps) session.out << "  - " << gap << "\n";
    session.out << "\n" << caution;
    return ExitCode::done;
}

ExitCode check_rules(const Args &args, Session &session) {
    const std::string text = read_input(args.at(1), session);
    const LoadedRules loaded = load_range_rules(text);
    for (const auto &issue : loaded.issues) session.err << print(issue, args.at(1), text);
    if (!loaded.rules) return ExitCode::bad_data;
    session.out << args.at(1) << ": " << loaded.rules->rules.size() << " ranges hold\n";
    return ExitCode::done;
}

ExitCode run_rules(const Args &args, Session &session) {
    const std::string &verb = args.at(0);
    if (verb == "list" && args.positional().size() == 1) return list_rules(args, session);
    if (verb == "show" && args.positional().size() == 2) return show_rules(args, session);
    if (verb == "check" && args.positional().size() == 2) return check_rules(args, session);
    throw UsageError("expected list, show RULES or check FILE");
}

} // namespace

Command rules_command() {
    return {"rules",
            "list | show RULES | check FILE",
            "rules for welders: list them, show one, or check a file of your own",
            "criteria/welder/README.md tells the language.",
            "beadbook rules show asme-ix",
            1,
            2,
            add_json,
            run_rules};
}

} // namespace beadbook
