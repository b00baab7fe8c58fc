#include "operations/record_sheet.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"
#include "operations/carried_in.hpp"
#include "operations/rule_words.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool bears_on(const WelderEvent &event, const HeldQualification &held) {
    if (event.qualification != 0) return event.qualification == held.record.number;
    return same_word(event.process, held.weld.word(Trait::process)) &&
           (event.rules.empty() || event.rules == held.record.rules);
}

HeldQualification &&numbered(WelderStanding &standing, int number) {
    for (auto &held : standing.held)
        if (held.record.number == number) return std::move(held);
    throw standing.welder.no_such(number);
}

std::vector<std::string> tests_in(const Evidence &evidence) {
    return evidence.coupons.empty() ? std::vector{evidence.coupon} : evidence.coupons;
}

/// Whether it rests on a coupon by its test, a renewal or an extension.
bool proves(const RecordSheet &sheet, const std::string &coupon) {
    const auto names = [&](const Evidence &evidence) {
        const auto all = tests_in(evidence);
        return evidence.coupon == coupon || std::find(all.begin(), all.end(), coupon) != all.end();
    };
    const auto &own = sheet.held.record.evidence;
    return (own && names(*own)) ||
           std::any_of(sheet.events.begin(), sheet.events.end(), [&](const WelderEvent &event) {
               return std::any_of(event.evidence.begin(), event.evidence.end(), names);
           });
}

/// By the text of the criteria that the record keeps.
std::vector<Judged> tests_of(Office &office, const QualificationRecord &record) {
    std::vector<Judged> out;
    if (!record.evidence) return out;
    const Evidence &evidence = *record.evidence;
    const auto set =
        evidence.criteria_hash.empty()
            ? nullptr
            : office.with_copy(office.catalogue().kept_criteria(office.ledger(), evidence.criteria_hash));
    const auto class_index = set ? set->class_index(evidence.class_id) : std::nullopt;
    if (!class_index) return out;
    for (const auto &mark : tests_in(evidence)) {
        const CouponState coupon = office.coupon(mark);
        if (!coupon.record.withdrawn.empty()) continue;
        out.push_back(judge_by(coupon, set));
        out.back().sought = class_index;
    }
    return out;
}

} // namespace

RecordSheet record_sheet(Office &office, const std::string &mark, int number, std::optional<Day> on) {
    WelderStanding standing = standing_of(office, mark, on);
    RecordSheet out{standing.welder.record, numbered(standing, number), {}, {}, {}, {}, {}, standing.on};
    for (const auto &event : standing.welder.events) {
        if (!bears_on(event, out.held)) continue;
        out.events.push_back(event);
        if (const auto why = standing.undone.find(event.seq); why != standing.undone.end())
            out.undone.insert(*why);
    }
    out.granted = standing.welder.granted.at(number);
    out.hash = standing.welder.hashes.at(number);
    out.head = office.ledger().head();
    if (const auto &test = out.held.record; !test.carried()) {
        out.taken_back = taken_back(office, test.test);
        const CouponRecord now = office.book().coupon(test.test.id).record;
        for (const Trait trait : rule_words())
            if (const std::string field = field_of(trait), own = now.get(field);
                !own.empty() && own != test.test.get(field))
                out.own_words.emplace_back(field, own);
    }
    for (auto &gone : standing.gone)
        if (gone.coupon != out.held.record.test.id && proves(out, gone.coupon))
            out.gone.push_back(std::move(gone));
    out.struck = std::move(standing.struck);
    for (auto &failed : standing.failed)
        if (failed.process.empty() || same_process(failed.process, out.held.weld.word(Trait::process)))
            out.failed.push_back(std::move(failed));
    out.tests = tests_of(office, out.held.record);
    if (const auto &evidence = out.held.record.evidence)
        for (const auto &mark : tests_in(*evidence))
            if (PhotoList photos = list_photos(office, mark); !photos.photos.empty())
                out.photos.push_back(std::move(photos));
    return out;
}

Ledger::Document paper_of(Office &office, const std::string &mark, int number) {
    const WelderState welder = office.book().welder(mark);
    const QualificationRecord *q = welder.qualification(number);
    if (!q) throw welder.no_such(number);
    if (!q->carried())
        throw DataError("qualification " + std::to_string(number) +
                        " was not carried in, it has no document");
    return needed_paper(office.ledger(), *q);
}

} // namespace beadbook
