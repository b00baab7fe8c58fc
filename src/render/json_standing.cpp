#include "render/json_standing.hpp"

#include "criteria/provenance.hpp"
#include "operations/shortcoming_words.hpp"
#include "records/codecs/welder.hpp"
#include "render/json_parts.hpp"
#include "render/json_people.hpp"
#include "render/json_photos.hpp"
#include "render/json_weld.hpp"
#include "report/rules_document.hpp"

namespace beadbook {
namespace {

using nlohmann::json;

std::string_view name_of(ToDo to_do) {
    constexpr std::string_view names[] = {"use", "extend", "renew", "test", "settle"};
    return names[static_cast<std::size_t>(to_do)];
}

/// What a qualification asks for next, and until when.
json step_json(const NextStep &step) {
    json out{{"to do", to_do_text(step)}, {"act", name_of(step.to_do)}};
    if (step.by) out["by"] = print(*step.by);
    if (step.coupons > 0) out["coupons"] = step.coupons;
    if (step.otherwise) out["otherwise"] = print(*step.otherwise);
    return out;
}

json held_json(const HeldQualification &held) {
    const Validity &v = held.validity;
    const QualificationRecord &q = held.record;
    json out{{"welder", held.mark},
             {"number", q.number},
             {"rules", held.rules->name},
             {"shipped rules", held.rules->own_file_mark().empty()},
             {"way", held.way().id},
             {"process", held.weld.word(Trait::process)},
             {"test", weld_json(held.weld, q.test.unit())},
             {"welded", print(q.welded)},
             {"state", name_of(v.state)},
             {"with caution", v.with_caution},
             {"reason", v.reason},
             {"authority", authority(v.from)}};
    if (q.carried())
        out["document"] = q.document;
    else
        out["coupon"] = q.test.id;
    if (v.until) out["until"] = print(*v.until);
    if (v.use_by) out["use by"] = print(*v.use_by);
    if (v.ends) out["ends"] = print(*v.ends);
    if (const auto step = next_step(held)) out["next"] = step_json(*step);
    if (!q.overridden.empty()) out["overridden"] = words_of(q.overridden, held.rules.get());
    if (!q.override_why.empty()) out["override"] = q.override_why;
    for (const auto &one : held.aside) out["rests on"].push_back(words_of(one, held.rules.get()));
    if (const std::string unknown = not_known_words(*held.rules); !unknown.empty())
        out["not known"] = unknown;
    return out;
}

json held_json(const std::vector<HeldQualification> &all) {
    json out = json::array();
    for (const auto &held : all) out.push_back(held_json(held));
    return out;
}

/// What is stored by kind, and the sentences of it.
void put_words(json &out, const std::vector<Shortcoming> &overridden, const RangeRules *rules) {
    if (!overridden.empty()) out["overridden"] = words_of(overridden, rules);
}
void put_words(json &out, const Evidence &evidence) {
    if (evidence.after) out["retest after"] = words_of(*evidence.after);
    if (!evidence.criteria.empty())
        out["criteria"]["shipped"] = is_shipped_set(evidence.criteria, evidence.criteria_hash);
}

json event_json(const WelderEvent &event, const RangeRules *rules,
                const std::map<std::int64_t, std::string> &undone = {}) {
    json out = codec::json_of(event);
    put_words(out, event.overridden, rules);
    for (std::size_t i = 0; i < event.evidence.size(); ++i) put_words(out["evidence"][i], event.evidence[i]);
    out["kind"] = event.kind;
    out["entry"] = event.seq;
    out["at"] = event.stamp.at;
    out["by"] = event.stamp.who;
    if (const auto why = undone.find(event.seq); why != undone.end()) out["counts no more"] = why->second;
    return out;
}

json events_json(const std::vector<WelderEvent> &events, const std::vector<HeldQualification> &held,
                 const std::map<std::int64_t, std::string> &undone) {
    json out = json::array();
    for (const auto &event : events) out.push_back(event_json(event, rules_of(event, held), undone));
    return out;
}

json welder_json(const WelderRecord &welder) {
    return {{"mark", welder.mark}, {"welder", codec::json_of(welder)}};
}

/// What stands beside a welder or a qualification.
void add_beside(json &out, const std::vector<WelderStanding::Failed> &all_failed,
                const std::vector<WelderStanding::Gone> &all_gone, const std::vector<StruckOut> &all_struck) {
    render::add_failed(out, all_failed);
    for (const auto &[coupon, what] : all_gone) {
        json gone{{"coupon", coupon}};
        render::add_taken_back(gone, what);
        out["taken back"].push_back(std::move(gone));
    }
    for (const auto &one : all_struck) {
        json struck{{"kind", name_of(one.kind)},
                    {"was", one.was},
                    {"why", one.why},
                    {"at", one.stamp.at},
                    {"by", one.stamp.who}};
        for (const auto &[key, text] : {std::pair{"now", one.now}, {"day", one.day}, {"text", one.text}})
            if (!text.empty()) struck[key] = text;
        out["struck out"].push_back(std::move(struck));
    }
}

} // namespace

void render::add_next(json &out, const std::vector<NextRetest> &all) {
    for (const auto &one : all) {
        json next{{"rules", one.rules}};
        if (!one.process.empty()) next["process"] = one.process;
        if (one.coupons > 0 && !one.training_first) next["coupons"] = one.coupons;
        if (one.after_training > 0 && !one.trained) next["coupons after training"] = one.after_training;
        if (!one.exams.empty()) next["examined by"] = one.exams;
        if (one.training_first) next["training first"] = true;
        if (!one.takes.empty()) next["takes"] = one.takes;
        for (const auto &other : one.otherwise)
            next["no retest"].push_back({{"coupon", other.coupon}, {"otherwise", other.in}});
        if (one.from) next["clause"] = authority(*one.from);
        out["next"].push_back(std::move(next));
    }
}

void render::add_failed(json &out, const std::vector<WelderStanding::Failed> &all) {
    for (const auto &one : all) {
        json failed{{"coupon", one.coupon}, {"by", one.by}};
        if (!one.process.empty()) failed["process"] = one.process;
        if (one.welded) failed["welded"] = print(*one.welded);
        add_next(failed, one.next);
        if (!one.criteria.empty()) failed["failed for"] = one.criteria;
        if (!one.judged_now.empty()) failed["judged for now"] = one.judged_now;
        for (const auto &other : one.others)
            failed["rules take"].push_back({{"rules", other.rules}, {"criteria", other.by}});
        if (!one.passed_since.empty()) failed["passed since"] = one.passed_since;
        out["failed"].push_back(std::move(failed));
    }
}

std::string json_text(const Enrolled &done, const std::vector<std::string> &notes) {
    return render::finished(welder_json(done.welder), notes);
}

std::string json_text(const EnrolledMany &done, const std::vector<std::string> &notes) {
    json out = json::array();
    for (const auto &welder : done.welders) out.push_back(welder_json(welder));
    return render::finished(std::move(out), notes);
}

std::string json_text(const WelderChanged &done, const std::vector<std::string> &notes) {
    return render::finished(welder_json(done.welder), notes);
}

std::string json_text(const WelderStanding &standing, const std::vector<std::string> &notes) {
    json out = welder_json(standing.welder.record);
    out["on"] = print(standing.on);
    out["qualifications"] = held_json(standing.held);
    out["events"] = events_json(standing.welder.events, standing.held, standing.undone);
    for (const auto &one : standing.to_qualify)
        out["to qualify"].push_back({{"coupon", one.coupon}, {"rules", one.rules}});
    for (const auto &one : standing.not_judged) {
        json item{{"coupon", one.coupon}, {"shows", one.shows}};
        if (!one.process.empty()) item["process"] = one.process;
        if (one.welded) item["welded"] = print(*one.welded);
        out["not judged"].push_back(std::move(item));
    }
    add_beside(out, standing.failed, standing.gone, standing.struck);
    return render::finished(std::move(out), notes);
}

std::string json_text(const std::vector<WelderStanding> &all, const std::vector<std::string> &notes) {
    json out = json::array();
    for (const auto &standing : all) {
        json one = welder_json(standing.welder.record);
        one["qualifications"] = held_json(standing.held);
        out.push_back(std::move(one));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const DueList &due, const std::vector<std::string> &notes) {
    json out = json::array();
    for (const auto &one : due.items) {
        json item = held_json(one.held);
        item["days left"] = one.days_left;
        if (!one.at_hand.empty()) item["at hand"] = one.at_hand;
        item.erase("next"); // its parts stand here themselves
        item.update(step_json(one));
        out.push_back(std::move(item));
    }
    for (const auto &one : due.endings) out.push_back(ending_json(one));
    return render::finished(std::move(out), notes);
}

std::string json_text(const Granted &granted, const std::vector<std::string> &notes) {
    return render::finished({{"welder", granted.mark}, {"qualifications", held_json(granted.held)}}, notes);
}

std::string json_text(const QualifiedMany &done, const std::vector<std::string> &notes) {
    json out{{"rules", done.rules},
             {"qualified", json::array()},
             {"lacking", json::array()},
             {"left out", json::array()}};
    for (const auto &one : done.granted)
        out["qualified"].push_back({{"coupon", one.coupon},
                                    {"welder", one.granted.mark},
                                    {"qualifications", held_json(one.granted.held)}});
    for (const auto &one : done.lacking) {
        json lacking{{"coupon", one.coupon}, {"why", one.why}};
        if (!one.welder.empty()) lacking["welder"] = one.welder;
        out["lacking"].push_back(std::move(lacking));
    }
    for (const auto &one : done.passed_over)
        out["left out"].push_back({{"coupon", one.coupon}, {"why", one.why}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const ProcessLogged &done, const std::vector<std::string> &notes) {
    return render::finished({{"welder", done.mark},
                             {"event", event_json(done.event, nullptr)},
                             {"qualifications", held_json(done.held)}},
                            notes);
}

std::string json_text(const StandingChange &change, const std::vector<std::string> &notes) {
    return render::finished({{"welder", change.now.mark},
                             {"event", event_json(change.event, change.now.rules.get())},
                             {"qualification", held_json(change.now)}},
                            notes);
}

std::string json_text(const Retracted &done, const std::vector<std::string> &notes) {
    return render::finished({{"welder", done.mark}, {"retracted", done.entry}, {"kind", done.kind}}, notes);
}

std::string json_text(const RecordSheet &s, const std::vector<std::string> &notes) {
    const QualificationRecord &q = s.held.record;
    const Validity &v = s.held.validity;
    json out = welder_json(s.welder);
    out["qualification"] = codec::json_of(q);
    out["qualification"].erase("rules file"); // where it lies on a machine is nobody's business
    put_words(out["qualification"], q.overridden, s.held.rules.get());
    if (q.evidence) put_words(out["qualification"]["evidence"], *q.evidence);
    render::add_taken_back(out, s.taken_back);
    add_beside(out, s.failed, s.gone, s.struck);
    for (const auto &[field, word] : s.own_words) out["said by the coupon"][field] = word;
    out["test"] = weld_json(s.held.weld, q.test.unit());
    out["rules"] = {{"name", s.held.rules->name},
                    {"title", s.held.rules->title},
                    {"edition", s.held.rules->edition},
                    {"hash", q.rules_hash},
                    {"shipped", s.held.rules->own_file_mark().empty()},
                    {"gaps", s.held.rules->gaps}};
    out["range"] = range_json(s.held.range, q.test.unit());
    out["on"] = print(s.on);
    out["state"] = name_of(v.state);
    out["with caution"] = v.with_caution;
    out["reason"] = v.reason;
    out["authority"] = authority(v.from);
    if (v.until) out["until"] = print(*v.until);
    if (const std::string unknown = not_known_words(*s.held.rules); !unknown.empty())
        out["not known"] = unknown;
    for (const auto &one : s.held.aside) out["rests on"].push_back(words_of(one, s.held.rules.get()));
    if (const auto step = next_step(s.held)) out["next"] = step_json(*step);
    out["events"] = events_json(s.events, {s.held}, s.undone);
    for (const auto &list : s.photos) {
        nlohmann::json one{{"coupon", list.coupon}};
        render::add_photos(one, list.photos);
        out["photos"].push_back(std::move(one));
    }
    out["granted"] = {{"at", s.granted.at}, {"by", s.granted.who}};
    out["entry hash"] = s.hash;
    out["head"] = s.head;
    return render::finished(std::move(out), notes);
}

std::string json_text(const PaperWritten &done, const std::vector<std::string> &notes) {
    return render::finished({{"what", done.what}, {"written", done.to}}, notes);
}

} // namespace beadbook
