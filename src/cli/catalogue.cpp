// Criteria sets, rules for welders and practices: list, show, check a file of one's own.
#include "operations/catalogue.hpp"
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "operations/described.hpp"
#include "render/json_comparing.hpp"
#include "render/json_criteria.hpp"
#include "render/json_practice.hpp"
#include "render/json_rules.hpp"
#include "report/boundaries_document.hpp"
#include "report/cases_document.hpp"
#include "report/check_document.hpp"
#include "report/criteria_document.hpp"
#include "report/practice_document.hpp"
#include "report/rules_document.hpp"
#include "terminal/page.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Whether the call is this verb, with so many words after it.
bool is(const Call &call, std::string_view verb, std::size_t more) {
    return call.at(0) == verb && call.words().size() == 1 + more;
}

/// A word that is none of them is named.
void refuse_verb(const Call &call, const std::vector<std::string> &verbs) {
    const std::string &said = call.at(0);
    if (std::find(verbs.begin(), verbs.end(), said) == verbs.end())
        throw UsageError("'" + shown(said) + "' is nothing that is done here; expected " +
                         listed(verbs, "or") + did_you_mean(said, verbs));
}

/// The mistakes go to the error stream, where editors look for them; in JSON they are part of the answer.
template <class Checked>
ExitCode tell_check(Call &call, const Checked &checked) {
    if (!call.json()) call.session().err << text(issues_document(checked));
    if (!call.json() && !checked.value)
        call.session().err << text(document_of(checked));
    else
        call.tell(checked);
    return checked.value ? ExitCode::done : ExitCode::bad_data;
}

/// As the record has it filled and confirmed, where there is a record.
std::shared_ptr<const CriteriaSet> set_named(Call &call, const std::string &name) {
    return call.has_record() ? call.office().criteria(name) : call.catalogue().criteria(name);
}

ExitCode run_boundaries(Call &call) {
    if (call.words().size() != 2)
        throw UsageError("expected one set, as in 'criteria cases SET --boundaries'");
    const Boundaries all = boundaries_of(call.catalogue(), call.at(1), set_named(call, call.at(1)));
    call.tell(all);
    return all.disagreeing() == 0 ? ExitCode::done : ExitCode::rejected;
}

/// As it is: an editor reads it.
ExitCode run_schema(Call &call) {
    call.session().out << editor_schema(call.words().size() > 1 ? call.at(1) : "criteria");
    return ExitCode::done;
}

/// How the values on both sides of each limit are asked for.
std::string table_of_limits(const std::string &set) {
    return "'criteria cases " + shown(set) + " --boundaries' makes a table of both sides of each limit";
}

TriedCases tried_cases(Call &call) {
    try {
        return try_cases(call.catalogue(), call.source(call.at(1)));
    } catch (const SetForCases &e) {
        throw DataError(e.what() + ("; " + table_of_limits(call.at(1))));
    }
}

ExitCode run_cases(Call &call) {
    if (call.has("boundaries")) return run_boundaries(call);
    const auto holds = [](const TriedCases &one) { return one.failed() == 0; };
    bool all_hold = false;
    if (call.words().size() == 1) {
        const auto all = try_all_cases(call.catalogue());
        call.tell(all);
        all_hold = std::all_of(all.begin(), all.end(), holds);
    } else {
        const TriedCases tried = tried_cases(call);
        call.tell(tried);
        all_hold = holds(tried);
    }
    return all_hold ? ExitCode::done : ExitCode::rejected;
}

ExitCode run_picture(Call &call) {
    const LimitCurves curves =
        limit_curves(set_named(call, call.at(1)), described_coupon(call.coupon_fields()));
    return wants_page(call) ? tell_bare_page(call, document_of(curves)) : call.tell(curves);
}

