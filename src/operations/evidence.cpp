#include "operations/evidence.hpp"

#include "facts/coupon_weld.hpp"
#include "facts/deposits.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/carried_in.hpp"
#include "operations/grade_standing.hpp"
#include "operations/known_words.hpp"
#include "operations/rests_on.hpp"
#include "operations/said_by_welder.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/turned.hpp"
#include "operations/weld_day.hpp"
#include "qualify/range.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

Shortcoming shortcoming(Shortcoming::Kind kind, const std::string &coupon = "") {
    Shortcoming out;
    out.kind = kind;
    out.coupon = coupon;
    return out;
}

/// Examinations that the rules ask of such a test and that are not on record, or do not count.
void take_missing_exams(const RangeRules &rules, const CouponState &coupon, const Weld &weld,
                        const std::string &name, std::vector<Shortcoming> &lacks) {
    for (const auto &exam : rules.exams) {
        if (passes(exam.test, weld) == Truth::no) continue;
        if (std::any_of(exam.one_of.begin(), exam.one_of.end(),
                        [&](const std::string &method) { return examined_by(method, coupon); }))
            continue;
        lacks.push_back(shortcoming(Shortcoming::Kind::exam, name));
        lacks.back().rule = exam.id;
    }
    const bool nothing = !examined_by("mechanical", coupon) &&
                         std::none_of(coupon.exams.begin(), coupon.exams.end(),
                                      [](const ExamRecord &e) { return e.done().counts; });
    if (rules.exams.empty() && nothing) lacks.push_back(shortcoming(Shortcoming::Kind::not_examined, name));
}

/// A retest that was examined otherwise than the coupons that had failed, where the rules forbid it.
void take_other_exams(const GradedTests &tests, const RetestState &retest, const CouponState &coupon,
                      const std::string &name, std::vector<Shortcoming> &lacks) {
    for (const auto &id : retest.failed) {
        const auto *failed = tests.find(id);
        Shortcoming one = shortcoming(Shortcoming::Kind::same_exam, name);
        for (const auto &method : failed->failed_by)
            if (!examined_by(method, coupon)) one.lacks.push_back(method);
        one.after = AfterFailure{id, *failed->day, {}};
        if (!one.lacks.empty()) lacks.push_back(std::move(one));
    }
}

/// That a person graded passed what the verdict for a class does not accept, of the coupon called `name`.
Shortcoming against_verdict(const CouponState &coupon, const std::string &class_id, Verdict now,
                            const std::string &name) {
    Shortcoming out = shortcoming(Shortcoming::Kind::verdict, name);
    out.class_id = class_id;
    out.now = name_of(now);
    out.by = coupon.grade->stamp.who;
    out.on = coupon.grade->stamp.at.substr(0, 10);
    out.remark = coupon.grade->remark;
    return out;
}

/// A grade that is to be given again, or that passed what a verdict, taken afresh, does not accept.
/// Where the rules name nothing that they accept a test by, its own criteria are what it must be accepted by.
void take_grade(const RangeRules &rules, const CouponState &coupon, const GradeStanding &standing,
                const std::string &name, std::vector<Shortcoming> &lacks) {
    if (!coupon.grade || !coupon.grade->passed) return;
    const bool again = standing.moved;
    if (!again && standing.now != Verdict::accept)
        return lacks.push_back(against_verdict(coupon, coupon.grade->class_id, standing.now, name));
    if (!again) {
        if (!standing.own_class.empty() && rules.accepted_by.empty())
            lacks.push_back(against_verdict(coupon, standing.own_class, standing.own, name));
        return;
    }
    lacks.push_back(shortcoming(Shortcoming::Kind::grade, name));
    lacks.back().class_id = coupon.grade->class_id;
    lacks.back().was = standing.was;
    lacks.back().now = name_of(standing.now);
}

/// A pass by criteria or a class that the rules do not accept a test weld by.
void take_acceptance(const RangeRules &rules, const CouponState &coupon, const std::string &name,
                     std::vector<Shortcoming> &lacks) {
    const StoredVerdict *verdict = coupon.graded_on();
    if (!verdict || !coupon.grade->passed || rules.accepts(verdict->set, coupon.grade->class_id)) return;
    lacks.push_back(shortcoming(Shortcoming::Kind::accepted_by, name));
    lacks.back().criteria = verdict->set;
    lacks.back().class_id = coupon.grade->class_id;
}

