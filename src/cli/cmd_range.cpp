#include "cli/shared.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "report/range_report.hpp"

namespace po = boost::program_options;

namespace beadbook {
namespace {

ExitCode run_range(const Args &args, Session &session) {
    const auto rules = needed_rules(args);
    CouponRecord coupon;
    if (!args.positional().empty())
        coupon = open_book(args, session, Ledger::Mode::read).coupon(args.at(0)).record;
    take_coupon_fields(coupon, args);
    if (coupon.fields.empty())
        throw UsageError("of which test? name a COUPON, or say what it is: --joint groove ...");
    nlohmann::json list = nlohmann::json::array();
    for (const Weld &test : welds_of(coupon)) {
        for (std::size_t i = 0; i < word_traits; ++i)
            if (const auto trait = static_cast<Trait>(i); test.knows(trait))
                check_word(*rules, trait, true, test.word(trait));
        const auto range = range_of(*rules, test);
        if (args.flag("json")) {
            list.push_back(
                {{"test", weld_json(test, coupon.unit())}, {"range", range_json(range, coupon.unit())}});
            continue;
        }
        session.out << session.paint().strong("Test: " + print(test, coupon.unit())) << "\nqualifies by "
                    << rules->title << " (" << rules->edition << "):\n\n"
                    << explain_range(*rules, range, coupon.unit()) << "\n";
    }
    if (args.flag("json"))
        session.out << nlohmann::json{{"rules", rules->name},
                                      {"edition", rules->edition},
                                      {"hash", rules->hash},
                                      {"gaps", rules->gaps},
                                      {"tests", list}}
                           .dump(2)
                    << "\n";
    else
        session.out << caution;
    return ExitCode::done;
}

} // namespace

Command range_command() {
    return {
        "range",
        "[COUPON]",
        "what a test would qualify, with the rule behind each part",
        "Of a coupon on record, or of one that the options describe. A coupon of several processes is one "
        "test of each.",
        "beadbook range --rules aws-d17.1 --joint groove --form tube --process GTAW --position 6G "
        "--thickness 0.045in --metal-group IIa",
        0,
        1,
        [](po::options_description &o) {
            o.add_options()("rules", po::value<std::string>()->value_name("RULES"),
                            "rules for welders: a shipped name or a file");
            add_coupon_fields(o);
            add_json(o);
        },
        run_range};
}

} // namespace beadbook
