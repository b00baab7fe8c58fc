#include "records/codecs/welder.hpp"

#include "measure/text.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {
namespace {

constexpr std::pair<const char *, std::string WelderRecord::*> welder_texts[] = {
    {"name", &WelderRecord::name}, {"employer", &WelderRecord::employer}, {"note", &WelderRecord::note}};

constexpr std::pair<const char *, std::string QualificationRecord::*> qualification_texts[] = {
    {"rules", &QualificationRecord::rules},           {"rules hash", &QualificationRecord::rules_hash},
    {"rules file", &QualificationRecord::rules_file}, {"way", &QualificationRecord::way},
    {"document", &QualificationRecord::document},     {"override", &QualificationRecord::override_why}};

constexpr std::pair<const char *, std::string WelderEvent::*> event_texts[] = {
    {"process", &WelderEvent::process},
    {"rules", &WelderEvent::rules},
    {"text", &WelderEvent::text},
    {"override", &WelderEvent::override_why}};

constexpr std::pair<const char *, std::string EvidenceExam::*> evidence_exam_texts[] = {
    {"method", &EvidenceExam::method},       {"date", &EvidenceExam::date},
    {"examiner", &EvidenceExam::examiner},   {"level", &EvidenceExam::level},
    {"procedure", &EvidenceExam::procedure}, {"incomplete", &EvidenceExam::incomplete}};

constexpr std::pair<Compare, const char *> compare_ids[] = {{Compare::over, "over"},
                                                            {Compare::at_least, "from"},
                                                            {Compare::under, "under"},
                                                            {Compare::at_most, "to"}};

const char *id_of(Compare c) {
    for (const auto &[compare, id] : compare_ids)
        if (compare == c) return id;
    return "";
}

Compare compare_from(const std::string &id) {
    for (const auto &[compare, name] : compare_ids)
        if (id == name) return compare;
    throw StoreError("an entry is damaged: '" + shown(id) + "' is no comparison");
}

nlohmann::json json_of(const AfterFailure &after) {
    nlohmann::json out{{"coupon", after.coupon}, {"failed", print(after.failed)}};
    for (const Day day : after.trained) out["trained"].push_back(print(day));
    for (const auto &[day, entered] : after.late) out["entered late"][print(day)] = print(entered);
    return out;
}

AfterFailure after_from(const nlohmann::json &json) {
    AfterFailure out{json.value("coupon", ""), parse_day(json.at("failed").get<std::string>()), {}};
    for (const auto &day : json.value("trained", std::vector<std::string>{}))
        out.trained.push_back(parse_day(day));
    for (const auto &[day, entered] : json.value("entered late", std::map<std::string, std::string>{}))
        out.late[parse_day(day)] = parse_day(entered);
    return out;
}

constexpr std::pair<const char *, std::string Shortcoming::*> shortcoming_texts[] = {
    {"coupon", &Shortcoming::coupon},    {"rule", &Shortcoming::rule},
    {"class", &Shortcoming::class_id},   {"verdict then", &Shortcoming::was},
    {"verdict now", &Shortcoming::now},  {"graded by", &Shortcoming::by},
    {"graded on", &Shortcoming::on},     {"remark", &Shortcoming::remark},
    {"criteria", &Shortcoming::criteria}};

nlohmann::json json_of(const Shortcoming &one) {
    nlohmann::json out{{"kind", id_of(one.kind)}};
    put_texts(out, one, shortcoming_texts);
    if (!one.lacks.empty()) out["lacks"] = one.lacks;
    if (one.after) out["after"] = json_of(*one.after);
    if (one.asked > 0) {
        out["asked"] = one.asked;
        out["given"] = one.given;
    }
    return out;
}

Shortcoming shortcoming_from(const nlohmann::json &json) {
    const auto id = json.at("kind").get<std::string>();
    const auto kind = shortcoming_named(id);
    if (!kind) throw StoreError("an entry is damaged: nothing is set aside as '" + shown(id) + "'");
    Shortcoming out;
    out.kind = *kind;
    take_texts(json, out, shortcoming_texts, "set aside");
    out.lacks = json.value("lacks", std::vector<std::string>{});
    if (json.contains("after")) out.after = after_from(json["after"]);
    out.asked = json.value("asked", 0);
    out.given = json.value("given", 0);
    return out;
}

/// Sentences of older programs stay under their own key.
void put_overridden(nlohmann::json &out, const std::vector<Shortcoming> &all) {
    for (const auto &one : all)
        if (one.kind == Shortcoming::Kind::told)
            out["overridden"].push_back(one.text);
        else
            out["set aside"].push_back(json_of(one));
}

std::vector<Shortcoming> overridden_from(const nlohmann::json &json) {
    std::vector<Shortcoming> out;
    for (const auto &text : json.value("overridden", std::vector<std::string>{})) {
        out.emplace_back();
        out.back().text = text;
    }
    for (const auto &one : json.value("set aside", nlohmann::json::array()))
        out.push_back(shortcoming_from(one));
    return out;
}

nlohmann::json json_of(const Evidence &e) {
    nlohmann::json exams = nlohmann::json::array();
    for (const auto &x : e.exams) {
        nlohmann::json one = nlohmann::json::object();
        put_texts(one, x, evidence_exam_texts);
        if (x.level_as_typed) one["level as typed"] = true;
        exams.push_back(std::move(one));
    }
    nlohmann::json grade{{"class", e.class_id}, {"by", e.graded_by}, {"at", e.graded_at}};
    grade["against verdict"] = e.against_verdict;
    if (!e.remark.empty()) grade["remark"] = e.remark;
    nlohmann::json out{{"grade", grade}, {"exams", exams}, {"coupons", e.coupons}};
    if (!e.coupon.empty()) out["coupon"] = e.coupon;
    if (!e.criteria.empty())
        out["criteria"] = {{"set", e.criteria}, {"edition", e.edition}, {"hash", e.criteria_hash}};
    if (!e.verdict.empty()) out["verdict"] = e.verdict;
    if (!e.mechanical.empty()) out["mechanical"] = e.mechanical;
    if (e.after) out["retest"] = json_of(*e.after);
    if (!e.retest_after.empty()) out["retest after"] = e.retest_after;
    return out;
}

Evidence evidence_from(const nlohmann::json &json) {
    Evidence out;
    out.coupon = json.value("coupon", "");
    const auto &g = json.at("grade");
    out.class_id = g.value("class", "");
    out.graded_by = g.value("by", "");
    out.graded_at = g.value("at", "");
    out.remark = g.value("remark", "");
    out.against_verdict = g.value("against verdict", false);
    for (const auto &x : json.value("exams", nlohmann::json::array())) {
        EvidenceExam one;
        take_texts(x, one, evidence_exam_texts, "exam");
        one.level_as_typed = x.value("level as typed", false);
        out.exams.push_back(std::move(one));
    }
    out.coupons = json.value("coupons", std::vector<std::string>{});
    if (json.contains("criteria")) {
        out.criteria = json["criteria"].value("set", "");
        out.edition = json["criteria"].value("edition", "");
        out.criteria_hash = json["criteria"].value("hash", "");
    }
    out.verdict = json.value("verdict", "");
    out.mechanical = json.value("mechanical", "");
    if (json.contains("retest")) out.after = after_from(json["retest"]);
    out.retest_after = json.value("retest after", "");
    return out;
}

/// Older programs kept a renewal's one coupon in its text only: "coupon Q-2 [clause]".
std::vector<Evidence> coupon_in(const std::string &text) {
    constexpr std::string_view before = "coupon ";
    if (!text.starts_with(before)) return {};
    Evidence out;
    out.coupon = text.substr(before.size(), text.find(' ', before.size()) - before.size());
    return {out};
}

GrantedPart part_from(const nlohmann::json &json) {
    GrantedPart out;
    out.rule = json.value("rule", "");
    out.any = json.value("any", false);
    out.words = json.value("words", std::vector<std::string>{});
    out.lacks = json.value("lacks", std::vector<std::string>{});
    for (const auto &edge : json.value("edges", nlohmann::json::array()))
        out.edges.emplace_back(compare_from(edge.at(0).get<std::string>()),
                               exact_from(edge.at(1).get<std::string>()));
    return out;
}

} // namespace

