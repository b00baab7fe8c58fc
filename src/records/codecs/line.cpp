#include "records/codecs/line.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {
namespace {

/// Sizes by their number: they were read and checked when the line was written.
CouponRecord record_from(const nlohmann::json &json) {
    CouponRecord out;
    out.id = json.at("id").get<std::string>();
    for (const auto &[name, value] : json.at("fields").items()) {
        CouponValue &given = out.fields[name];
        if (!value.is_object()) {
            given.text = value.get<std::string>();
            continue;
        }
        given.text = value.at("typed").get<std::string>();
        const auto number = value.find(base_unit_name(info(coupon_field(name)->quantity).dimension));
        if (number == value.end()) return coupon_from(json); // too large for a number
        given.value = Exact(number->get<std::int64_t>());
    }
    if (const auto sure = json.find("sure"); sure != json.end())
        out.sure = sure->get<std::vector<std::string>>();
    out.withdrawn = json.value("taken back", "");
    return out;
}

nlohmann::json exams_of(const CouponLine &line) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &exam : line.exams)
        out.push_back({static_cast<int>(exam.method), exam.open, exam.counts});
    return out;
}

nlohmann::json finds_of(const CouponLine &line) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &find : line.finds)
        out.push_back({find.imperfection, static_cast<int>(find.part), find.rejects});
    return out;
}

nlohmann::json grade_of(const CouponLine &line) {
    nlohmann::json out = json_of(*line.grade);
    out["at"] = line.grade->stamp.at;
    out["who"] = line.grade->stamp.who;
    out["seq"] = line.grade->seq;
    if (line.grade->after_fail) out["after fail"] = true;
    out["state"] = static_cast<int>(line.grade_standing.state);
    out["now"] = static_cast<int>(line.grade_standing.now);
    out["was"] = line.grade_standing.was;
    out["why"] = line.grade_standing.why;
    return out;
}

void take_grade(CouponLine &out, const nlohmann::json &json) {
    out.grade = grade_from(json, {json.at("at").get<std::string>(), json.at("who").get<std::string>()});
    out.grade->seq = json.at("seq").get<std::int64_t>();
    out.grade->after_fail = json.value("after fail", false);
    GradeStanding &standing = out.grade_standing;
    standing.state = json.at("state").get<GradeStanding::State>();
    standing.now = json.at("now").get<Verdict>();
    standing.was = json.at("was").get<std::string>();
    standing.why = json.at("why").get<std::string>();
}

CouponLine line_of(const nlohmann::json &json) {
    CouponLine out;
    out.record = record_from(json.at("coupon"));
    for (const auto &exam : json.at("exams"))
        out.exams.push_back({exam.at(0).get<Exam>(), exam.at(1).get<bool>(), exam.at(2).get<bool>()});
    out.unfinished = json.value("unfinished", false);
    out.indications = json.at("indications").get<std::size_t>();
    if (const auto verdict = json.find("verdict"); verdict != json.end())
        out.verdict = verdict->get<Verdict>();
    out.why_not = json.value("why not", "");
    out.own_file = json.value("own file", "");
    out.cautions = json.value("cautions", false);
    for (const auto &find : json.at("finds"))
        out.finds.push_back(
            {find.at(0).get<std::string>(), find.at(1).get<WeldPart>(), find.at(2).get<bool>()});
    if (const auto rules = json.find("rejected by"); rules != json.end())
        out.rejected_by = rules->get<std::vector<std::string>>();
    if (const auto grade = json.find("grade"); grade != json.end()) take_grade(out, *grade);
    return out;
}

} // namespace

std::string body_of(const CouponLine &line) {
    nlohmann::json out{{"coupon", json_of(line.record)},
                       {"exams", exams_of(line)},
                       {"indications", line.indications},
                       {"finds", finds_of(line)}};
    if (line.unfinished) out["unfinished"] = true;
    if (line.verdict) out["verdict"] = static_cast<int>(*line.verdict);
    if (!line.why_not.empty()) out["why not"] = line.why_not;
    if (!line.own_file.empty()) out["own file"] = line.own_file;
    if (line.cautions) out["cautions"] = true;
    if (!line.rejected_by.empty()) out["rejected by"] = line.rejected_by;
    if (line.grade) out["grade"] = grade_of(line);
    return canonical(out);
}

CouponLine line_from(const std::string &body) {
    try {
        return line_of(parsed(body));
    } catch (const nlohmann::json::exception &e) {
        throw StoreError("what lists say of a coupon cannot be read: " + std::string(e.what()));
    }
}

} // namespace beadbook::codec
