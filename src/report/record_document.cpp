#include "report/record_document.hpp"

#include "criteria/provenance.hpp"
#include "measure/text.hpp"
#include "operations/looser_rules.hpp"
#include "operations/said_beside.hpp"
#include "operations/shortcoming_words.hpp"
#include "report/coupon_document.hpp"
#include "report/judgement_document.hpp"
#include "report/own_file.hpp"
#include "report/photo_document.hpp"
#include "report/proof_document.hpp"
#include "report/rules_document.hpp"
#include "report/standing_document.hpp"
#include "report/weld_map.hpp"

namespace beadbook {
namespace {

void add_who(Document &doc, const RecordSheet &s) {
    doc.heading("Welder", 2).pair("mark", s.welder.mark);
    if (!s.welder.name.empty()) doc.pair("name", s.welder.name);
    if (!s.welder.employer.empty()) doc.pair("employer", s.welder.employer);
}

void add_standing(Document &doc, const RecordSheet &s) {
    const Validity &v = s.held.validity;
    doc.heading("Standing on " + print(s.on), 2)
        .pair("state", held_words(s.held), v.reason)
        .pair("rule", authority(v.from), "way " + s.held.record.way);
    if (const std::string next = next_words(s.held); !next.empty()) doc.pair("next", next);
    for (const auto &e : s.events) {
        std::string note =
            e.text + (e.stamp.who.empty() ? "" : " (logged by " + e.stamp.who + entered_words(e) + ")");
        if (const auto why = s.undone.find(e.seq); why != s.undone.end())
            note += "; counts no more: " + why->second;
        if (e.evidence.empty() && !e.override_why.empty())
            note += (e.overridden.empty() ? "; because: " : "; by override, because: ") + e.override_why;
        doc.pair(e.kind, print(e.day), note);
    }
}

void add_range(Document &doc, const RecordSheet &s) {
    const RangeRules &rules = *s.held.rules;
    doc.heading("Qualifies by " + rules.title + " (" + rules.edition + ")", 2);
    if (const std::string own = rules.own_file_words(); !own.empty())
        doc.pair("these rules", Words(own, Tone::cannot_say));
    for (const auto &looser : looser_rules_words(rules)) doc.pair("", Words(looser, Tone::cannot_say));
    for (const auto &one : s.held.range) {
        if (!may_matter(s.held.range, *one.variable)) continue;
        std::string name(info(one.variable->of).name);
        const std::string in = one.variable->work.text.empty() ? "" : "in " + one.variable->work.text + ": ";
        if (one.parts.empty()) doc.pair(name, in + "nothing", "no rule speaks of such a test");
        for (const auto &part : one.parts) {
            if (part.rule->kind == RangeRule::Kind::unread) {
                doc.pair(name, Words(in + print(part, s.held.record.test.unit()), Tone::cannot_say));
                continue;
            }
            std::string value = print(part, s.held.record.test.unit());
            if (!part.rule->work.text.empty()) value += ", for " + part.rule->work.text;
            if (part.applies == Truth::unknown)
                value = "cannot say: " + name_of(part.lacks.front()) + " is missing";
            std::string source = authority(part.rule->clause, part.rule->standing);
            if (part.rounded() && rules.ends.from) source += "; compared by " + authority(*rules.ends.from);
            doc.pair(name, in + value, source);
            name.clear();
            if (!part.rule->reading.empty()) doc.pair("", "our reading", part.rule->reading);
        }
    }
    for (const auto &gap : rules.gaps) doc.pair(&gap == &rules.gaps.front() ? "not in these rules" : "", gap);
}

void add_test(Document &doc, const RecordSheet &s) {
    const QualificationRecord &q = s.held.record;
    doc.heading("Test as welded", 2).pair("coupon", q.carried() ? "carried in from elsewhere" : q.test.id);
    for (const auto &field : coupon_fields()) {
        const std::string value = q.test.get(field.name);
        const std::string &process = s.held.weld.word(Trait::process);
        if (value.empty()) continue;
        if (field.name == "process")
            doc.pair("process", process, value == process ? "" : "of " + value);
        else if (field.name != "welder" && field.name != "units" && field.name != "criteria" &&
                 field.name != "class")
            doc.pair(field.name, value);
    }
    for (const auto &[field, word] : s.own_words)
        doc.pair(field, Words(word, Tone::cannot_say), "as the coupon says it");
    if (q.carried()) doc.pair("document", "SHA-256 " + q.document);
}

void add_aside(Document &doc, const std::vector<Shortcoming> &overridden, const RangeRules &rules,
               const std::string &why) {
    for (const auto &one : words_of(overridden, &rules)) doc.pair("set aside", one);
    if (!why.empty()) doc.pair("because", why);
}

void add_evidence(Document &doc, const Evidence &e) {
    if (!e.criteria.empty()) {
        const std::string own = own_file_words(e.criteria, e.criteria_hash);
        doc.pair("criteria", e.criteria + ", " + e.edition,
                 (own.empty() ? "" : own + "; ") + "SHA-256 " + e.criteria_hash);
    }
    for (const auto &x : e.exams)
        doc.pair(x.method, x.date,
                 x.examiner +
                     (x.level.empty()
                          ? ""
                          : ", level " + x.level +
                                (x.level_as_typed ? " as typed, nobody on record vouched for it" : "")) +
                     (x.procedure.empty() ? "" : ", " + x.procedure) +
                     (x.incomplete.empty() ? "" : "; does not count: " + x.incomplete));
    if (!e.mechanical.empty()) doc.pair("mechanical", e.mechanical);
    if (!e.verdict.empty()) doc.pair("verdict", e.verdict);
    if (!e.graded_by.empty())
        doc.pair("grade", "passed for class " + e.class_id,
                 "by " + e.graded_by + " at " + e.graded_at +
                     (e.against_verdict ? "; against the verdict" : "") +
                     (e.remark.empty() ? "" : "; " + e.remark));
    if (e.after || !e.retest_after.empty())
        doc.pair("retest", "after " + (e.after ? words_of(*e.after) : e.retest_after),
                 (e.coupons.size() == 1 ? "coupon " : "coupons ") + listed(e.coupons));
}

void add_later_evidence(Document &doc, const WelderEvent &event, const RangeRules &rules) {
    if (event.evidence.empty()) return;
    doc.heading((event.kind == "renewal" ? "Renewed on " : "Extended on ") + print(event.day), 2);
    for (const auto &e : event.evidence) {
        doc.pair("coupon", e.coupon);
        add_evidence(doc, e);
    }
    add_aside(doc, event.overridden, rules, event.override_why);
}

} // namespace

Document document_of(const RecordSheet &s) {
    Document doc;
    const QualificationRecord &q = s.held.record;
    doc.title = "Qualification " + std::to_string(q.number) + " of welder " + s.welder.mark + ", " +
                s.held.weld.word(Trait::process);
    doc.heading(doc.title).line({print(s.held.weld, q.test.unit()), Tone::quiet});
    add_who(doc, s);
    add_standing(doc, s);
    add_range(doc, s);
    add_test(doc, s);
    if (const std::string unknown = not_known_words(*s.held.rules); !unknown.empty())
        doc.pair("these rules", Words(unknown, Tone::cannot_say));
    if (q.evidence) {
        doc.heading("Examined and graded", 2);
        add_evidence(doc, *q.evidence);
        add_taken_back(doc, s.taken_back);
    }
    add_gone(doc, s.gone);
    add_failed(doc, s.failed);
    add_struck(doc, s.struck);
    add_aside(doc, q.overridden, *s.held.rules, q.override_why);
    for (const auto &test : s.tests) {
        add_own_file(doc, test);
        if (const std::string gaps = not_covered_words(test);
            test.verdict() == Verdict::accept && !gaps.empty())
            doc.line("Coupon " + test.mark + ": " + gaps);
        if (const std::string said = said_beside_words(test.said); !said.empty())
            doc.line({"Coupon " + test.mark + ": " + said, Tone::cannot_say});
    }
    for (const auto &test : s.tests) {
        add_where(doc, test, *test.sought, "Where on coupon " + test.mark + ", as it is on record now");
        for (const auto &find : weld_map(test.coupon, test.indications, test.unit).finds)
            doc.item(find.words);
    }
    for (const auto &photos : s.photos) {
        doc.heading("Photos of coupon " + photos.coupon, 2);
        add_photos(doc, photos);
    }
    for (const auto &event : s.events) add_later_evidence(doc, event, *s.held.rules);
    doc.heading("Proof", 2)
        .pair("granted", s.granted.at, "by " + s.granted.who)
        .pair("rules", s.held.rules->name, "SHA-256 " + q.rules_hash)
        .pair("entry", s.hash)
        .pair("head of the record", s.head);
    doc.add(Signatures{{"graded by, date", "for the employer, date"}});
    return doc.caution();
}

Document document_of(const PaperWritten &done) {
    return Document{}.line(done.what + " written to " + done.to);
}

} // namespace beadbook