/// What is said of the weld otherwise than when it was graded.
void take_description(const GradeStanding &standing, const std::string &name,
                      std::vector<Shortcoming> &lacks) {
    if (standing.described.empty()) return;
    lacks.push_back(shortcoming(Shortcoming::Kind::described, name));
    lacks.back().lacks = standing.described;
}

/// That it was rejected, or its mechanical tests failed, until somebody said otherwise.
void take_turned(Office &office, const CouponState &coupon, std::vector<Shortcoming> &lacks) {
    if (coupon.bends_failed_once()) {
        lacks.push_back(shortcoming(Shortcoming::Kind::turned));
        lacks.back().lacks = {"mechanical"};
    }
    for (const auto &one : turned(office, coupon.record.id)) {
        if (!one.accepted) continue;
        lacks.push_back(shortcoming(Shortcoming::Kind::turned));
        lacks.back().lacks = one.fields();
        lacks.back().criteria = one.before.get("criteria");
        lacks.back().class_id = one.before.get("class");
        lacks.back().remark = one.told;
    }
}

/// What the retest that the coupon belongs to lacks.
void take_retest(const RangeRules &rules, const GradedTests &tests, const CouponState &coupon,
                 PartEvidence &part, GradedTests::Retest retest) {
    auto &lacks = part.lacks;
    const RetestState &state = retest.state;
    const std::string &mark = coupon.record.id;
    part.evidence.coupons = state.passed;
    part.evidence.after = state.after;
    if (const auto *same = state.after
                               ? nullptr
                               : tests.retest_on_record(mark, part.weld.word(Trait::process), rules.name)) {
        part.evidence.coupons = same->coupons;
        part.evidence.after = same->after;
    }
    // The coupons that passed with it must have been examined like it, and be accepted like it.
    for (const auto &id : state.passed)
        if (const auto *with = tests.find(id); with && id != mark && state.needed > 1) {
            const auto all = lacks_of_pass(rules, *with, part.weld);
            lacks.insert(lacks.end(), all.begin(), all.end());
        }
    if (rules.retest.same_exam && state.known)
        for (const auto &id : state.passed) {
            const auto *with = tests.find(id);
            const CouponState &one = id == mark || !with ? coupon : with->coupon;
            take_other_exams(tests, state, one, id == mark ? "" : id, lacks);
        }
    for (auto &one : retest.unknown) lacks.push_back(std::move(one));
    // Where only those that count for nothing make it up, each was told by itself above.
    if (state.satisfied()) return;
    if (auto lack = retest_lack(retest)) lacks.push_back(std::move(*lack));
}

Day day_of(const Grade &grade) { return parse_day(std::string_view(grade.stamp.at).substr(0, 10)); }

template <class T>
bool holds(const std::vector<T> &list, const T &one) {
    return std::find(list.begin(), list.end(), one) != list.end();
}

} // namespace

std::vector<Shortcoming> lacks_of_pass(const RangeRules &rules, const GradedTests::Test &test,
                                       const Weld &weld) {
    std::vector<Shortcoming> out;
    const std::string &id = test.coupon.record.id;
    take_grade(rules, test.coupon, test.grade, id, out);
    take_description(test.grade, id, out);
    if (test.coupon.record.get("operation") == "machine")
        out.push_back(shortcoming(Shortcoming::Kind::by_machine, id));
    take_acceptance(rules, test.coupon, id, out);
    take_missing_exams(rules, test.coupon, weld, id, out);
    return out;
}

Refusal refusal_of(const std::vector<Impediment> &impediments) {
    std::string all;
    for (const auto &one : impediments) all += (all.empty() ? "" : "\n") + one.text;
    Refusal out = refused(all);
    for (const auto &one : impediments)
        if (one.remedy) out.mend(*one.remedy);
    return out;
}