/// The sheet that an engineer signs.
ExitCode show_page(Call &call) {
    if (!call.coupon_fields().empty())
        throw UsageError("a description of the coupon goes with picture and compare");
    Document doc = document_of(*set_named(call, call.at(1)));
    doc.add(Signatures{{"held against the owner's copy by, date", "approved by, date"}});
    return tell_bare_page(call, doc);
}

ExitCode run_compare(Call &call) {
    CompareRequest request;
    std::map<std::string, std::string> fields = call.coupon_fields();
    if (const auto id = fields.extract("class")) request.class_id = id.mapped();
    request.as_class = call.text("as-class");
    request.coupon = described_coupon(fields);
    const auto first = set_named(call, call.at(1));
    const ComparedSets compared =
        compare_sets(first, call.words().size() > 2 ? set_named(call, call.at(2)) : first, request);
    return wants_page(call) ? tell_bare_page(call, document_of(compared)) : call.tell(compared);
}

ExitCode run_criteria(Call &call) {
    Catalogue &catalogue = call.catalogue();
    const bool of_limits = call.at(0) == "boundaries" || call.at(call.words().size() - 1) == "boundaries";
    if (call.at(0) != "cases" && call.has("boundaries"))
        throw UsageError("--boundaries goes with cases: " +
                         table_of_limits(call.words().size() > 1 ? call.at(1) : "SET"));
    if (of_limits && call.words().size() > 1)
        throw UsageError("'boundaries' is an option: " + table_of_limits(call.at(1)));
    if (is(call, "picture", 1)) return run_picture(call);
    if (is(call, "compare", 1) || is(call, "compare", 2)) return run_compare(call);
    if (is(call, "show", 1) && wants_page(call)) return show_page(call);
    if (wants_page(call) || !call.coupon_fields().empty() || call.has("as-class"))
        throw UsageError(
            "a page and a description of the coupon go with picture and compare, a page with show too");
    if (is(call, "check", 1))
        return tell_check(call, check_criteria(catalogue, call.source(call.at(1)), call.has("coverage")));
    if (is(call, "cases", 0) || is(call, "cases", 1)) return run_cases(call);
    if (is(call, "schema", 0) || is(call, "schema", 1)) return run_schema(call);
    if (is(call, "list", 0)) return call.tell(all_criteria(catalogue));
    if (is(call, "types", 0)) return call.tell(imperfection_types());
    if (is(call, "show", 1)) return call.tell(*set_named(call, call.at(1)));
    refuse_verb(call, {"list", "types", "show", "picture", "compare", "check", "cases", "schema"});
    throw UsageError("expected list, types, show SET, picture SET, compare SET [OTHER], check SET, "
                     "cases [SET] or schema [KIND]");
}

ExitCode run_rules(Call &call) {
    Catalogue &catalogue = call.catalogue();
    if (is(call, "check", 1)) return tell_check(call, check_rules(catalogue, call.source(call.at(1))));
    if (is(call, "list", 0)) return call.tell(all_rules(catalogue));
    if (is(call, "show", 1)) return call.tell(*catalogue.rules(call.at(1)));
    refuse_verb(call, {"list", "show", "check"});
    throw UsageError("expected list, show RULES or check FILE");
}

ExitCode run_practice(Call &call) {
    Catalogue &catalogue = call.catalogue();
    if (is(call, "check", 1)) return tell_check(call, check_practice(catalogue, call.source(call.at(1))));
    if (is(call, "list", 0)) return call.tell(all_practices(catalogue));
    if (is(call, "conditions", 0)) return call.tell(known_conditions());
    if (is(call, "show", 1)) return call.tell(*catalogue.practice(call.at(1)));
    refuse_verb(call, {"list", "conditions", "show", "check"});
    throw UsageError("expected list, conditions, show PRACTICE or check FILE");
}

} // namespace

Deeds catalogue_deeds() {
    return {{"criteria", run_criteria}, {"rules", run_rules}, {"practice", run_practice}};
}

} // namespace beadbook
