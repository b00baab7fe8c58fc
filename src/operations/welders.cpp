#include "operations/welders.hpp"

#include "criteria/weld_words.hpp"
#include "facts/coupon_weld.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/evidence.hpp"
#include "operations/failed_work.hpp"
#include "operations/graded_tests.hpp"
#include "operations/granted_to.hpp"
#include "operations/held_events.hpp"
#include "operations/known_words.hpp"
#include "operations/marks.hpp"
#include "operations/people.hpp"
#include "operations/vouching.hpp"
#include "operations/welder_meant.hpp"
#include "records/codecs/bodies.hpp"

#include <algorithm>

namespace beadbook {
namespace {

void take(WelderRecord &record, const WelderRequest &request) {
    if (request.name) {
        const std::string name = checked_text(*request.name, "name");
        if (name != record.name) check_new_name(name, "name", request.sure);
        record.name = name;
    }
    if (request.employer) record.employer = checked_text(*request.employer, "employer");
    if (request.note) record.note = checked_text(*request.note, "note");
}

Entry entry_of(const WelderRecord &record) {
    Entry out;
    out.kind = "welder";
    out.subject = record.mark;
    out.body = codec::body_of(record);
    return out;
}

/// Nobody examines his own weld, nor a fellow's: whose they are hangs on the welder's name.
void touch_coupons_of(Writing &writing, const WelderRecord &welder) {
    for (const auto &text : writing.ledger().welders_named()) {
        const auto names = names_in(text);
        if (std::find(names.begin(), names.end(), welder.mark) != names.end())
            for (const auto &coupon : writing.book().coupons_of(text)) writing.touch(coupon);
    }
    for (const auto &who : {welder.mark, welder.name}) touch_examined_by(writing, who);
}

/// Processes that training may be in: the welder's own, and all that rules know.
std::vector<std::string> trainable(Writing &writing, const std::string &mark, std::vector<std::string> held) {
    for (const auto &id : writing.book().coupons_of(mark)) try {
            for (const auto &weld : welds_of(writing.book().coupon(id).record))
                if (weld.knows(Trait::process)) held.push_back(weld.word(Trait::process));
        } catch (const Refusal &) {
            continue; // one coupon that cannot be read hides none of the others
        }
    for (auto &word : known_test_words(writing.catalogue(), Trait::process)) held.push_back(std::move(word));
    std::vector<std::string> out;
    for (auto &word : held)
        if (word_among(word, out).empty()) out.push_back(std::move(word));
    return out;
}

/// The process as it is written elsewhere, capitals aside. What nothing would ever look at is not kept.
std::string understood(Writing &writing, const std::string &mark, const std::string &process,
                       const std::string &kind, const std::vector<HeldQualification> &all) {
    std::vector<std::string> held;
    for (const auto &one : all)
        if (const auto &word = one.weld.word(Trait::process); word_among(word, held).empty())
            held.push_back(word);
    const bool use = kind == "use";
    const auto known = use ? held : trainable(writing, mark, held);
    if (std::string out = word_among(process, known); !out.empty()) return out;
    throw refused((use ? "welder " + mark + " holds no qualification in '" : "process '") + shown(process) +
                  "'" +
                  (!use           ? " is not known; expected " + listed(known, "or")
                   : held.empty() ? ", nor in any other process"
                                  : ", only in " + listed(known)) +
                  did_you_mean(process, known))
        .at("process");
}

/// Whether it was seen before that day that a test of the process had failed, so that training of that day
/// changes a retest.
bool failed_before(const GradedTests &tests, const std::string &coupon, const std::string &process, Day day) {
    return std::any_of(tests.all().begin(), tests.all().end(), [&](const GradedTests::Test &test) {
        return !test.passed_at_all() && test.coupon.record.id != coupon &&
               (!test.day || *test.seen_on() < day) &&
               std::any_of(test.welds.begin(), test.welds.end(), [&](const Weld &weld) {
                   return same_process(weld.word(Trait::process), process);
               });
    });
}

/// Tests of the process that were welded by the day of training and seen to have failed only then or later.
std::vector<std::string> seen_later(Writing &writing, const std::string &mark, const WelderEvent &event) {
    std::vector<std::string> out;
    const GradedTests tests(writing.office(), writing.book().welder(mark));
    for (const auto &test : tests.all()) {
        const bool meant = !test.passed_at_all() && test.day && *test.day <= event.day &&
                           *test.seen_on() >= event.day &&
                           std::any_of(test.welds.begin(), test.welds.end(), [&](const Weld &weld) {
                               return same_process(weld.word(Trait::process), event.process);
                           });
        if (meant)
            out.push_back("that coupon " + test.coupon.record.id + " failed was seen on " +
                          print(*test.seen_on()) +
                          ": a retest of it goes by training from the day after that on, so not by this");
    }
    return out;
}

/// Coupons of the process that were welded after a failure and before training of an earlier day was entered:
/// as retests they are asked otherwise by it, where they were not graded before.
std::vector<std::string> later_tests(Writing &writing, const std::string &mark, const WelderEvent &event,
                                     Day today) {
    std::vector<std::string> out;
    const GradedTests tests(writing.office(), writing.book().welder(mark));
    for (const auto &id : writing.book().coupons_of(mark)) try {
            if (!failed_before(tests, id, event.process, event.day)) continue;
            const CouponState state = writing.book().coupon(id);
            const CouponRecord &coupon = state.record;
            // One that failed is no retest of itself.
            if ((state.grade && !state.grade->passed) || coupon.bends_failed()) continue;
            const std::string welded = coupon.get("welded");
            if (coupon.get("welder") != mark || welded.empty() || parse_day(welded) < event.day) continue;
            for (const auto &weld : welds_of(coupon))
                if (same_word(weld.word(Trait::process), event.process)) {
                    out.push_back("entered on " + print(today) + " for an earlier day, " + print(event.day) +
                                  ": coupon " + id + " was welded on " + welded +
                                  (state.grade ? ", and graded before this was entered: as a retest it goes "
                                                 "by this training only if a reason lets it"
                                               : ", and as a retest it is asked otherwise now, by rules that "
                                                 "speak of training"));
                    break;
                }
        } catch (const Refusal &) {
            continue; // one coupon that cannot be read hides none of the others
        }
    return out;
}

/// A use of an earlier day revives nothing that is over, unless a reason lets it. The reason is kept where it
/// was given: of several uses that revive something together only the last one lacks it. What it revives
/// without one, as it is of a day before that was carried in, is handed back.
std::vector<std::string> set_aside_reviving(Office &office, const ProcessRequest &request, Day today,
                                            WelderEvent &event) {
    std::vector<std::string> out;
    const WelderStanding standing = standing_of(office, office.book().welder(request.mark), today);
    for (const auto &held : standing.held) {
        if (revives_of_before_carried(standing, held, event, today)) out.push_back(title_of(held));
        if (const auto lack = reviving(standing, held, event, today)) {
            SetAside aside =
                set_aside(title_of(held) + " is not revived", {*lack}, *held.rules, request.override_why);
            event.overridden = std::move(aside.what);
        }
    }
    event.override_why = checked_reason(request.override_why, "override");
    return out;
}

Done<ProcessLogged> log_event(Writing &writing, const ProcessRequest &request, const std::string &kind,
                              const std::string &field, const std::string &question) {
    WelderEvent event;
    event.kind = kind;
    event.day = past_day(writing.outside(), request.day);
    event.process = checked_text(request.process, "process");
    event.text = checked_text(request.text, field);
    if (event.process.empty()) throw lacking("process", "in which process?");
    if (event.text.empty()) throw lacking(field, question);
    if (!gives_reason(event.text))
        throw refused(field + " '" + shown(event.text) + "' tells of none; write it in a word at least")
            .at(field);
    if (const std::string word = denying_word(event.text); !word.empty())
        throw refused(field + " '" + shown(event.text) + "' says '" + word +
                      "'; write what was done, and that alone")
            .at(field);
    check_vouches(writing.office(), writing.stamp().who, request.mark,
                  kind == "use" ? "confirms a use" : "enters training");
    if (kind == "use") check_no_failed_work(writing.office(), request.mark, event.text, field);
    const Day today = writing.outside().today();
    event.process = understood(writing, request.mark, event.process, kind,
                               held_by(writing.office(), request.mark, today));
    const auto revived = set_aside_reviving(writing.office(), request, today, event);
    const bool reason_alone = !event.override_why.empty() && event.overridden.empty();
    Done<ProcessLogged> out{{request.mark, add_event(writing, request.mark, event), {}}, {}};
    for (auto &held : held_by(writing.office(), request.mark, today))
        if (same_word(held.weld.word(Trait::process), event.process))
            out.value.held.push_back(std::move(held));
    if (kind == "use" && !out.value.held.empty() &&
        std::all_of(out.value.held.begin(), out.value.held.end(),
                    [&](const HeldQualification &held) { return event.day < held.record.welded; }))
        out.notes.push_back("on " + print(event.day) + " no qualification in " + event.process +
                            " had begun, so this use keeps none");
    if (!revived.empty())
        out.notes.push_back("this use revives " + listed(revived, "and") +
                            ": it is of a day before that was carried in, when nobody here could have "
                            "entered it in time, so no reason is asked" +
                            (reason_alone ? "; the one that is given is kept with it" : "") +
                            " (common practice, no source)");
    else if (reason_alone)
        out.notes.emplace_back("alone this use revives nothing; the reason is kept with it");
    if (kind == "training")
        for (auto &note : seen_later(writing, request.mark, event)) out.notes.push_back(std::move(note));
    if (kind == "training" && event.day < today)
        for (auto &note : later_tests(writing, request.mark, event, today))
            out.notes.push_back(std::move(note));
    if (out.value.held.empty())
        out.notes.push_back("welder " + request.mark + " holds no qualification in " + event.process);
    return out;
}

/// What was granted by a coupon that was another's is on record of that other one.
Refusal none_to_retract(Book &book, const std::string &mark, std::int64_t seq) {
    const std::string none =
        "entry " + std::to_string(seq) + " is none of welder " + mark + "'s that could be retracted";
    for (const auto &other : book.welders()) {
        if (other == mark) continue;
        for (const auto &entry : book.welder_history(other))
            if (entry.seq == seq && entry.kind != "welder")
                return refused(none + "; it is one of welder " + other + "'s")
                    .at("entry")
                    .mend({"retract", {other, std::to_string(seq)}, {"why"}});
    }
    return refused(none).at("entry").mend({"history", {mark}, {"welder"}});
}

} // namespace

void check_welder_mark(const std::string &mark) {
    check_mark(mark, "welder");
    if (const std::size_t dots = mark.find(".."); dots != std::string::npos)
        throw refused(
            "'" + mark +
            "' names several welders, and each has a name of his own: enrol one by one, or all by a "
            "table of marks and names")
            .mend({"enrol", {mark.substr(0, dots)}, {"name"}})
            .mend({"enrol", {}, {"file"}});
}

Done<WelderRecord> enrol(Writing &writing, const WelderRequest &request) {
    WeldersMeant enrolled(writing.book());
    return enrol(writing, request, enrolled);
}

Done<WelderRecord> enrol(Writing &writing, const WelderRequest &request, WeldersMeant &enrolled) {
    check_welder_mark(request.mark);
    if (writing.book().knows_welder(request.mark))
        throw refused("welder " + request.mark + " is registered already; a change needs a reason")
            .give("why");
    WelderRecord record;
    record.mark = request.mark;
    take(record, request);
    auto unlikely = enrolled.beside(record);
    for (auto &one : enrolled.before_enrolled(record)) unlikely.push_back(std::move(one));
    record.sure = set_aside_by(unlikely, request.sure);
    Done<WelderRecord> out{record, {}};
    if (record.name.empty() && enrolled.any())
        out.notes.push_back("without a name nobody can tell whether " + record.mark +
                            " is somebody who is enrolled already; a qualification asks for it");
    writing.add(entry_of(record));
    enrolled.add(record);
    touch_coupons_of(writing, record);
    return out;
}

Done<WelderRecord> change_welder(Writing &writing, const WelderRequest &request) {
    const WelderState old = writing.book().welder(request.mark);
    WelderRecord record = old.record;
    take(record, request);
    if (old.record.employer != record.employer) std::erase(record.sure, never_left);
    const bool returns = request.employer && came_back(writing.book(), record);
    const auto kept_as = [&](const char *id) { return is_meant(record.sure, id); };
    if (returns && request.sure && !kept_as(never_left)) record.sure.emplace_back(never_left);
    if (old.record == record)
        throw DataError(request.name || request.employer || request.note
                            ? "this changes nothing: welder " + request.mark + " stands so already"
                            : "this changes nothing: neither name nor employer nor note is given");
    const std::string reason = needed_reason(request.why);
    if (old.record.name != record.name) {
        auto unlikely = WeldersMeant(writing.book()).beside(record);
        const bool renamed = kept_as(renamed_welder), stayed = kept_as(never_left);
        const bool another = of_two_persons(old.record.name, record.name);
        if (another)
            unlikely.push_back({renamed_welder, "welder " + record.mark + " is " + shown(old.record.name) +
                                                    ", and " + shown(record.name) +
                                                    " reads like nobody of that name; is it the same "
                                                    "person? Another one has a mark of his own"});
        record.sure = set_aside_by(unlikely, request.sure);
        if (renamed && !another) record.sure.emplace_back(renamed_welder);
        if (stayed) record.sure.emplace_back(never_left);
    }
    Entry entry = entry_of(record);
    entry.supersedes = old.record_seq;
    entry.reason = reason;
    writing.add(std::move(entry));
    touch_coupons_of(writing, record);
    Done<WelderRecord> out{record, {}};
    if (returns && !kept_as(never_left))
        out.notes.push_back("welder " + record.mark +
                            " was with another employer since: what holds with the "
                            "same employer alone is in doubt from then on");
    return out;
}

Done<ProcessLogged> log_use(Writing &writing, const ProcessRequest &request) {
    return log_event(writing, request, "use", "work", "which work shows it?");
}

Done<ProcessLogged> log_training(Writing &writing, const ProcessRequest &request) {
    return log_event(writing, request, "training", "text", "what was trained?");
}

Done<Retracted> retract(Writing &writing, const std::string &mark, std::int64_t seq, const std::string &why) {
    check_vouches(writing.office(), writing.stamp().who, mark, "takes back what is on record of a welder");
    const auto all = writing.book().welder_history(mark);
    const auto found = std::find_if(all.begin(), all.end(), [&](const Entry &e) { return e.seq == seq; });
    const bool taken =
        std::any_of(all.begin(), all.end(), [&](const Entry &e) { return e.supersedes == seq; });
    if (found == all.end() || found->kind == "welder" || taken || is_withdrawal(*found))
        throw none_to_retract(writing.book(), mark, seq);
    Entry entry = withdrawal_of(seq, found->kind, mark, found->number, why);
    entry.number = found->number;
    writing.add(std::move(entry));
    return {{mark, found->kind, seq}, {}};
}

} // namespace beadbook
