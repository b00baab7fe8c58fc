// From a graded coupon, or from a paper, to a qualification: qualify, carry, renew.
#include "operations/qualifying.hpp"
#include "cli/command.hpp"
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

std::vector<Command> qualifying_commands() {
    const std::vector<Option> rules{{"rules", "RULES", "rules for welders: a shipped name or a file"},
                                    {"way", "WAY", "how it stays valid, where the rules know several ways"}};
    std::vector<Option> traits;
    for (const Trait trait : rule_words())
        traits.push_back(
            {field_of(trait), "WORD", "what these rules call it, where the coupon has another word or none"});
    const Option set_aside{"override", "TEXT", "why what the rules ask beyond the evidence is set aside"};
    return {
        enters(For::instructor, run_qualify, R"(qualify COUPON
qualify the coupon's welder by a coupon that was graded passed
qualify T-7 --rules asme-ix
Each process of the coupon is qualified by itself. Where the rules ask for examinations that are
not on record, or for more coupons after a failed one, it is refused; --override sets that aside and
keeps the reason.)",
               options(rules, traits, set_aside)),
        enters(For::instructor, run_carry, R"(carry WELDER
carry a qualification in from elsewhere, with its paper
carry L1 --rules asme-ix --document paper.pdf --welded 2026-03-02 --process SMAW --joint groove --form plate --position 3G
The options say what was welded in that test. Continuity since then is logged with 'used'.
After a failed test here it is refused as a coupon is; --override sets that aside and keeps the reason.)",
               options(rules, Option{"document", "FILE", "the paper; it is kept in the record"},
                       coupon_field_options(), sure_option(), set_aside)),
        enters(For::instructor, run_renew, R"(renew WELDER NUMBER COUPON ...
renew a lapsed qualification by one or more coupons, where its rules allow that
renew L1 2 T-9
It renews all lapsed qualifications of the process by the same rules. A coupon must stand up to what
'qualify' asks of one; --override sets aside what that sets aside there.)",
               options(traits, set_aside)),
    };
}

} // namespace beadbook
