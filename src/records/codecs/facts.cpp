#include "records/codecs/facts.hpp"

#include "measure/text.hpp"
#include "records/codecs/carried.hpp"
#include "records/codecs/people.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {
namespace {

constexpr std::pair<const char *, std::string ExamRecord::*> exam_texts[] = {
    {"examiner", &ExamRecord::examiner},          {"level", &ExamRecord::level},
    {"procedure", &ExamRecord::procedure},        {"note", &ExamRecord::note},
    {"incomplete", &ExamRecord::incomplete},      {"practice", &ExamRecord::practice},
    {"practice hash", &ExamRecord::practice_hash}};

} // namespace

void put_sure(nlohmann::json &out, const std::vector<std::string> &sure) {
    if (!sure.empty()) out["sure"] = sure;
}
std::vector<std::string> sure_from(const nlohmann::json &json) {
    std::vector<std::string> out;
    if (!json.contains("sure")) return out;
    if (!json["sure"].is_array()) throw DataError("\"sure\" is not a list of rules");
    for (const auto &rule : json["sure"]) {
        if (!rule.is_string()) throw DataError("\"sure\" holds something that is no text");
        out.push_back(checked_text(rule.get<std::string>(), "sure"));
    }
    return out;
}

nlohmann::json json_of(const CouponRecord &coupon) {
    nlohmann::json out = nlohmann::json::object();
    for (const auto &[name, given] : coupon.fields) {
        const CouponField &field = *coupon_field(name);
        if (field.kind == CouponField::Kind::measure)
            out[name] = json_of(Typed{given.text, given.value}, info(field.quantity).dimension);
        else
            out[name] = given.text;
    }
    nlohmann::json whole{{"id", coupon.id}, {"fields", out}};
    put_sure(whole, coupon.sure);
    if (!coupon.by_settings.empty()) whole[by_settings_key] = coupon.by_settings;
    put_carried(whole, coupon.before);
    // Not "withdrawn": that word ends what a numbered thing is, and this one can come back.
    if (!coupon.withdrawn.empty()) whole["taken back"] = coupon.withdrawn;
    return whole;
}

CouponRecord coupon_from(const nlohmann::json &json) {
    if (!json.is_object() || !json.contains("id") || !json["id"].is_string())
        throw DataError("a coupon needs an \"id\" that is text");
    CouponRecord out;
    out.id = json["id"].get<std::string>();
    check_coupon_id(out.id);
    const auto fields = json.value("fields", nlohmann::json::object());
    if (!fields.is_object()) throw DataError("coupon " + out.id + ": \"fields\" is not an object");
    if (fields.contains("units") && fields["units"].is_string())
        out.set("units", fields["units"].get<std::string>());
    for (const auto &[name, value] : fields.items()) {
        const nlohmann::json &text = value.is_object() && value.contains("typed") ? value["typed"] : value;
        if (!text.is_string())
            throw DataError("coupon " + out.id + ": " + name + ": expected text, found " +
                            shown(value.dump()));
        out.set(name, text.get<std::string>());
    }
    out.sure = sure_from(json);
    if (json.contains(by_settings_key))
        for (const auto &name : json[by_settings_key])
            if (name.is_string()) out.by_settings.insert(name.get<std::string>());
    out.before = carried_from(json);
    out.like = text_of(json, like_key, "coupon");
    out.withdrawn = text_of(json, "taken back", "coupon");
    return out;
}

std::vector<std::string> exam_text_keys() {
    std::vector<std::string> out;
    for (const auto &[key, member] : exam_texts) out.emplace_back(key);
    return out;
}

nlohmann::json json_of(const ExamRecord &exam) {
    nlohmann::json out{{"number", exam.number}, {"method", name_of(exam.method)}, {"date", print(exam.date)}};
    put_texts(out, exam, exam_texts);
    if (!exam.conditions.empty()) out["conditions"] = exam.conditions;
    if (!exam.equipment.empty()) out["equipment"] = json_of(exam.equipment);
    if (const auto &f = exam.finished) {
        out["found"] = f->found;
        if (f->on) out["finished on"] = print(*f->on);
        out["finished by"] = f->by;
        if (!f->why.empty()) out["finished why"] = f->why;
    }
    put_sure(out, exam.sure);
    return out;
}

ExamRecord exam_from(const nlohmann::json &json) {
    if (!json.is_object()) throw DataError("an exam is an object with method and date");
    ExamRecord out;
    const std::string method = text_of(json, "method", "exam");
    const auto exam = exam_named(method);
    if (!exam) throw DataError("exam: '" + shown(method) + "' is no method; expected " + exam_names_text());
    out.method = *exam;
    out.date = parse_day(text_of(json, "date", "exam"));
    if (json.contains("number")) {
        if (!json["number"].is_number_integer() || json["number"] < 1 || json["number"] > 1'000'000)
            throw DataError("exam: \"number\" is not a whole number from 1");
        out.number = json["number"].get<int>();
    }
    take_texts(json, out, exam_texts, "exam");
    out.sure = sure_from(json);
    if (json.contains("found")) {
        if (!json["found"].is_number_integer() || json["found"] < 0 || json["found"] > 1'000'000)
            throw DataError("exam: \"found\" is not a whole number from 0");
        // Written by hand it may be all that is said; that nobody finished it is said by an empty text.
        const std::string on = text_of(json, "finished on", "exam");
        out.finished =
            ExamFinished{json["found"].get<int>(),
                         {},
                         json.contains("finished by") ? text_of(json, "finished by", "exam") : out.examiner};
        out.finished->unnamed = !json.contains("finished by");
        out.finished->why = text_of(json, "finished why", "exam");
        if (!on.empty()) out.finished->on = parse_day(on);
    }
    if (json.contains("equipment")) out.equipment = equipment_used_from(json["equipment"]);
    if (json.contains("conditions")) {
        if (!json["conditions"].is_object()) throw DataError("exam: \"conditions\" is not an object");
        for (const auto &[name, value] : json["conditions"].items()) {
            if (!value.is_string()) throw DataError("exam: condition " + name + " is not text");
            out.conditions.emplace(checked_text(name, "condition"),
                                   checked_text(value.get<std::string>(), name));
        }
    }
    return out;
}