nlohmann::json json_of(const WelderRecord &welder) {
    nlohmann::json out = nlohmann::json::object();
    put_texts(out, welder, welder_texts);
    put_sure(out, welder.sure);
    return out;
}

WelderRecord welder_from(const std::string &mark, const nlohmann::json &json) {
    WelderRecord out;
    out.mark = mark;
    take_texts(json, out, welder_texts, "welder");
    out.sure = sure_from(json);
    return out;
}

nlohmann::json json_of(const WelderEvent &event) {
    nlohmann::json out{{"day", print(event.day)}};
    put_texts(out, event, event_texts);
    if (event.qualification > 0) out["qualification"] = event.qualification;
    put_overridden(out, event.overridden);
    for (const auto &e : event.evidence) out["evidence"].push_back(json_of(e));
    return out;
}

WelderEvent event_from(const Entry &e) {
    const nlohmann::json body = parsed(e.body);
    WelderEvent out;
    out.seq = e.seq;
    out.kind = e.kind;
    out.day = parse_day(body.at("day").get<std::string>());
    take_texts(body, out, event_texts, "event");
    out.qualification = body.value("qualification", 0);
    out.overridden = overridden_from(body);
    for (const auto &one : body.value("evidence", nlohmann::json::array()))
        out.evidence.push_back(evidence_from(one));
    if (out.kind == "renewal" && out.evidence.empty()) out.evidence = coupon_in(out.text);
    out.stamp = stamp_of(e);
    return out;
}

