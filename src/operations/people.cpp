#include "operations/people.hpp"

#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/exam_means.hpp"
#include "operations/welder_names.hpp"
#include "records/codecs/bodies.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// With one blank between words, so that one person is not two.
std::string plain_name(const PersonRequest &request) {
    const std::string text = checked_text(request.name, "name");
    std::string out;
    for (const auto word : words_of(text)) out += (out.empty() ? "" : " ") + std::string(word);
    if (out.empty()) throw refused("a person needs a name").at("name");
    if (out.size() > 80) throw refused("the name is longer than 80 bytes").at("name");
    check_new_name(out, "name", request.sure);
    // A welder may sign in by the mark, and examines nothing.
    if (request.roles == std::vector<std::string>{"welder"}) return out;
    if (!may_be_a_name(out))
        throw refused("'" + shown(out) + "' is no name; a person's is expected, such as \"A. Field\"")
            .at("name");
    if (!names_somebody(out) && !request.sure)
        throw Unsure("is that meant? '" + shown(out) + "' reads like nobody's name; is it a person's?");
    return out;
}

/// One that was entered by a slip; its entry stays.
bool take_off_vision(PersonRecord &person, const std::string &name) {
    constexpr std::string_view word = "vision ";
    if (!lowered(name).starts_with(word)) return false;
    const Day on = parse_day(trimmed(std::string_view(name).substr(word.size())));
    if (std::erase_if(person.vision, [&](const VisionTest &test) { return test.on == on; }) == 0)
        throw refused(person.name + " has no vision test of " + print(on) + " on record").at("without");
    return true;
}

void take_off(PersonRecord &person, const std::string &name) {
    if (take_off_vision(person, name)) return;
    const auto found = std::find_if(person.certificates.begin(), person.certificates.end(),
                                    [&](const Certificate &c) { return name_of(c) == name; });
    if (found == person.certificates.end()) {
        std::vector<std::string> names;
        for (const auto &c : person.certificates) names.push_back(name_of(c));
        throw refused(person.name + " has no certificate '" + shown(name) + "'" +
                      (names.empty() ? "" : "; on record: " + listed(names)))
            .at("without");
    }
    person.certificates.erase(found);
}

void take(PersonRecord &person, const PersonRequest &request) {
    if (!request.roles.empty()) person.roles.clear();
    for (const auto &given : request.roles) {
        const std::string role = word_among(trimmed(given), person_roles());
        if (role.empty())
            throw refused("role '" + shown(given) + "'; expected " + listed(person_roles(), "or") +
                          did_you_mean(given, person_roles()))
                .at("role");
        if (std::find(person.roles.begin(), person.roles.end(), role) == person.roles.end())
            person.roles.push_back(role);
    }
    for (const auto &name : request.without) take_off(person, std::string(trimmed(name)));
    for (const auto &text : request.certificates) {
        const Certificate given = read_certificate(text);
        const auto same = std::find_if(person.certificates.begin(), person.certificates.end(),
                                       [&](const Certificate &c) { return name_of(c) == name_of(given); });
        if (same != person.certificates.end())
            *same = given;
        else
            person.certificates.push_back(given);
    }
    for (const auto &text : request.vision) {
        const VisionTest given = read_vision_test(text);
        std::erase_if(person.vision, [&](const VisionTest &v) { return v.on == given.on; });
        person.vision.push_back(given);
    }
    std::sort(person.vision.begin(), person.vision.end(),
              [](const VisionTest &a, const VisionTest &b) { return a.on < b.on; });
    if (request.note) person.note = checked_text(*request.note, "note");
}

/// Who vouches for a welder by a name like his is asked about once, here.
void ask_about_welders(Office &office, const std::string &person) {
    for (const auto &mark : office.book().welders()) {
        const WelderNames welder(office.book(), mark);
        if (welder.means(person)) continue;
        if (const std::string name = welder.taken_for(person); !name.empty())
            throw Unsure("is that meant? welder " + mark + " is enrolled as '" + shown(name) + "'; is " +
                         shown(person) + " another person?");
    }
}

