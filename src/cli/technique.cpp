// How exams are done: whether they were valid, which method finds what, the technicians' arithmetic.
#include "cli/deeds.hpp"
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

Deeds technique_deeds() { return {{"valid", run_valid}, {"methods", run_methods}, {"compute", run_compute}}; }

} // namespace beadbook
