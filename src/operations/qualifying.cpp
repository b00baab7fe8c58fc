#include "operations/qualifying.hpp"

#include "criteria/weld_words.hpp"
#include "facts/coupon_weld.hpp"
#include "facts/plausibility.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "operations/carried_in.hpp"
#include "operations/coupons.hpp"
#include "operations/granted_to.hpp"
#include "operations/held_events.hpp"
#include "operations/ranging.hpp"
#include "operations/retest_notes.hpp"
#include "operations/said_beside.hpp"
#include "operations/test_likeness.hpp"
#include "operations/vouching.hpp"
#include "records/codecs/bodies.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// The rules that somebody named, and the file that they stand in, if it is one of one's own.
struct NamedRules {
    std::shared_ptr<const RangeRules> rules;
    std::string file;
};

NamedRules named_rules(Catalogue &catalogue, const std::string &name) {
    return {needed_rules(catalogue, name), means_file(name) ? catalogue.outside().absolute(name) : ""};
}

/// What every qualification of a test has in common.
QualificationRecord begun(const NamedRules &named, const std::string &way, const CouponRecord &test,
                          std::size_t part, const Weld &weld) {
    const RangeRules &rules = *named.rules;
    QualificationRecord out;
    out.rules = rules.name;
    out.rules_hash = rules.hash;
    out.rules_file = named.file;
    out.way = way;
    out.test = test;
    out.part = part;
    out.welded = parse_day(test.get("welded"));
    out.range = granted(range_of(rules, weld));
    return out;
}

int grant(Writing &writing, const std::string &mark, QualificationRecord q, const RangeRules &rules) {
    q.number = writing.book().welder(mark).last_number + 1;
    writing.ledger().keep_criteria(rules.hash, rules.name, rules.text);
    Entry entry;
    entry.kind = "qualification";
    entry.subject = mark;
    entry.number = q.number;
    entry.body = codec::body_of(q);
    writing.add(std::move(entry));
    return q.number;
}

Granted as_granted(Writing &writing, const std::string &mark, const std::vector<int> &numbers) {
    Granted out{mark, {}};
    for (auto &held : held_by(writing.office(), mark, writing.outside().today()))
        if (std::find(numbers.begin(), numbers.end(), held.record.number) != numbers.end())
            out.held.push_back(std::move(held));
    return out;
}

std::string holds_words(const ValidityWay &way) {
    std::string out = way.id + " (" + (way.lasts ? "lasts " + way.lasts->text : "no fixed end");
    if (way.use_every) out += ", to be used within every " + way.use_every->text;
    if (way.extension) out += ", extended by accepted welds of the work";
    return out + ") [" + authority(way.from) + "]";
}

/// Rules that know several ways to stay valid, and nobody said which: the usual one is told with the others.
void note_way(const RangeRules &rules, const std::string &given, std::vector<std::string> &notes) {
    if (!given.empty() || rules.validity.size() < 2) return;
    std::vector<std::string> others;
    for (const auto &way : rules.validity)
        if (&way != &rules.validity.front()) others.push_back(holds_words(way));
    notes.push_back(
        "it stays valid by way " + holds_words(rules.validity.front()) + ", because no way was named; " +
        rules.name + " also knows " + listed(others) +
        ". The way is chosen when it is granted: to change it, retract this one and grant it again by "
        "another");
}

/// Variables of which nothing can be said for want of something about the test, by their names.
void note_open_ranges(const std::vector<HeldQualification> &all, std::vector<std::string> &notes) {
    for (const auto &held : all) {
        std::vector<std::string> open;
        for (const auto &one : held.range) {
            if (!may_matter(held.range, *one.variable) || one.parts.empty()) continue;
            const bool unknown = std::none_of(one.parts.begin(), one.parts.end(), [](const RangePart &part) {
                return part.applies == Truth::yes;
            });
            if (!unknown) continue;
            for (const auto &part : one.parts)
                for (const auto &lack : part.lacks)
                    if (std::find(open.begin(), open.end(), name_of(lack)) == open.end())
                        open.push_back(name_of(lack));
        }
        if (!open.empty())
            notes.push_back(title_of(held) + ": what it qualifies cannot be said in full without " +
                            listed(open));
    }
}

