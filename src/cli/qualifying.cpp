// From a graded coupon, or from a paper, to a qualification: qualify, carry, renew.
#include "operations/qualifying.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "render/json_standing.hpp"

#include <filesystem>
#include <fstream>

namespace beadbook {
namespace {

constexpr std::size_t most_coupons = 20; ///< of one renewal

std::vector<Option> rules_options() {
    return {{"rules", "RULES", "rules for welders: a shipped name or a file"},
            {"way", "WAY", "how it stays valid, where the rules know several ways"}};
}

std::vector<Option> rule_word_options() {
    std::vector<Option> out;
    for (const Trait trait : rule_words())
        out.push_back(
            {field_of(trait), "WORD", "what these rules call it, where the coupon has another word or none"});
    return out;
}

RuleWords rule_words_given(const Args &args) {
    RuleWords out;
    for (const Trait trait : rule_words())
        if (const std::string field = field_of(trait); args.has(field)) out[field] = args.text(field);
    return out;
}

Option override_option() {
    return {"override", "TEXT", "why what the rules ask beyond the evidence is set aside"};
}

ExitCode run_qualify(const Args &args, Session &session) {
    Shop shop(args, session);
    const QualifyRequest request{args.at(0), args.text("rules"), args.text("way"), rule_words_given(args),
                                 args.text("override")};
    tell(args, session, shop.write([&](Writing &w) { return qualify(w, request); }));
    return ExitCode::done;
}

/// A file of any bytes; how many a document may have is the operation's to say.
CarryRequest::Paper read_paper(const std::string &path) {
    std::ifstream in(path, std::ios::binary);
    std::error_code failed;
    const auto size = std::filesystem::file_size(path, failed);
    if (failed || !in) throw DataError(path + ": the document cannot be read");
    // One byte more than may be kept is enough to be refused.
    const auto wanted = std::min<std::uintmax_t>(size, largest_paper + 1);
    std::string bytes(static_cast<std::size_t>(wanted), '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    if (in.gcount() != static_cast<std::streamsize>(bytes.size()))
        throw DataError(path + ": the document cannot be read");
    return {std::filesystem::path(path).filename().string(), std::move(bytes)};
}

ExitCode run_carry(const Args &args, Session &session) {
    Shop shop(args, session);
    CarryRequest request{args.at(0), args.text("rules"), args.text("way"), coupon_fields_given(args),
                         {},         args.flag("sure")};
    if (args.has("document")) request.paper = read_paper(args.text("document"));
    tell(args, session, shop.write([&](Writing &w) { return carry(w, request); }));
    return ExitCode::done;
}

ExitCode run_renew(const Args &args, Session &session) {
    const auto &words = args.positional();
    const RenewRequest request{words.at(0),
                               whole_number(words.at(1), "qualification"),
                               {words.begin() + 2, words.end()},
                               rule_words_given(args),
                               args.text("override")};
    Shop shop(args, session);
    tell(args, session, shop.write([&](Writing &w) { return renew(w, request); }));
    return ExitCode::done;
}

} // namespace

Command qualify_command() {
    return {
        "qualify",
        "COUPON",
        "qualify the coupon's welder by a coupon that was graded passed",
        "Each process of the coupon is qualified by itself. Where the rules ask for examinations that are\n"
        "not on record, or for more coupons after a failed one, it is refused; --override sets that aside "
        "and\n"
        "keeps the reason.",
        "beadbook qualify T-7 --rules asme-ix",
        1,
        1,
        options(rules_options(), rule_word_options(), override_option(), by_option(), json_option()),
        run_qualify};
}

Command carry_command() {
    return {"carry",
            "WELDER",
            "carry a qualification in from elsewhere, with its paper",
            "The options say what was welded in that test. Continuity since then is logged with 'used'.",
            "beadbook carry L1 --rules asme-ix --document paper.pdf --welded 2026-03-02 --process SMAW "
            "--joint groove --form plate --position 3G",
            1,
            1,
            options(rules_options(), Option{"document", "FILE", "the paper; it is kept in the record"},
                    coupon_field_options(), sure_option(), by_option(), json_option()),
            run_carry};
}

Command renew_command() {
    return {"renew",
            "WELDER NUMBER COUPON ...",
            "renew a lapsed qualification by one or more coupons, where its rules allow that",
            "It renews all lapsed qualifications of the process by the same rules. A coupon must stand up to "
            "what\n"
            "'qualify' asks of one; --override sets aside what that sets aside there.",
            "beadbook renew L1 2 T-9",
            3,
            2 + most_coupons,
            options(rule_word_options(), override_option(), by_option(), json_option()),
            run_renew};
}

} // namespace beadbook