/// What kept an exam from counting is not made good behind it unless somebody says that it is meant so.
void check_heals_nothing(Writing &writing, const PersonRecord &before, const PersonRecord &now) {
    if (before.certificates == now.certificates) return;
    for (const auto &examiner : writing.ledger().examiners()) {
        if (!same_person(examiner, now.name)) continue;
        for (const auto &mark : writing.ledger().coupons_examined_by(examiner)) {
            const CouponState coupon = writing.book().coupon(mark);
            for (const auto &exam : coupon.exams) {
                if (!same_person(exam.examiner, now.name) ||
                    entitlement(before, exam.method, exam.date).objection.empty() ||
                    !entitlement(now, exam.method, exam.date).objection.empty())
                    continue;
                if (const std::string why = objection_to(writing.office(), coupon.record, exam).why;
                    !why.empty())
                    throw Unsure("is that meant? exam " + std::to_string(exam.number) + " of " + mark +
                                 " on " + print(exam.date) + " does not count: " + why +
                                 "; by this it would count");
            }
        }
    }
}

} // namespace

namespace {

/// Of whom the record knows nothing but that he is a welder does not say what anybody may do, himself least
/// of all.
void check_may_appoint(Office &office, const std::string &who, const PersonRequest &request) {
    if (request.roles == std::vector<std::string>{"welder"} || office.welder_alone(who).empty()) return;
    throw refused("'" + shown(who) +
                  "' is on record as a welder alone; what a person is and may do is said by "
                  "somebody else (common practice, no source)")
        .at("by");
}

} // namespace

Done<PersonWritten> write_person(Writing &writing, const PersonRequest &request) {
    check_may_appoint(writing.office(), writing.stamp().who, request);
    const auto known = person_named(writing.office(), request.name);
    PersonRecord person = known.value_or(PersonRecord{});
    if (!known) person.name = plain_name(request);
    if (!known && !request.sure)
        if (const std::string near = person_like(writing.office(), person.name); !near.empty())
            throw Unsure("is that meant? '" + near + "' is on record; is " + shown(person.name) +
                         " another person?");
    if (!known && !request.sure) ask_about_welders(writing.office(), person.name);
    if (!request.without.empty() && same_person(writing.stamp().who, person.name))
        throw refused("who takes a paper of " + person.name +
                      " off the record is another person (common practice, no source)")
            .at("by");
    take(person, request);
    for (const auto &one : person.vision)
        if (one.on > writing.outside().today())
            throw refused("the vision test of " + print(one.on) + " is to come").at("vision");
    Entry entry = codec::entry_of(person);
    if (known) {
        if (*known == person) throw refused("this changes nothing: " + person.name + " stands so already");
        entry.supersedes = writing.book().person(person.name).record_seq;
        entry.reason = needed_reason(request.why);
        if (!request.sure) check_heals_nothing(writing, *known, person);
    }
    writing.add(std::move(entry));
    touch_examined_by(writing, person.name);
    return {{person, !known}, {}};
}

std::string person_like(Office &office, const std::string &name) {
    for (const auto &one : office.book().people())
        if (may_be_taken_for(one, name)) return one;
    return "";
}

void touch_examined_by(Writing &writing, const std::string &person) {
    for (const auto &examiner : writing.ledger().examiners())
        if (same_person(examiner, person))
            for (const auto &coupon : writing.ledger().coupons_examined_by(examiner)) writing.touch(coupon);
}

std::optional<PersonRecord> person_named(Office &office, const std::string &name) {
    std::string plain;
    for (const auto word : words_of(name)) plain += (plain.empty() ? "" : " ") + std::string(word);
    const std::string found = word_among(plain, office.book().people());
    if (plain.empty() || found.empty()) return std::nullopt;
    return office.book().person(found).record;
}

bool is_somebody(Office &office, const std::string &text) {
    return names_somebody(text) || (may_be_a_name(text) && person_named(office, text));
}

void check_names_one(Office &office, const std::string &text, const std::string &field) {
    if (several_persons(text).empty()) return;
    check_one_person(text, field, person_named(office, text).has_value());
}

PersonSheet show_person(Office &office, const std::string &name, std::optional<Day> on) {
    const auto known = person_named(office, name);
    const std::string found = known ? known->name : name;
    return {office.book().person(found).record, office.book().person_history(found),
            on.value_or(office.outside().today())};
}

PeopleList list_people(Office &office, std::optional<Day> on) {
    PeopleList out{{}, on.value_or(office.outside().today()), on.has_value()};
    for (const auto &name : office.book().people()) out.people.push_back(office.book().person(name).record);
    return out;
}

} // namespace beadbook