/// Tests of another kind that the welder failed here in a process that is carried in: its paper knows nothing
/// of them.
void note_failed(const GradedTests &tests, const std::vector<Weld> &carried,
                 std::vector<std::string> &notes) {
    for (const auto &test : tests.all()) {
        if (test.passed_at_all()) continue;
        const bool same = std::any_of(test.welds.begin(), test.welds.end(), [&](const Weld &failed) {
            return std::any_of(carried.begin(), carried.end(), [&](const Weld &one) {
                return same_process(failed.word(Trait::process), one.word(Trait::process));
            });
        });
        if (same)
            notes.push_back("coupon " + test.coupon.record.id + " failed" +
                            (test.day ? " on " + print(*test.day) : "") +
                            " in that process here; no retest of it is asked of what is carried in");
    }
}

/// Tests that the welder failed alike but for the position, and did not pass since: they are other tests, of
/// which the rules ask no retest here. One that this one's range takes in is told beside what it grants.
void note_other_positions(const GradedTests &tests, const TestEvidence &proof, const RangeRules &rules,
                          std::vector<std::string> &notes) {
    const auto same = [&](const GradedTests::Test &test, const Weld &weld) {
        std::vector<std::string> lacks;
        return same_kind(test.welds, weld, &rules, lacks);
    };
    for (const auto &failed : tests.all()) {
        if (failed.passed_by(rules) || !failed.day || *failed.day > proof.welded ||
            failed.coupon.record.id == proof.test.id)
            continue;
        const auto passed_since = [&](const GradedTests::Test &other) {
            std::vector<std::string> lacks;
            return other.passed_by(rules) && *other.day >= *failed.day && *other.day <= proof.welded &&
                   retests(other.welds, failed.welds.front(), &rules, lacks) == Truth::yes;
        };
        for (const auto &part : proof.parts) {
            if (same(failed, part.weld) != Truth::no ||
                same_but_for_position(failed.welds, part.weld, &rules) != Truth::yes ||
                takes_in(rules, part.weld, failed.welds) ||
                std::any_of(failed.welds.begin(), failed.welds.end(),
                            [&](const Weld &weld) { return !takes_some(rules, part.weld, weld).empty(); }) ||
                std::any_of(tests.all().begin(), tests.all().end(), passed_since))
                continue;
            notes.push_back("coupon " + failed.coupon.record.id + " failed on " + print(*failed.day) +
                            " in position " + failed.welds.front().word(Trait::position) +
                            "; no retest of it is asked of this one, in position " +
                            part.weld.word(Trait::position) + " (common practice, no source)");
            break;
        }
    }
}

/// Whom the coupon qualified before it was said to be this welder's.
void note_others(Office &office, const CouponRecord &coupon, std::vector<std::string> &notes) {
    std::set<std::string> told{coupon.get("welder")};
    for (const auto &entry : office.book().history(coupon.id)) {
        if (entry.kind != "coupon" || is_withdrawal(entry)) continue;
        const std::string welder = codec::coupon_from(codec::parsed(entry.body)).get("welder");
        if (!told.insert(welder).second || !office.book().knows_welder(welder)) continue;
        for (const auto &q : office.book().welder(welder).qualifications)
            if (!q.carried() && q.test.id == coupon.id)
                notes.push_back("coupon " + coupon.id + " qualified welder " + welder + " before, #" +
                                std::to_string(q.number) + ", which it proves no more");
    }
}

/// Nobody can tell whether one without a name is enrolled under another mark, and failed there.
std::optional<Shortcoming> name_lacking(const WelderRecord &welder) {
    if (!welder.name.empty()) return std::nullopt;
    Shortcoming out;
    out.kind = Shortcoming::Kind::nameless;
    out.lacks = {welder.mark};
    return out;
}

} // namespace

std::string way_of(const std::string &given, const RangeRules &rules) {
    if (given.empty()) return rules.validity.front().id;
    if (rules.way(given)) return given;
    std::vector<std::string> ids;
    for (const auto &way : rules.validity) ids.push_back(way.id);
    throw refused("way: '" + shown(given) + "'; " + rules.name + " knows " + listed(ids, "and") +
                  did_you_mean(given, ids))
        .at("way");
}

