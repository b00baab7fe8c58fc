// Many coupons told in one: summary, rejudge, learner.
#include "cli/command.hpp"
#include "cli/page.hpp"
#include "cli/selection_options.hpp"
#include "measure/text.hpp"
#include "operations/learner.hpp"
#include "operations/rejudging.hpp"
#include "operations/summarizing.hpp"
#include "render/json_judging.hpp"
#include "render/json_rejudging.hpp"
#include "render/json_summary.hpp"

namespace beadbook {
namespace {

/// What is asked for, and beside it the same of another cohort, or of another welder where one is named.
ExitCode run_summary(Call &call) {
    std::vector<Selection> groups{selection_of(call)};
    if (call.has("against")) {
        Selection other = groups.front();
        std::string &differs = other.welder.empty() ? other.cohort : other.welder;
        if (differs.empty())
            throw UsageError(
                "--against names a second cohort or welder; give the first with --cohort or --welder");
        if (differs == call.text("against"))
            throw UsageError("'" + shown(differs) + "' against itself; --against names another one");
        differs = call.text("against");
        groups.push_back(std::move(other));
    }
    const Summaries summaries = summarize(call.whole_shops(), groups);
    std::vector<std::string> notes;
    for (const auto &group : summaries.groups)
        for (auto &note : notes_on_empty(call, group.of, group.summary.all.coupons == 0))
            notes.push_back(std::move(note));
    if (!wants_page(call)) return call.tell(summaries, notes);
    call.say(notes);
    return tell_page(call, document_of(summaries));
}

ExitCode run_rejudge(Call &call) {
    const RejudgeRequest request{call.words().empty() ? "" : call.at(0), call.text("as-class"),
                                 selection_of(call)};
    if (request.criteria.empty() && !request.class_id.empty())
        throw UsageError("--as-class is a class of the other SET; name that too");
    const Rejudged done = rejudge(call.whole_office(), request);
    return wants_page(call) ? tell_page(call, document_of(done)) : call.tell(done);
}

ExitCode run_learner(Call &call) {
    Selection of = selection_of(call);
    of.welder = call.at(0);
    const Learner learner = learner_of(call.office(), of);
    if (!wants_page(call)) return call.tell(learner);
    return tell_page(call, document_of(learner), sets_of(learner));
}

/// All but whose they are, which a word says.
std::vector<Option> selection_of_one_welder() {
    std::vector<Option> out;
    for (auto &option : selection_options())
        if (option.name != "welder") out.push_back(std::move(option));
    return out;
}

} // namespace

std::vector<Command> listing_commands() {
    return {
        looks(For::instructor, run_summary, R"(summary
how many coupons came out how: by imperfection, rule, place, joint, welder and week
summary --cohort autumn-2026 --against spring-2026
Verdicts are taken afresh, for the class that a coupon was registered with. Decided is what is accepted or rejected;
what failed its mechanical tests is not accepted. The first-pass yield is the share accepted of each welder's first
coupon of a kind: same joint, form, position, process, criteria, class and purpose; first by the day it was welded, on
one day by the mark, without a day last. Shares have their exact 95 % interval (Clopper-Pearson). Withdrawn coupons are left
out. A find counts in the quarter of the weld where it begins.)",
              options(Option{"against", "NAME",
                             "beside it another cohort, or another welder where --welder is given"},
                      page_options(), selection_options())),
        looks(For::instructor, run_rejudge, R"(rejudge [SET]
which verdicts would differ by another criteria set, edition or class, and by which rules
rejudge iso-5817-2023 --cohort autumn-2026
Every coupon is judged by its own criteria and by SET, in one pass; nothing is stored. Without SET the text that its last
verdict kept is held against the same set as it is now: what a new edition or a changed file would change. Of a
coupon that was judged since the change the last verdict kept the new text, so it differs no more; 'history' has both.)",
              options(
                  Option{"as-class", "CLASS", "class of SET (default the one called like the coupon's own)"},
                  page_options(), selection_options())),
        looks(For::welder, run_learner, R"(learner WELDER
everything for one learner: coupons, verdicts with why, what to change, grades and remarks
learner L1 --html L1.html
WELDER is the mark or name that the coupons give. 'welder' tells what the welder holds; 'print learner' prints many.)",
              options(page_options(), selection_of_one_welder())),
    };
}

} // namespace beadbook
