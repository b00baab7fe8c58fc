// How exams are done: whether they were valid, which method finds what, the technicians' arithmetic.
#include "cli/command.hpp"
#include "operations/computing.hpp"
#include "operations/described.hpp"
#include "operations/exam_validity.hpp"
#include "operations/finding.hpp"
#include "render/json_technique.hpp"
#include "report/technique_document.hpp"

namespace beadbook {
namespace {

ExitCode run_valid(Call &call) {
    const CouponValidity validity = exam_validity(call.office(), call.at(0));
    call.tell(validity);
    return code_of(validity.all);
}

ExitCode run_methods(Call &call) {
    return call.tell(methods_for(call.catalogue(), coupon_meant(call), call.all("look-for")));
}

ExitCode run_compute(Call &call) {
    const auto &words = call.words();
    if (words.empty()) return call.tell(all_calculations());
    if (words.size() > 1) return call.tell(calculate(words[0], {words.begin() + 1, words.end()}));
    const CalculationWanted wanted = calculation_wanted(words[0]);
    call.tell(wanted);
    if (!call.json())
        call.session().out << "Example:\n  beadbook compute " << words[0] << " "
                           << wanted.calculation->example << "\n";
    return ExitCode::done;
}

} // namespace

std::vector<Command> technique_commands() {
    return {
        looks(For::technician, run_valid, R"(valid COUPON
whether its exams were valid by their practices: each condition with the reason
valid T-7
Ends with 0 if all are valid, 1 if one is not, 5 if a condition is missing. An exam that is not valid
fulfils no requirement, so the verdict is 'cannot say'; what it found still counts.)"),
        looks(For::technician, run_methods, R"(methods [COUPON]
which methods can find which imperfections on this coupon, and why
methods --joint fillet --magnetic no --look-for crack --look-for porosity)",
              options(Option{"look-for", "TYPE", "an imperfection; may be repeated", 0, true},
                      coupon_field_options())),
        looks(For::technician, run_compute, R"(compute [NAME [INPUT=VALUE ...]]
the technicians' arithmetic: amperes, unsharpness, IQI, decay, dwell, throat, arc ...
compute unsharpness focal=3mm distance=100cm behind=50cm
Alone it lists the calculations; with a name it tells the inputs. It prints the formula, what was put in,
and the source. Settings and estimates: no verdict rests on them.)"),
    };
}

} // namespace beadbook