std::optional<int> qualified_already(const WelderState &welder, const std::string &coupon,
                                     const std::string &rules) {
    const auto revoked = [&](const QualificationRecord &q) {
        return std::any_of(welder.events.begin(), welder.events.end(), [&](const WelderEvent &e) {
            return e.kind == "revocation" && e.qualification == q.number;
        });
    };
    for (const auto &q : welder.qualifications)
        if (q.test.id == coupon && q.rules == rules && !revoked(q)) return q.number;
    return std::nullopt;
}

Done<Granted> qualify(Writing &writing, const QualifyRequest &request) {
    const NamedRules named = named_rules(writing.catalogue(), request.rules);
    const auto &rules = named.rules;
    const std::string way = way_of(request.way, *rules);
    Office &office = writing.office();
    const CouponState coupon = office.coupon(request.coupon);
    const std::string name = "coupon " + request.coupon;
    const std::string mark = coupon.record.get("welder");
    if (mark.empty())
        throw refused(name + " names no welder").mend({"change", {request.coupon}, {"welder", "why"}});
    const WelderState welder = office.book().welder(mark);
    check_vouches(office, writing.stamp().who, mark, "qualifies");
    keep_if_refused(writing, request.coupon);
    check_employer_told(welder.record, way, *rules);
    if (const auto number = qualified_already(welder, request.coupon, rules->name))
        throw refused(name + " qualified by " + rules->name + " already, #" + std::to_string(*number));
    const GradedTests tests(office, welder);
    TestEvidence proof = evidence(office, tests, coupon, *rules, request.words);
    if (!proof.impediments.empty()) throw refusal_of(proof.impediments);
    auto of_welder = otherwise_since(office.book(), welder.record, request.coupon, way, *rules);
    if (const auto lack = name_lacking(welder.record)) of_welder.push_back(*lack);
    for (auto &part : proof.parts) part.lacks.insert(part.lacks.end(), of_welder.begin(), of_welder.end());

    std::vector<Shortcoming> lacks;
    for (const auto &part : proof.parts)
        for (const auto &lack : part.lacks) {
            lacks.push_back(lack);
            if (proof.parts.size() > 1) lacks.back().process = part.weld.word(Trait::process);
        }
    const SetAside aside =
        set_aside(name + " does not qualify by " + rules->name, lacks, *rules, request.override_why);
    std::vector<int> numbers;
    for (const auto &part : proof.parts) {
        QualificationRecord record = begun(named, way, proof.test, part.part, part.weld);
        record.evidence = part.evidence;
        record.overridden = part.lacks;
        if (!part.lacks.empty()) record.override_why = aside.why;
        numbers.push_back(grant(writing, mark, std::move(record), *rules));
    }
    Done<Granted> out{as_granted(writing, mark, numbers), {}};
    note_reason_unused(aside, request.override_why, out.notes);
    if (std::string said = said_beside_words(said_beside(coupon)); !said.empty())
        out.notes.push_back(name + ": " + said);
    note_others(office, coupon.record, out.notes);
    note_other_positions(tests, proof, *rules, out.notes);
    note_way(*rules, request.way, out.notes);
    note_open_ranges(out.value.held, out.notes);
    for (auto &note : retest_notes(tests, proof)) out.notes.push_back(std::move(note));
    return out;
}

namespace {

/// A paper of one test names one person, and one test, unless it is a list: what it was carried in for
/// before.
std::vector<Unlikely> of_another(Book &book, const CarryRequest &request, const CouponRecord &test) {
    const std::string hash = sha256(request.paper.bytes);
    std::vector<Unlikely> out;
    for (const auto &mark : book.welders()) {
        const WelderState other = book.welder(mark);
        if (mark == request.mark) {
            // By other rules, and for each process, it is the same test.
            for (const auto &q : other.qualifications)
                if (q.document == hash && q.test.fields != test.fields && out.empty())
                    out.push_back({"paper-of-another-test", "this paper was carried in for another test of " +
                                                                mark + ", #" + std::to_string(q.number) +
                                                                ", welded on " + q.test.get("welded") +
                                                                "; does it tell of both?"});
            continue;
        }
        for (const auto &q : other.qualifications)
            if (q.document == hash) {
                out.push_back({"paper-of-another",
                               "this paper was carried in for welder " + mark +
                                   (other.record.name.empty() ? "" : " (" + other.record.name + ")") + ", #" +
                                   std::to_string(q.number) + "; does it name " + request.mark +
                                   " as well?"});
                break;
            }
    }
    return out;
}

} // namespace

