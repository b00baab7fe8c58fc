#include "operations/ending.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

void add_certificates(const PersonRecord &person, std::vector<Ending> &out) {
    std::map<Exam, const Certificate *> last;
    for (const auto &one : person.certificates) {
        const Certificate *&best = last[one.method];
        if (!best || one.until.value_or(Day::max()) > best->until.value_or(Day::max())) best = &one;
    }
    for (const auto &[method, one] : last)
        if (one->until)
            out.push_back({Ending::What::certificate, person.name, name_of(*one), *one->until, 0});
}

} // namespace

std::vector<Ending> endings(Office &office, Day on, Day through) {
    const Period year = parse_period("1 year");
    std::vector<Ending> out;
    for (const auto &name : office.book().people()) {
        const PersonRecord person = office.book().person(name).record;
        add_certificates(person, out);
        // Of somebody who does not examine no vision is asked.
        if (!person.vision.empty() && !person.certificates.empty())
            out.push_back({Ending::What::vision, name, "", person.vision.back().on + year, 0});
    }
    for (const auto &serial : office.book().all_equipment()) {
        const EquipmentRecord one = office.book().equipment(serial).record;
        if (!one.withdrawn && !one.calibrations.empty() && one.calibrations.back().until)
            out.push_back({Ending::What::calibration, serial, one.kind, *one.calibrations.back().until, 0});
    }
    for (auto &one : out) one.days_left = (one.by - on).count();
    std::erase_if(out, [&](const Ending &one) { return one.by > through; });
    std::stable_sort(out.begin(), out.end(), [](const Ending &a, const Ending &b) { return a.by < b.by; });
    return out;
}

} // namespace beadbook
