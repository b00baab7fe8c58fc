// renew: coupons bring back what lapsed.
#include "measure/text.hpp"
#include "operations/fates.hpp"
#include "operations/qualifying.hpp"
#include "operations/retest_notes.hpp"
#include "operations/vouching.hpp"

#include <algorithm>
#include <set>

namespace beadbook {

Done<StandingChange> renew(Writing &writing, const RenewRequest &request) {
    if (request.coupons.empty()) throw lacking("coupon", "by which coupon?");
    Office &office = writing.office();
    const Day today = writing.outside().today();
    const WelderState welder = office.book().welder(request.mark);
    check_vouches(office, writing.stamp().who, request.mark, "renews what is held");
    const HeldQualification held = held_by(office, welder, request.number, today);
    const std::string process = held.weld.word(Trait::process);
    if (!held.rules->renewal)
        throw refused("by " + held.rules->name +
                      " nothing renews a lapsed qualification; a new test is needed")
            .mend({"qualify", {}, {"rules"}});
    if (held.validity.state != Validity::State::lapsed)
        throw refused(title_of(held) + " is " + std::string(name_of(held.validity.state)) +
                      ", not lapsed; there is nothing to renew");
    const GradedTests tests(office, welder);
    for (const auto &coupon : request.coupons) keep_if_refused(writing, coupon);
    GivenCoupons given =
        evidence_of(office, tests, request.mark, process, *held.rules, request.coupons, request.words);
    std::vector<Impediment> early;
    for (std::size_t i = 0; i < given.welded.size(); ++i)
        if (given.welded[i] <= *held.validity.until)
            early.push_back({"coupon " + request.coupons[i] + " was welded on " + print(given.welded[i]) +
                                 ", before it lapsed",
                             {}});
    if (!early.empty()) throw refusal_of(early);
    const CouponsAsked &asked = *held.rules->renewal;
    // After one that failed, in whatever position, as many as of a retest.
    const int needed = std::max(asked.coupons, held.renewed_by);
    std::set<std::string> proving;
    for (const auto &one : given.evidence)
        for (auto &coupon : Fates::coupons_of(one)) proving.insert(std::move(coupon));
    if (static_cast<int>(proving.size()) < needed) {
        Shortcoming fewer;
        fewer.kind = Shortcoming::Kind::coupons;
        fewer.asked = needed;
        fewer.given = static_cast<int>(proving.size());
        if (needed > asked.coupons) fewer.after = held.renewed_after;
        given.lacks.push_back(std::move(fewer));
    }
    const SetAside aside =
        set_aside(title_of(held) + " is not renewed", given.lacks, *held.rules, request.override_why);

    WelderEvent event;
    event.kind = "renewal";
    event.day = *std::max_element(given.welded.begin(), given.welded.end());
    event.process = process;
    event.rules = held.rules->name;
    event.text = checked_text((request.coupons.size() == 1 ? "coupon " : "coupons ") +
                                  listed(request.coupons) + " [" + authority(asked.from) + "]",
                              "renewal");
    event.evidence = std::move(given.evidence);
    event.overridden = aside.what;
    event.override_why = aside.why;
    WelderEvent kept = add_event(writing, request.mark, event);
    Done<StandingChange> out{
        {std::move(kept), held_by(office, office.book().welder(request.mark), request.number, today)}, {}};
    note_reason_unused(aside, request.override_why, out.notes);
    for (auto &note : retest_notes(tests, out.value.event.evidence, given.welded))
        out.notes.push_back(std::move(note));
    return out;
}

} // namespace beadbook
