#include "render/json_parts.hpp"

#include "measure/text.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::render {

std::string finished(nlohmann::json json, const std::vector<std::string> &notes) {
    if (json.is_object() && !notes.empty()) json["notes"] = notes;
    return escaped_for_json(json.dump(2)) + "\n";
}

nlohmann::json number(const Exact &value, Dimension dimension, Unit unit) {
    return number(value, print(value, dimension, unit));
}

nlohmann::json number(const Exact &value, const std::string &text) {
    return {{"text", text}, {"exact", codec::exact_text(value)}};
}

void add_described_since(nlohmann::json &json, const std::vector<DescribedSince> &changes) {
    for (const auto &one : changes) {
        nlohmann::json item{{"at", one.stamp.at}, {"by", one.stamp.who}, {"why", one.why}};
        for (const auto &value : one.values) {
            item["changes"].push_back({{"name", value.name}});
            if (!value.before.empty()) item["changes"].back()["before"] = value.before;
            if (!value.now.empty()) item["changes"].back()["now"] = value.now;
        }
        json["described otherwise since"].push_back(std::move(item));
    }
}

void add_standing(nlohmann::json &json, const GradeStanding &standing) {
    if (!standing.why.empty()) json["to be graded again"] = standing.why;
    if (!standing.by_other.empty()) json["graded by"] = standing.by_other;
}

void add_taken_back(nlohmann::json &json, const std::vector<TakenBack> &things) {
    for (const auto &one : things) {
        nlohmann::json out{{"was", one.was}, {"why", one.why}, {"at", one.stamp.at}, {"by", one.stamp.who}};
        const bool thing = one.kind == TakenBack::Kind::find || one.kind == TakenBack::Kind::exam;
        if (thing) out["number"] = one.number;
        if (!one.now.empty()) out["now"] = one.now;
        if (one.to)
            out["moved to"] = {
                {"coupon", one.to->coupon}, {"exam", one.to->exam}, {"number", one.to->number}};
        if (!one.there.empty()) out["there"] = one.there;
        const bool exam = one.kind == TakenBack::Kind::exam;
        if (exam && !one.finds.empty()) out["finds"] = one.finds;
        json[exam                                       ? "exams withdrawn"
             : one.kind == TakenBack::Kind::description ? "rejected as described before"
             : one.kind == TakenBack::Kind::called_for  ? "called for before"
             : one.kind == TakenBack::Kind::welder      ? "welded by before"
             : one.kind == TakenBack::Kind::weld        ? "welded otherwise before"
                                                        : "logged otherwise before"]
            .push_back(std::move(out));
    }
}

} // namespace beadbook::render
