// Many coupons told in one: summary, rejudge, learner.
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "operations/learner.hpp"
#include "operations/rejudging.hpp"
#include "operations/summarizing.hpp"
#include "render/json_judging.hpp"
#include "render/json_rejudging.hpp"
#include "render/json_summary.hpp"
#include "terminal/page.hpp"
#include "terminal/selection_options.hpp"

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
    const auto notes = notes_on_empty(call, of, learner.coupons.empty());
    if (!wants_page(call)) return call.tell(learner, notes);
    call.say(notes);
    return tell_page(call, document_of(learner), sets_of(learner));
}

/// All but whose they are, which a word says.
} // namespace

Deeds listing_deeds() {
    return {{"summary", run_summary}, {"rejudge", run_rejudge}, {"learner", run_learner}};
}

} // namespace beadbook
