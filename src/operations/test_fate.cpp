#include "operations/test_fate.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"
#include "operations/failure_seen.hpp"
#include "operations/granted_to.hpp"
#include "operations/weld_day.hpp"
#include "records/described_since.hpp"

#include <algorithm>
#include <functional>

namespace beadbook {
namespace {

/// The same where the gate would refuse it anew.
std::string aside_words(std::int64_t granted, bool carried) {
    return "; what is missing comes first, or else a reason that sets it aside: retract entry " +
           std::to_string(granted) + " and " + (carried ? "carry it in" : "qualify it") + " anew with that";
}

/// What the coupon of a test says of the weld otherwise than when it was granted; empty if nothing. What it
/// did not say then, and was said beside it for the grant, is no doubt once the coupon says the same.
std::string described_otherwise(Book &book, const QualificationRecord &record, std::int64_t granted,
                                const std::function<std::string()> &advice) {
    std::vector<std::string> out;
    for (const auto &[field, was, is] : said_otherwise_since(book.history(record.test.id), granted))
        if (describes_weld(field) && !(was.empty() && record.test.get(field) == is))
            out.push_back(field + " " + (was.empty() ? "not told" : was) + " is now " +
                          (is.empty() ? "not told" : is));
    return out.empty()
               ? ""
               : "coupon " + record.test.id + " is described otherwise since: " + listed(out) + advice();
}

/// A coupon that was graded failed after it had qualified somebody qualifies nobody.
void take_back(Fates &fates, const QualificationRecord &record, std::int64_t granted, Validity &validity) {
    for (const auto &coupon : test_coupons(record)) {
        const Fates::Fate &fate = fates.of(coupon);
        if (!fate.bears(record.overridden, granted)) continue;
        if (taken_away(validity.state)) return;
        validity.state = fate.doubt ? Validity::State::in_doubt : Validity::State::unproved;
        validity.until = fate.since;
        validity.use_by.reset();
        validity.reason = fate.why;
    }
}

} // namespace

std::vector<std::string> test_coupons(const QualificationRecord &record) {
    return record.evidence ? Fates::coupons_of(*record.evidence) : std::vector<std::string>{record.test.id};
}

void put_in_doubt(const std::string &why, Validity &validity) {
    if (why.empty() || taken_away(validity.state)) return;
    validity.state = Validity::State::in_doubt;
    validity.until.reset();
    validity.use_by.reset();
    validity.reason = why;
}

Validity fate_of_test(Book &book, const WelderState &welder, const HeldQualification &held, Fates &fates) {
    Validity out;
    const std::int64_t granted = welder.entries.at(held.record.number);
    if (!held.record.carried()) {
        take_back(fates, held.record, granted, out);
        if (fates.of(held.record.test.id).described > granted)
            put_in_doubt(
                described_otherwise(book, held.record, granted,
                                    [&] { return fates.anew_words(welder, held.record, *held.rules); }),
                out);
    }
    if (out.state == Validity::State::valid)
        if (const auto now = fates.refused_today(welder, held.record, *held.rules); !now.why.empty())
            put_in_doubt(now.why + (now.by_reason ? aside_words(granted, held.record.carried()) : ""), out);
    put_in_doubt(granted_to_another(book, welder, held), out);
    if (!held.unreadable.empty()) put_in_doubt("cannot say: " + held.unreadable, out);
    return out;
}

void tell_day_moved(Book &book, HeldQualification &held) {
    const std::string &coupon = held.record.test.id;
    if (held.record.carried() || !book.knows_coupon(coupon)) return;
    const auto history = book.history(coupon);
    const auto exam =
        std::find_if(history.begin(), history.end(), [](const Entry &entry) { return entry.kind == "exam"; });
    if (exam != history.end() && exam->seq < weld_day_told(history))
        held.validity.caution("it runs from " + print(held.record.welded) + ", and on which day coupon " +
                              coupon + " was welded was told only after an exam of it was on record");
    const auto first = earliest_weld_day(history);
    if (first && *first < held.record.welded)
        held.validity.caution("it runs from " + print(held.record.welded) + ", and coupon " + coupon +
                              " was said to be welded on " + print(*first) +
                              " when somebody knew already what an exam of it had found");
}

std::optional<Day> registered_later(Book &book, const WelderState &welder, const HeldQualification &held) {
    const auto day_of = [](std::string_view at) { return parse_day(at.substr(0, 10)); };
    if (held.record.carried() || day_of(welder.granted.at(held.record.number).at) <= held.record.welded)
        return std::nullopt;
    const std::string &coupon = held.record.test.id;
    if (!book.knows_coupon(coupon)) return std::nullopt; // told of the test itself
    const Day day = day_of(book.history(coupon).front().at);
    return day > held.record.welded ? std::optional(day) : std::nullopt;
}

} // namespace beadbook