std::vector<Impediment> impediments_of(const CouponRecord &test, const std::string &name, Day today) {
    std::vector<Impediment> out;
    const auto correct = [&](const char *field) -> Remedy { return {"change", {test.id}, {field, "why"}}; };
    if (!test.withdrawn.empty()) out.push_back({name + " is withdrawn: " + test.withdrawn, {}});
    const std::string welded = test.get("welded");
    if (welded.empty())
        out.push_back(
            {name + ": on which day was it welded? the qualification begins then", correct("welded")});
    else if (parse_day(welded) > today)
        out.push_back(
            {name + " is said to be welded on " + welded + ", which is to come", correct("welded")});
    if (test.get("purpose") == "practice")
        out.push_back(
            {name + " was welded for practice; a test is registered as one before it is welded", {}});
    if (test.bends_failed()) out.push_back({name + ": its mechanical tests failed", {}});
    if (test.get("process").empty())
        out.push_back({name + ": by which process was it welded?", correct("process")});
    for (const char *field : {"filler-group", "filler-type"})
        if (const std::string why = filler_of_several(test, field); !why.empty())
            out.push_back({name + ": " + why, correct(field)});
    if (const std::string why = backing_of_later(test); !why.empty())
        out.push_back({name + ": " + why, correct("backing")});
    if (const std::string why = deposits_over_weld(test); !why.empty())
        out.push_back({name + ": " + why, correct("process")});
    return out;
}

std::vector<Impediment> unknown_words(const RangeRules &rules, const Weld &test, const std::string &name,
                                      const CouponRecord *on_record) {
    std::vector<Impediment> out;
    const auto asked_of_every_test = [&](Trait trait) {
        return std::any_of(rules.variables.begin(), rules.variables.end(),
                           [&](const Variable &v) { return v.of == trait && v.work.text.empty(); });
    };
    for (std::size_t i = 0; i < word_traits; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (!test.knows(trait)) continue;
        try {
            check_test_word(rules, trait, test);
        } catch (const InputError &e) {
            out.push_back({name + ": " + e.what(), {}});
            if (!on_record || on_record->get(field_of(trait)).empty() || asked_of_every_test(trait)) continue;
            out.back().text += "; or take it off the coupon, if these rules do not ask it of such a test";
            out.back().remedy = Remedy{"change", {on_record->id}, {"forget", "why"}};
        }
    }
    return out;
}

std::string no_longer_proves(const CouponState &coupon, const std::string &welder) {
    const std::string name = "coupon " + coupon.record.id;
    if (coupon.grade && !coupon.grade->passed)
        return name + " was graded failed on " + print(day_of(*coupon.grade));
    if (coupon.record.bends_failed()) return "the mechanical tests of " + name + " failed";
    if (coupon.record.get("purpose") == "practice") return name + " was welded for practice";
    if (const auto by = coupon.record.get("welder"); by != welder)
        return name + (by.empty() ? " names no welder now" : " is said now to be welded by " + by);
    return "";
}

TestEvidence evidence(Office &office, const GradedTests &tests, const CouponState &coupon,
                      const RangeRules &rules, const RuleWords &words) {
    TestEvidence out;
    out.test = coupon.record;
    take_rule_words(out.test, words, rules);
    const std::string name = "coupon " + coupon.record.id;
    if (!coupon.grade || !coupon.grade->passed)
        out.impediments.push_back({name + (coupon.grade ? " was graded failed" : " is not graded") +
                                       "; only a coupon that was graded passed qualifies",
                                   {}});
    for (const auto &[who, what] : said_by_welders(office, coupon, Fellows::all))
        out.impediments.push_back(
            {name + ": " + who + ", " + what + "; another person says it anew (common practice, no source)",
             {}});
    const GradeStanding grade = standing_of_grade(office, coupon);
    const Day today = office.outside().today();
    for (auto &one : impediments_of(out.test, name, today)) out.impediments.push_back(std::move(one));
    const std::string welded = out.test.get("welded");
    const auto history = office.book().history(coupon.record.id);
    out.welded = welded.empty() ? today : earliest_weld_day(history).value_or(parse_day(welded));
    if (std::string why = uncovered_metal(rules, out.test.get("material")); !why.empty())
        out.impediments.push_back({name + ": " + why, {}});
    const auto welds = welds_named(out.test);
    std::vector<Shortcoming> of_all; // whatever the process
    take_grade(rules, coupon, grade, "", of_all);
    take_acceptance(rules, coupon, "", of_all);
    take_description(grade, "", of_all);
    take_turned(office, coupon, of_all);
    if (!was_test(history)) of_all.push_back(shortcoming(Shortcoming::Kind::purpose));
    if (out.test.get("operation") == "machine") of_all.push_back(shortcoming(Shortcoming::Kind::by_machine));
    for (std::size_t part = 0; part < welds.size(); ++part) {
        for (auto &one : unknown_words(rules, welds[part], name, &coupon.record))
            out.impediments.push_back(std::move(one));
        PartEvidence one{part, welds[part], rests_on(coupon), of_all};
        take_missing_exams(rules, coupon, one.weld, "", one.lacks);
        if (const auto *revoked = tests.revoked_since(one.weld.word(Trait::process), out.welded))
            one.lacks.push_back(revoked_lack(*revoked));
        take_retest(rules, tests, coupon, one, tests.retest_of(out.test, out.welded, one.weld, rules));
        out.parts.push_back(std::move(one));
    }
    return out;
}