nlohmann::json json_of(const IndicationRecord &i, const Vocabulary &vocabulary) {
    nlohmann::json out{{"type", vocabulary[i.type].name}};
    if (i.number > 0) out["number"] = i.number;
    if (i.exam > 0) out["exam"] = i.exam;
    for (const auto &key : measure_keys())
        if (const auto found = i.measures.find(key.quantity); found != i.measures.end())
            out[std::string(key.word)] = json_of(found->second, info(key.quantity).dimension);
    const auto put = [&](const char *name, const std::optional<Typed> &place) {
        if (place) out[name] = json_of(*place, Dimension::length);
    };
    put("at", i.at);
    put("middle", i.middle);
    put("end", i.end);
    put("across", i.across);
    if (i.across_left) out["left"] = true;
    for (std::size_t a = 0; a < attribute_count; ++a)
        if (i.words[a] > 0) {
            const FactInfo &attribute = info(static_cast<Attribute>(a));
            out[std::string(attribute.name)] = attribute.words[i.words[a] - 1u];
        }
    if (!i.remark.empty()) out["remark"] = i.remark;
    put_sure(out, i.sure);
    if (!i.file.empty()) out["file"] = i.file;
    if (const auto &from = i.moved_from)
        out["moved from"] = {
            {"coupon", from->coupon}, {"exam", from->exam}, {"number", from->number}, {"why", from->why}};
    return out;
}

IndicationRecord indication_from(const nlohmann::json &json, const WeldLine &line, std::optional<Unit> unit,
                                 const Vocabulary &vocabulary) {
    if (!json.is_object()) throw InputError("an indication is an object with a type");
    IndicationRecord out;
    const auto whole = [&](const char *key) {
        if (!json.contains(key)) return 0;
        if (!json[key].is_number_integer() || json[key] < 1 || json[key] > 10'000'000)
            throw InputError(std::string("\"") + key + "\" is not a whole number from 1");
        return json[key].get<int>();
    };
    const auto text = [&](const std::string &key) {
        if (!json.contains(key)) return std::string();
        if (!json[key].is_string()) throw InputError("\"" + key + "\" is not text");
        return json[key].get<std::string>();
    };
    out.number = whole("number");
    out.exam = whole("exam");
    const std::string type = text("type");
    const auto found = vocabulary.find(type);
    if (!found)
        throw InputError("'" + shown(type) + "' is no type of imperfection" +
                         did_you_mean(type, vocabulary.names()));
    out.type = *found;
    for (const auto &key : measure_keys())
        if (const std::string word(key.word); json.contains(word))
            out.measures[key.quantity] = typed_from(json[word], info(key.quantity).dimension, unit);
    const auto place = [&](const char *name) -> std::optional<Typed> {
        if (!json.contains(name)) return std::nullopt;
        const auto &value =
            json[name].is_object() && json[name].contains("typed") ? json[name]["typed"] : json[name];
        if (!value.is_string()) throw InputError(std::string("\"") + name + "\" is not text");
        return parse_place(value.get<std::string>(), line, unit);
    };
    out.at = place("at");
    out.middle = place("middle");
    out.end = place("end");
    if (json.contains("across")) out.across = typed_from(json["across"], Dimension::length, unit);
    out.across_left = json.value("left", false);
    for (std::size_t a = 0; a < attribute_count; ++a) {
        const FactInfo &attribute = info(static_cast<Attribute>(a));
        const std::string word = text(std::string(attribute.name));
        out.words[a] = word_index(attribute, word);
        if (!word.empty() && out.words[a] == 0)
            throw InputError("'" + shown(word) + "' is no " + std::string(attribute.name) + "; expected " +
                             listed(attribute.words, "or"));
    }
    out.remark = checked_text(text("remark"), "remark");
    out.sure = sure_from(json);
    out.file = text("file");
    if (json.contains("moved from")) {
        const auto &from = json["moved from"];
        out.moved_from = MovedFrom{from.at("coupon").get<std::string>(), from.at("exam").get<int>(),
                                   from.at("number").get<int>(), from.at("why").get<std::string>()};
    }
    check_sense(out, line, unit);
    return out;
}

nlohmann::json json_of(const Remark &remark) { return {{"text", remark.text}}; }

nlohmann::json json_of(const Grade &grade) {
    nlohmann::json out{{"decision", grade.decision()}, {"class", grade.class_id}};
    if (!grade.remark.empty()) out["remark"] = grade.remark;
    if (grade.against_verdict) out["against verdict"] = true;
    if (grade.against_mechanical) out["against mechanical"] = true;
    if (grade.after_turn) out["rejected before"] = true;
    return out;
}

Remark remark_from(const nlohmann::json &json, const Stamp &stamp) {
    return {json.at("text").get<std::string>(), stamp};
}

Grade grade_from(const nlohmann::json &json, const Stamp &stamp) {
    Grade out;
    out.passed = json.at("decision") == "passed";
    out.class_id = json.at("class").get<std::string>();
    out.remark = json.value("remark", "");
    out.against_verdict = json.value("against verdict", false);
    out.against_mechanical = json.value("against mechanical", false);
    out.after_turn = json.value("rejected before", false);
    out.stamp = stamp;
    return out;
}

} // namespace beadbook::codec
