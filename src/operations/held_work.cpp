#include "operations/held_work.hpp"

namespace beadbook {

std::vector<HeldTest> held_tests(const std::vector<HeldQualification> &held) {
    std::vector<HeldTest> out;
    for (const auto &one : held) {
        out.push_back({one.record.number, one.rules, one.weld, one.record.test.unit(), one.validity,
                       one.range, one.aside, one.record.carried()});
        if (one.record.carried()) out.back().validity.reason += "; carried in with a paper";
    }
    return out;
}

Done<HeldWork> held_work(Office &office, const HeldWorkRequest &request) {
    const Day on = request.on.value_or(office.outside().today());
    const auto held = held_tests(held_by(office, request.welder, on));
    auto plan = plan_work(office.catalogue(), request.plan, held);
    return {{request.welder, on, std::move(plan.value)}, std::move(plan.notes)};
}

} // namespace beadbook
