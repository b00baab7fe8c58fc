#include "report/standing_document.hpp"

#include "measure/text.hpp"
#include "operations/faults.hpp"
#include "operations/marks.hpp"
#include "operations/shortcoming_words.hpp"
#include "report/coupon_document.hpp"
#include "report/people_document.hpp"
#include "report/range_words.hpp"
#include "report/rules_document.hpp"

namespace beadbook {
namespace {

std::string name_line(const WelderRecord &welder) {
    return "Welder " + welder.mark + (welder.name.empty() ? "" : ", " + welder.name) +
           (welder.employer.empty() ? "" : ", " + welder.employer);
}

std::string origin(const HeldQualification &held) {
    return (held.record.carried() ? "carried in: " : "coupon " + held.record.test.id + ": ") +
           print(held.weld, held.record.test.unit()) + ", welded " + print(held.record.welded);
}

Words record_to_type(const std::string &before, const HeldQualification &held) {
    return Words::to_type(before + "'beadbook record " + held.mark + " " +
                          std::to_string(held.record.number) + "'");
}

/// What was set aside, and why.
std::vector<Bullet> aside_items(const std::vector<Shortcoming> &overridden, const RangeRules *rules,
                                const std::string &why) {
    std::vector<Bullet> out;
    for (const auto &one : words_of(overridden, rules)) out.push_back({"set aside: " + one, "", {}});
    if (!why.empty()) out.push_back({"because: " + why, "", {}});
    return out;
}

std::string subject_of(const WelderEvent &e) {
    return e.kind + (e.process.empty() ? "" : " " + e.process) +
           (e.qualification > 0 ? " #" + std::to_string(e.qualification) : "");
}

std::string text_of(const WelderStanding &standing, const WelderEvent &e) {
    std::string out = e.text;
    if (!e.overridden.empty())
        out += "; set aside: " + listed(words_of(e.overridden, rules_of(e, standing.held)));
    if (!e.override_why.empty()) out += "; because: " + e.override_why;
    if (const auto why = standing.undone.find(e.seq); why != standing.undone.end())
        out += "; counts no more: " + why->second;
    return out;
}

} // namespace

Words held_words(const HeldQualification &held) {
    Words out = state_words(held.validity.state);
    return out + Words(resting_words(held.aside, held.validity), Tone::cannot_say);
}

Words held_in_a_cell(const HeldQualification &held) {
    return held_words(held) +
           (held.validity.with_caution ? Words(", with a caution", Tone::cannot_say) : Words());
}

std::string resting_words(const std::vector<Aside> &aside, const Validity &validity) {
    return !aside.empty()     ? " (by override)"
           : validity.by_late ? " (by what was entered late)"
           : validity.by_name ? " (who the welder is was asked)"
                              : "";
}

std::vector<Bullet> aside_bullets(const std::vector<Aside> &all, const RangeRules *rules) {
    std::vector<Bullet> out;
    for (const auto &one : all) out.push_back({words_of(one, rules), "", {}});
    return out;
}

Words state_words(Validity::State state) {
    return {std::string(name_of(state)), state == Validity::State::valid       ? Tone::accept
                                         : state == Validity::State::not_begun ? Tone::cannot_say
                                                                               : Tone::reject};
}

std::string to_do_text(const NextStep &step) {
    switch (step.to_do) {
    case ToDo::use:
        return "use the process and log it" +
               (step.otherwise ? ", or it ends on " + print(*step.otherwise) : std::string());
    case ToDo::extend: return "extend it or test again";
    case ToDo::renew:
        return "renew it: " + std::to_string(step.coupons) + (step.coupons == 1 ? " coupon" : " coupons");
    case ToDo::settle: return "look at the coupon, and settle the doubt";
    case ToDo::test: break;
    }
    return step.coupons == 0 ? "test again"
                             : "test again: " + counted(static_cast<std::size_t>(step.coupons), "coupon") +
                                   " must pass, as one of its kind failed";
}

std::string next_words(const HeldQualification &held) {
    const auto step = next_step(held);
    if (!step) return held.validity.state == Validity::State::valid ? "nothing, it has no end" : "";
    const bool ahead = held.validity.state == Validity::State::valid;
    return (ahead ? "by " + print(*step->by) + " " : std::string()) + to_do_text(*step);
}

namespace {

/// Only what was said of the coupon is said otherwise: that, in place of a word for all that may be taken
/// back.
std::string gone_words(const std::vector<TakenBack> &what) {
    std::vector<std::string> changed;
    for (const auto &one : what) {
        using Kind = TakenBack::Kind;
        if (one.kind != Kind::description && one.kind != Kind::weld && one.kind != Kind::welder)
            return "something was taken back of it";
        const auto said = [&](const std::string &value) {
            return (one.kind == Kind::welder ? "welder " : "") + (value.empty() ? "nobody" : value);
        };
        std::string words = said(one.was) + " to " + said(one.now);
        if (std::find(changed.begin(), changed.end(), words) == changed.end())
            changed.push_back(std::move(words));
    }
    return "changed after it was examined: " + joined(changed, "; ");
}

} // namespace

void add_gone(Document &doc, const std::vector<WelderStanding::Gone> &all) {
    for (const auto &[coupon, what] : all) {
        std::vector<Bullet> under;
        for (const auto &one : what) under.push_back({taken_back_text(one), "", {}});
        doc.item("coupon " + coupon + ": " + gone_words(what), "", std::move(under));
    }
}

Words standing_words(const HeldQualification &held) {
    const Validity &v = held.validity;
    const bool doubt = v.state == Validity::State::in_doubt && v.until;
    return Words(title_of(held) + ": ") + held_words(held) + (doubt ? " since " + print(*v.until) : "") +
           ", " + v.reason;
}

void add_struck(Document &doc, const std::vector<StruckOut> &all) {
    for (const auto &one : all) {
        const std::string by =
            one.stamp.who + " on " + one.stamp.at.substr(0, 10) + (one.why.empty() ? "" : ": " + one.why);
        if (one.kind == StruckOut::Kind::entry)
            doc.item("retracted: " + one.was + " of " + one.day +
                     (one.text.empty() ? "" : " (" + one.text + ")") + ", by " + by);
        else
            doc.item(std::string(name_of(one.kind)) + " was " + one.was + " until " +
                     (one.now.empty() ? "it was taken off by " : one.now + " was entered by ") + by);
    }
}

std::string entered_words(const WelderEvent &event) {
    const auto entered = entered_later(event);
    return entered ? ", entered on " + print(*entered) : "";
}

Document document_of(const Enrolled &done) {
    return Document{}.line("welder " + done.welder.mark + " registered");
}

Document document_of(const EnrolledMany &done) {
    std::vector<std::string> marks;
    for (const auto &welder : done.welders) marks.push_back(welder.mark);
    return Document{}.line(counted(marks.size(), "welder") + " registered: " + marks_text(marks));
}

Document document_of(const WelderChanged &done) {
    return Document{}.line("welder " + done.welder.mark + " changed; the old entry is kept");
}

Document document_of(const ProcessLogged &done) {
    Document doc;
    const std::string day = print(done.event.day);
    if (done.event.kind == "training")
        return doc.line("training of welder " + done.mark + " in " + done.event.process + " on " + day +
                        " logged");
    doc.line("welder " + done.mark + " used " + done.event.process + " on " + day);
    for (const auto &held : done.held) doc.item(standing_words(held));
    return doc;
}

Document document_of(const Retracted &done) {
    return Document{}.line("entry " + std::to_string(done.entry) + " of welder " + done.mark + " (" +
                           done.kind + ") retracted; it is kept in the history");
}

Document document_of(const WelderStanding &standing) {
    Document doc;
    const WelderRecord &welder = standing.welder.record;
    doc.title = name_line(welder);
    doc.heading(doc.title);
    if (!welder.note.empty()) doc.line("note: " + welder.note);
    doc.line({"as it stands on " + print(standing.on), Tone::quiet});
    for (const auto &held : standing.held) {
        auto under = aside_items(held.record.overridden, held.rules.get(), held.record.override_why);
        if (const std::string unknown = not_known_words(*held.rules); !unknown.empty())
            under.insert(under.begin(), Bullet{unknown, "", {}});
        under.insert(under.begin(),
                     Bullet{origin(held) + record_to_type("; what it qualifies stands in ", held), "", {}});
        if (const std::string next = next_words(held); !next.empty())
            under.insert(under.begin(), Bullet{"next: " + next, "", {}});
        for (auto &item : rounded_items(held.range, held.rules->ends, held.record.test.unit()))
            under.push_back(std::move(item));
        doc.item(standing_words(held), authority(held.validity.from), std::move(under));
    }
    if (standing.held.empty()) doc.line("holds no qualification");
    for (const auto &one : standing.to_qualify)
        doc.item(Words("coupon " + one.coupon +
                       " was graded passed and qualifies nothing yet: the instructor "
                       "qualifies by it next, by " +
                       listed(one.rules, "or")) +
                 Words::to_type(" ('beadbook qualify " + one.coupon + "' with the rules)"));
    add_failed(doc, standing.failed);
    add_not_judged(doc, standing.not_judged);
    add_gone(doc, standing.gone);
    add_struck(doc, standing.struck);
    if (!standing.welder.events.empty()) {
        doc.heading("Logged", 2);
        for (const auto &e : standing.welder.events) {
            const std::string text = text_of(standing, e);
            doc.line(print(e.day) + "  " + subject_of(e) + (text.empty() ? "" : ": " + text) + "  (by " +
                     e.stamp.who + entered_words(e) + ", entry " + std::to_string(e.seq) + ")");
        }
    }
    return doc.caution();
}

namespace {

/// What is taken away has a day since when, and what is in doubt holds on no day until that is settled.
std::string through_words(const Validity &validity) {
    const bool in_doubt = validity.state == Validity::State::in_doubt;
    const std::string day = validity.until ? print(*validity.until) : "";
    if (!in_doubt && !taken_away(validity.state)) return day;
    return !day.empty() ? "not since " + day : in_doubt ? "not until settled" : "no more";
}

} // namespace

Document document_of(const std::vector<WelderStanding> &all) {
    Document doc;
    doc.title = "Welders";
    Grid table{{{"welder"}, {"name"}, {"qualification"}, {"state"}, {"through"}}, {}};
    for (const auto &standing : all) {
        const WelderRecord &welder = standing.welder.record;
        if (standing.held.empty())
            table.rows.push_back({welder.mark, welder.name, "holds no qualification", "", ""});
        for (const auto &held : standing.held)
            table.rows.push_back({welder.mark, welder.name, title_of(held), held_in_a_cell(held),
                                  through_words(held.validity)});
    }
    if (all.empty()) return doc.line("no welder is on record");
    doc.line({"as it stands on " + print(all.front().on), Tone::quiet});
    return doc.add(std::move(table));
}

namespace {

void add_qualifications(Document &doc, const DueList &due) {
    Grid table{{{"by"}, {"time left"}, {"welder"}, {"qualification"}, {"state"}, {"to do"}, {"why"}}, {}};
    for (const auto &one : due.items)
        table.rows.push_back(
            {print(one.by.value_or(due.on)), time_left(one.days_left), one.held.mark, title_of(one.held),
             held_in_a_cell(one.held),
             to_do_text(one) + (one.at_hand.empty() ? "" : "; at hand, passed: " + listed(one.at_hand)),
             one.held.validity.reason});
    doc.add(std::move(table));
}

void add_endings(Document &doc, const std::vector<Ending> &all) {
    Grid table{{{"by"}, {"time left"}, {"who or what"}, {"ends"}, {"to do"}}, {}};
    for (const auto &one : all)
        table.rows.push_back(
            {print(one.by), time_left(one.days_left), one.subject, ending_words(one), to_do_words(one)});
    doc.add(std::move(table));
}

} // namespace

Document document_of(const DueList &due) {
    Document doc;
    doc.title = "Due through " + print(due.through) + ", as it stands on " + print(due.on);
    if (due.items.empty() && due.endings.empty())
        return doc.line("nothing is due through " + print(due.through) +
                        (due.next ? "; the next day is " + print(*due.next) + ", " + due.next_of : ""));
    if (!due.items.empty()) add_qualifications(doc, due);
    if (!due.endings.empty()) add_endings(doc, due.endings);
    return doc;
}

Document document_of(const Granted &granted) {
    Document doc;
    for (const auto &held : granted.held) {
        const bool valid = held.validity.state == Validity::State::valid;
        doc.line(Words("welder " + granted.mark + (valid ? " holds " : " was granted ")) +
                 standing_words(held));
        for (auto &item : aside_items(held.record.overridden, held.rules.get(), held.record.override_why))
            doc.item(std::move(item.words));
        if (const std::string unknown = not_known_words(*held.rules); !unknown.empty())
            doc.item(Words(unknown, Tone::cannot_say));
        doc.line(record_to_type("  see ", held));
    }
    return doc;
}

Document document_of(const QualifiedMany &done) {
    Document doc;
    doc.line(done.granted.empty() ? "nothing was qualified"
                                  : counted(done.granted.size(), "coupon") + " qualified " +
                                        (done.granted.size() == 1 ? "its welder" : "their welders") + " by " +
                                        done.rules + ":");
    for (const auto &one : done.granted)
        for (const auto &held : one.granted.held) {
            std::vector<Bullet> under;
            if (const std::string unknown = not_known_words(*held.rules); !unknown.empty())
                under.push_back({{unknown, Tone::cannot_say}, "", {}});
            doc.item(Words(one.coupon, Tone::strong) + Words(" by " + one.granted.mark + ": ") +
                         standing_words(held),
                     "", std::move(under));
        }
    if (!done.lacking.empty())
        doc.line({counted(done.lacking.size(), "coupon") + " did not qualify:", Tone::cannot_say});
    for (const auto &one : done.lacking) {
        std::vector<Bullet> under;
        for (const auto &why : one.why) under.push_back({why, "", {}});
        doc.item(Words(one.coupon, Tone::strong) + Words(one.welder.empty() ? "" : " by " + one.welder), "",
                 std::move(under));
    }
    if (!done.lacking.empty())
        doc.line(
            "what mends one, or what a reason would set aside, is told when it alone is asked for, by the "
            "same rules: 'beadbook qualify " +
            done.lacking.front().coupon + "'");
    if (!done.passed_over.empty()) doc.line("left out:");
    for (const auto &one : done.passed_over) doc.item(one.coupon + ": " + one.why);
    return doc;
}

Document document_of(const StandingChange &change) {
    Document doc;
    const WelderEvent &event = change.event;
    const HeldQualification &now = change.now;
    const std::string who = "welder " + now.mark;
    if (event.kind == "revocation")
        doc.line("qualification " + title_of(now) + " of " + who + " revoked as of " + print(event.day));
    else if (event.kind == "extension")
        doc.line(who + ", " + title_of(now) + " lasts through " +
                 (now.validity.ends ? print(*now.validity.ends) : "-"));
    else
        doc.line(Words(who + ", ") + standing_words(now));
    for (auto &item : aside_items(event.overridden, now.rules.get(), event.override_why))
        doc.item(std::move(item.words));
    return doc;
}

} // namespace beadbook
