// Criteria sets, rules for welders and practices: list, show, check a file of one's own.
#include "operations/catalogue.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "render/json_criteria.hpp"
#include "render/json_practice.hpp"
#include "render/json_rules.hpp"
#include "report/cases_document.hpp"
#include "report/check_document.hpp"
#include "report/criteria_document.hpp"
#include "report/practice_document.hpp"
#include "report/rules_document.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Whether the call is this verb, with so many words after it.
bool is(const Args &args, std::string_view verb, std::size_t more) {
    return args.at(0) == verb && args.positional().size() == 1 + more;
}

/// The mistakes go to the error stream, where editors look for them; in JSON they are part of the answer.
template <class Checked>
ExitCode tell_check(const Args &args, Session &session, const Checked &checked) {
    const bool words = !args.flag("json");
    if (words) session.err << text(issues_document(checked));
    if (words && !checked.value)
        session.err << text(document_of(checked));
    else
        tell(args, session, checked);
    return checked.value ? ExitCode::done : ExitCode::bad_data;
}

ExitCode run_cases(const Args &args, Session &session, Shop &shop) {
    if (args.positional().size() == 1) {
        const auto all = try_all_cases(shop.catalogue());
        tell(args, session, all);
        return code_of(
            std::all_of(all.begin(), all.end(), [](const TriedCases &one) { return one.failed() == 0; })
                ? Verdict::accept
                : Verdict::reject);
    }
    const TriedCases tried = try_cases(shop.catalogue(), input_named(args.at(1), session));
    tell(args, session, tried);
    return code_of(tried.failed() == 0 ? Verdict::accept : Verdict::reject);
}

ExitCode run_criteria(const Args &args, Session &session) {
    Shop shop(args, session);
    if (is(args, "check", 1))
        return tell_check(
            args, session,
            check_criteria(shop.catalogue(), input_named(args.at(1), session), args.flag("coverage")));
    if (is(args, "cases", 0) || is(args, "cases", 1)) return run_cases(args, session, shop);
    if (is(args, "list", 0))
        tell(args, session, all_criteria(shop.catalogue()));
    else if (is(args, "types", 0))
        tell(args, session, imperfection_types());
    else if (is(args, "show", 1))
        tell(args, session, *shop.catalogue().criteria(args.at(1)));
    else
        throw UsageError("expected list, types, show SET, check SET or cases [SET]");
    return ExitCode::done;
}

ExitCode run_rules(const Args &args, Session &session) {
    Shop shop(args, session);
    if (is(args, "check", 1))
        return tell_check(args, session, check_rules(shop.catalogue(), input_named(args.at(1), session)));
    if (is(args, "list", 0))
        tell(args, session, all_rules(shop.catalogue()));
    else if (is(args, "show", 1))
        tell(args, session, *shop.catalogue().rules(args.at(1)));
    else
        throw UsageError("expected list, show RULES or check FILE");
    return ExitCode::done;
}

ExitCode run_practice(const Args &args, Session &session) {
    Shop shop(args, session);
    if (is(args, "check", 1))
        return tell_check(args, session, check_practice(shop.catalogue(), input_named(args.at(1), session)));
    if (is(args, "list", 0))
        tell(args, session, all_practices(shop.catalogue()));
    else if (is(args, "conditions", 0))
        tell(args, session, known_conditions());
    else if (is(args, "show", 1))
        tell(args, session, *shop.catalogue().practice(args.at(1)));
    else
        throw UsageError("expected list, conditions, show PRACTICE or check FILE");
    return ExitCode::done;
}

} // namespace

Command criteria_command() {
    return {"criteria",
            "list | types | show SET | check SET | cases [SET]",
            "the criteria sets, their rules with clause and standing, and the words for imperfections",
            "SET is a shipped name or a file. The language is described in criteria/README.md. 'cases' "
            "judges the worked cases\n"
            "beside the sets, or those of a file, and says which rule was never decisive and which limit "
            "never tried.",
            "beadbook criteria check my-shop.yaml --coverage",
            1,
            2,
            {{"coverage", "", "with check: types of imperfection that no rule speaks of"}, json_option()},
            run_criteria};
}

Command rules_command() {
    return {"rules",
            "list | show RULES | check FILE",
            "rules for welders: list them, show one, or check a file of your own",
            "criteria/welder/README.md tells the language.",
            "beadbook rules show asme-ix",
            1,
            2,
            {json_option()},
            run_rules};
}

Command practice_command() {
    return {"practice",
            "list | conditions | show PRACTICE | check FILE",
            "practices that exams are held against: list, show, check a file of your own",
            "criteria/technique/README.md tells the language.",
            "beadbook practice show asme-v-pt",
            1,
            2,
            {json_option()},
            run_practice};
}

} // namespace beadbook