nlohmann::json json_of(const std::vector<GrantedRange> &range) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : range) {
        nlohmann::json parts = nlohmann::json::array();
        for (const auto &p : one.parts) {
            nlohmann::json part{{"rule", p.rule}};
            if (p.any) part["any"] = true;
            if (!p.words.empty()) part["words"] = p.words;
            for (const auto &[compare, edge] : p.edges)
                part["edges"].push_back(nlohmann::json::array({id_of(compare), exact_text(edge)}));
            if (!p.lacks.empty()) part["lacks"] = p.lacks;
            parts.push_back(std::move(part));
        }
        nlohmann::json json{{"variable", one.variable}, {"parts", parts}};
        if (!one.work.empty()) json["in work with"] = one.work;
        out.push_back(std::move(json));
    }
    return out;
}

nlohmann::json json_of(const QualificationRecord &q) {
    nlohmann::json out{
        {"form", 2}, {"number", q.number}, {"welded", print(q.welded)}, {"test", json_of(q.test)}};
    put_texts(out, q, qualification_texts);
    if (q.part > 0) out["part"] = q.part;
    put_overridden(out, q.overridden);
    if (q.evidence) out["evidence"] = json_of(*q.evidence);
    out["range"] = json_of(q.range);
    return out;
}

QualificationRecord qualification_from(const nlohmann::json &json) {
    QualificationRecord out;
    out.form = json.value("form", 1);
    out.number = json.at("number").get<int>();
    out.welded = parse_day(json.at("welded").get<std::string>());
    out.test = coupon_from(json.at("test"));
    take_texts(json, out, qualification_texts, "qualification");
    out.part = json.value("part", std::size_t{0});
    out.overridden = overridden_from(json);
    if (json.contains("evidence")) out.evidence = evidence_from(json["evidence"]);
    for (const auto &one : json.value("range", nlohmann::json::array())) {
        GrantedRange range{one.at("variable").get<std::string>(), one.value("in work with", ""), {}};
        for (const auto &part : one.at("parts")) range.parts.push_back(part_from(part));
        out.range.push_back(std::move(range));
    }
    return out;
}

} // namespace beadbook::codec