Done<Granted> carry(Writing &writing, const CarryRequest &request) {
    if (request.paper.name.empty()) throw lacking("document", "a qualification is carried in with its paper");
    check_vouches(writing.office(), writing.stamp().who, request.mark, "carries a qualification in");
    const NamedRules named = named_rules(writing.catalogue(), request.rules);
    const auto &rules = named.rules;
    const std::string way = way_of(request.way, *rules);
    const std::string paper = checked_text(request.paper.name, "document");
    if (request.paper.bytes.empty() || request.paper.bytes.size() > largest_paper)
        throw refused(shown(paper) + ": a document has 1 byte to 16 MiB").at("document");
    if (trimmed(request.paper.bytes).empty() || means_none(request.paper.bytes))
        throw refused(shown(paper) + ": nothing stands in it that shows a test").at("document");
    CouponRecord test =
        described(writing.catalogue(), {"carried-in", request.test, request.sure}, {}, rules.get());
    if (test.get("welded").empty()) throw lacking("welded", "on which day was the test welded?");
    if (const auto by = test.get("welder"); !by.empty() && by != request.mark)
        throw refused("the test is said to be welded by " + shown(by) + ", not by " + request.mark)
            .at("welder");
    auto impediments = impediments_of(test, "the test", writing.outside().today());
    for (auto &one : impediments) one.remedy.reset(); // nothing is on record that could be changed
    const auto welds = welds_of(test);
    for (const auto &weld : welds)
        for (auto &one : unknown_words(*rules, weld, "the test")) impediments.push_back(std::move(one));
    if (std::string why = uncovered_metal(*rules, test.get("material")); !why.empty())
        impediments.push_back({"the test: " + why, {}});
    if (!impediments.empty()) throw refusal_of(impediments);

    const WelderState welder = writing.book().welder(request.mark);
    check_employer_told(welder.record, way, *rules);
    for (auto &id : set_aside_by(of_another(writing.book(), request, test), request.sure))
        test.sure.push_back(std::move(id));
    const GradedTests tests(writing.office(), welder);
    std::vector<std::vector<Shortcoming>> lacks;
    std::vector<Shortcoming> all;
    for (const auto &weld : welds) {
        lacks.push_back(carried_lacks(tests, test, weld, *rules));
        if (auto lack = name_lacking(welder.record)) lacks.back().push_back(std::move(*lack));
        for (const auto &lack : lacks.back()) {
            all.push_back(lack);
            if (welds.size() > 1) all.back().process = weld.word(Trait::process);
        }
    }
    const SetAside aside =
        set_aside("the test cannot be carried in by " + rules->name, all, *rules, request.override_why);
    const std::string hash = writing.ledger().keep_document(paper, request.paper.bytes);
    std::vector<int> numbers;
    for (std::size_t part = 0; part < welds.size(); ++part) {
        QualificationRecord record = begun(named, way, test, part, welds[part]);
        record.document = hash;
        record.overridden = lacks[part];
        if (!lacks[part].empty()) record.override_why = aside.why;
        for (const auto &q : welder.qualifications)
            if (q.document == hash && q.rules == rules->name && q.part == part && q.test == test)
                throw refused("this was carried in already, #" + std::to_string(q.number));
        numbers.push_back(grant(writing, request.mark, std::move(record), *rules));
    }
    Done<Granted> out{as_granted(writing, request.mark, numbers), {}};
    note_way(*rules, request.way, out.notes);
    note_open_ranges(out.value.held, out.notes);
    note_reason_unused(aside, request.override_why, out.notes);
    if (all.empty()) note_failed(tests, welds, out.notes);
    for (const auto &held : out.value.held)
        if (is_over(held.validity) && held.validity.state != Validity::State::expired)
            out.notes.push_back(
                title_of(held) +
                " was not used in time by what is entered here; a use of a day before today "
                "revives it without a reason, as nobody here could have entered it in time, and "
                "that it was entered late stands beside it (common practice, no source)");
    return out;
}

} // namespace beadbook
