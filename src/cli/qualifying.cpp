// From a graded coupon, or from a paper, to a qualification: qualify, carry, renew.
#include "operations/qualifying.hpp"
#include "cli/deeds.hpp"
#include "records/files.hpp"
#include "render/json_standing.hpp"

#include <filesystem>

namespace beadbook {
namespace {

RuleWords rule_words_given(const Call &call) {
    RuleWords out;
    for (const Trait trait : rule_words())
        if (const std::string field = field_of(trait); call.has(field)) out[field] = call.text(field);
    return out;
}

ExitCode run_qualify(Call &call) {
    const QualifyRequest request{call.at(0), call.text("rules"), call.text("way"), rule_words_given(call),
                                 call.text("override")};
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