GivenCoupons evidence_of(Office &office, const GradedTests &tests, const std::string &mark,
                         const std::string &process, const RangeRules &rules,
                         const std::vector<std::string> &coupons, const RuleWords &words) {
    GivenCoupons out;
    std::vector<Impediment> impediments;
    std::vector<PartEvidence> chosen;
    std::set<std::string> seen;
    for (const auto &id : coupons) {
        if (!seen.insert(id).second) {
            impediments.push_back({"coupon " + id + " is given twice", {}});
            continue;
        }
        const CouponState coupon = office.coupon(id);
        if (coupon.record.get("welder") != mark) {
            impediments.push_back({"coupon " + id + " was not welded by " + mark, {}});
            continue;
        }
        TestEvidence proof = evidence(office, tests, coupon, rules, words);
        std::erase_if(proof.parts,
                      [&](const PartEvidence &p) { return p.weld.word(Trait::process) != process; });
        if (proof.parts.empty())
            impediments.push_back({"coupon " + id + " was welded with '" + shown(proof.test.get("process")) +
                                       "', not with " + process,
                                   {}});
        else
            chosen.push_back(
                *std::min_element(proof.parts.begin(), proof.parts.end(), [](const auto &a, const auto &b) {
                    return a.lacks.size() < b.lacks.size();
                }));
        impediments.insert(impediments.end(), proof.impediments.begin(), proof.impediments.end());
        out.welded.push_back(proof.welded);
    }
    if (!impediments.empty()) throw refusal_of(impediments);
    for (auto &one : chosen) {
        // A retest that is not satisfied with this coupon may be with another that is given too.
        const bool with_another = std::any_of(chosen.begin(), chosen.end(), [&](const PartEvidence &other) {
            return &other != &one && holds(other.evidence.coupons, one.evidence.coupon);
        });
        if (with_another)
            std::erase_if(one.lacks,
                          [](const Shortcoming &lack) { return lack.kind == Shortcoming::Kind::retest; });
        for (auto &lack : one.lacks) {
            if (coupons.size() > 1 && lack.coupon.empty()) lack.coupon = one.evidence.coupon;
            out.lacks.push_back(std::move(lack));
        }
        out.evidence.push_back(one.evidence);
    }
    return out;
}

SetAside set_aside(const std::string &opening, const std::vector<Shortcoming> &lacks, const RangeRules &rules,
                   const std::string &why) {
    const std::string reason = checked_reason(why, "override");
    if (lacks.empty()) return {};
    std::string all;
    std::vector<std::string> told;
    for (const auto &lack : lacks) {
        told.push_back((lack.process.empty() ? "" : lack.process + ": ") + words_of(lack, &rules));
        all += "\n  " + told.back();
    }
    if (reason.empty()) {
        Refusal out =
            refused(opening + ":" + all +
                    "\nIf the governing rules allow it all the same, a reason sets this aside; it is kept on "
                    "the record");
        for (const auto &lack : lacks)
            if (lack.kind == Shortcoming::Kind::failed_day)
                out.mend({"change", {lack.coupon}, {"welded", "why"}});
            else if (lack.kind == Shortcoming::Kind::unjudged)
                out.mend({"change", {lack.coupon}, {"criteria", "class", "why"}});
            else if (lack.kind == Shortcoming::Kind::nameless)
                out.mend({"enrol", lack.lacks, {"name", "why"}});
        throw NotSetAside(std::move(out).give("override"), std::move(told));
    }
    return {lacks, reason};
}

void note_reason_unused(const SetAside &aside, const std::string &why, std::vector<std::string> &notes) {
    if (aside.what.empty() && !why.empty())
        notes.push_back("nothing had to be set aside; the reason given for it is not kept");
}

} // namespace beadbook
