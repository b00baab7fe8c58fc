// How exams are done: whether they were valid, which method finds what, the technicians' arithmetic.
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "operations/computing.hpp"
#include "operations/described.hpp"
#include "operations/exam_validity.hpp"
#include "operations/finding.hpp"
#include "render/json_technique.hpp"
#include "report/technique_document.hpp"

namespace beadbook {
namespace {

ExitCode run_valid(const Args &args, Session &session) {
    Shop shop(args, session);
    const CouponValidity validity = exam_validity(shop.office(), args.at(0));
    tell(args, session, validity);
    return code_of(validity.all);
}

ExitCode run_methods(const Args &args, Session &session) {
    Shop shop(args, session);
    const auto fields = coupon_fields_given(args);
    const CouponRecord coupon = args.positional().empty()
                                    ? described_coupon(fields)
                                    : described_coupon(shop.office(), args.at(0), fields);
    tell(args, session, methods_for(shop.catalogue(), coupon, args.all("look-for")));
    return ExitCode::done;
}

ExitCode run_compute(const Args &args, Session &session) {
    const auto &words = args.positional();
    if (words.empty()) {
        tell(args, session, all_calculations());
    } else if (words.size() == 1) {
        const CalculationWanted wanted = calculation_wanted(words[0]);
        tell(args, session, wanted);
        if (!args.flag("json"))
            session.out << "Example:\n  beadbook compute " << words[0] << " " << wanted.calculation->example
                        << "\n";
    } else {
        tell(args, session, calculate(words[0], {words.begin() + 1, words.end()}));
    }
    return ExitCode::done;
}

} // namespace

Command valid_command() {
    return {"valid",
            "COUPON",
            "whether its exams were valid by their practices: each condition with the reason",
            "Ends with 0 if all are valid, 1 if one is not, 5 if a condition is missing. An exam that is not "
            "valid\n"
            "fulfils no requirement, so the verdict is 'cannot say'; what it found still counts.",
            "beadbook valid T-7",
            1,
            1,
            {json_option()},
            run_valid};
}

Command methods_command() {
    return {"methods",
            "[COUPON]",
            "which methods can find which imperfections on this coupon, and why",
            "",
            "beadbook methods --joint fillet --magnetic no --look-for crack --look-for porosity",
            0,
            1,
            options(Option{"look-for", "TYPE", "an imperfection; may be repeated", 0, true},
                    coupon_field_options(), json_option()),
            run_methods};
}

Command compute_command() {
    return {"compute",
            "[NAME [INPUT=VALUE ...]]",
            "the technicians' arithmetic: amperes, unsharpness, IQI, decay, dwell, throat, arc ...",
            "Alone it lists the calculations; with a name it tells the inputs. It prints the formula, what "
            "was put in,\n"
            "and the source. Settings and estimates: no verdict rests on them.",
            "beadbook compute unsharpness focal=3mm distance=100cm behind=50cm",
            0,
            12,
            {json_option()},
            run_compute};
}

} // namespace beadbook
