// From a graded coupon, or from a paper, to a qualification: qualify, carry, renew.
#include "cli/deeds.hpp"
#include "operations/marks.hpp"
#include "operations/qualifying_many.hpp"
#include "records/files.hpp"
#include "render/json_standing.hpp"
#include "terminal/selection_options.hpp"

#include <filesystem>

namespace beadbook {
namespace {

RuleWords rule_words_given(const Call &call) {
    RuleWords out;
    for (const Trait trait : rule_words())
        if (const std::string field = field_of(trait); call.has(field)) out[field] = call.text(field);
    return out;
}

ExitCode qualify_several(Call &call, const std::vector<std::string> &marks) {
    if (call.has("override"))
        throw UsageError(
            "--override sets aside what one coupon lacks; qualify that coupon by itself with its "
            "reason, and the others without");
    const QualifyManyRequest request{marks, selection_of(call), call.text("rules"), call.text("way"),
                                     rule_words_given(call)};
    auto done = call.write([&](Writing &w) { return qualify_many(w, request); });
    const QualifiedMany &value = done.value;
    for (auto &note : notes_on_empty(
             call, request.of, value.granted.empty() && value.lacking.empty() && value.passed_over.empty()))
        done.notes.push_back(std::move(note));
    call.tell(done);
    return value.lacking.empty() ? ExitCode::done : ExitCode::rejected;
}

ExitCode run_qualify(Call &call) {
    if (call.has("all") != call.words().empty()) throw UsageError("give one COUPON, several, or --all");
    if (call.has("all")) return qualify_several(call, {});
    check_no_selection(call);
    if (const auto marks = marks_in(call.at(0)); marks.size() > 1) return qualify_several(call, marks);
    const QualifyRequest request{one_mark(call.at(0)), call.text("rules"), call.text("way"),
                                 rule_words_given(call), call.text("override")};
    return call.tell(call.write([&](Writing &w) { return qualify(w, request); }));
}

ExitCode run_carry(Call &call) {
    CarryRequest request{call.at(0), call.text("rules"), call.text("way"),     call.coupon_fields(),
                         {},         call.has("sure"),   call.text("override")};
    if (call.has("document")) {
        const std::string path = call.text("document");
        // One byte more than may be kept is enough to be refused.
        request.paper = {std::filesystem::path(path).filename().string(),
                         read_bytes(path, largest_paper + 1)};
    }
    return call.tell(call.write([&](Writing &w) { return carry(w, request); }));
}

ExitCode run_renew(Call &call) {
    const auto &words = call.words();
    const RenewRequest request{words.at(0),
                               whole_number(words.at(1), "number of a qualification"),
                               {words.begin() + 2, words.end()},
                               rule_words_given(call),
                               call.text("override")};
    return call.tell(call.write([&](Writing &w) { return renew(w, request); }));
}

} // namespace

Deeds qualifying_deeds() { return {{"qualify", run_qualify}, {"carry", run_carry}, {"renew", run_renew}}; }

} // namespace beadbook
