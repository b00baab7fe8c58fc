#include "records/codecs/exchange.hpp"

#include "measure/text.hpp"
#include "records/codecs/carried.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/located.hpp"
#include "records/codecs/people.hpp"
#include "records/codecs/photo.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <map>

namespace beadbook::codec {
namespace {

using Kind = Located::Kind;
/// Keys of one kind of object, with the kinds of value that each takes.
using Keys = std::vector<std::pair<std::string, std::vector<Kind>>>;

/// What can stand for a length: text, or text with its number.
const std::vector<Kind> measured{Kind::text, Kind::object};

const Keys &coupon_keys() {
    static const Keys keys{
        {"id", {Kind::text}},    {"fields", {Kind::object}},      {"exams", {Kind::list}},
        {"sure", {Kind::list}},  {by_settings_key, {Kind::list}}, {carried_key, {Kind::list}},
        {"photos", {Kind::list}}};
    return keys;
}

const Keys &photo_keys() {
    static const Keys keys{{"photo", {Kind::text}},  {"kind", {Kind::text}},   {"number", {Kind::number}},
                           {"size", {Kind::number}}, {"find", {Kind::number}}, {"remark", {Kind::text}}};
    return keys;
}

/// The one number that may be 0: an exam that found nothing.
bool is_none_found(const Located &item) {
    return item.key == "found" && item.kind == Kind::number && item.is_whole && item.whole == 0;
}

const Keys &exam_keys() {
    static const Keys keys = [] {
        Keys out{{"number", {Kind::number}}, {"method", {Kind::text}}, {"date", {Kind::text}}};
        for (const auto &name : exam_text_keys()) out.push_back({name, {Kind::text}});
        out.push_back({"found", {Kind::number}});
        out.push_back({"finished on", {Kind::text}});
        out.push_back({"finished by", {Kind::text}});
        out.push_back({"finished why", {Kind::text}});
        out.push_back({"sure", {Kind::list}});
        out.push_back({"conditions", {Kind::object}});
        out.push_back({"equipment", {Kind::list}});
        out.push_back({"indications", {Kind::list}});
        return out;
    }();
    return keys;
}

const std::map<std::string, Dimension> &measure_dimensions() {
    static const std::map<std::string, Dimension> dimensions = [] {
        std::map<std::string, Dimension> out;
        for (const auto &key : measure_keys())
            out.emplace(std::string(key.word), info(key.quantity).dimension);
        for (const char *place : {"at", "middle", "end", "across"}) out.emplace(place, Dimension::length);
        return out;
    }();
    return dimensions;
}

const Keys &indication_keys() {
    static const Keys keys = [] {
        Keys out{{"number", {Kind::number}}, {"exam", {Kind::number}}, {"type", {Kind::text}}};
        for (const auto &[name, dimension] : measure_dimensions()) out.push_back({name, measured});
        out.push_back({"left", {Kind::truth}});
        for (std::size_t a = 0; a < attribute_count; ++a)
            out.push_back({std::string(info(static_cast<Attribute>(a)).name), {Kind::text}});
        out.push_back({"remark", {Kind::text}});
        out.push_back({"sure", {Kind::list}});
        return out;
    }();
    return keys;
}

std::string name_of(const std::vector<Kind> &kinds) {
    if (kinds == measured) return "text such as \"0.045 in\"";
    switch (kinds.front()) {
    case Kind::number: return "a whole number from 1";
    case Kind::truth: return "true or false";
    case Kind::list: return "a list";
    case Kind::object: return "an object";
    default: return "text";
    }
}

bool is_of(const Located &value, const std::vector<Kind> &kinds) {
    return std::find(kinds.begin(), kinds.end(), value.kind) != kinds.end() &&
           (value.kind != Kind::number || (value.is_whole && value.whole >= 1));
}

/// Reads one coupon, and goes on after a mistake so that one run shows them all.
class CouponReader {
public:
    GivenCoupon read(const Located &coupon) {
        out_.at = coupon.at;
        const Located *id = coupon.kind == Kind::object ? coupon.find("id") : nullptr;
        if (!id) {
            wrong(coupon.at, "a coupon needs an \"id\" that is text");
            return std::move(out_);
        }
        check_keys(coupon, coupon_keys());
        if (id->kind == Kind::text) out_.record.id = id->text;
        if (const Located *fields = part(coupon, "fields", Kind::object)) read_fields(*fields);
        out_.record.sure = texts_in(coupon, "sure");
        for (auto &name : texts_in(coupon, by_settings_key)) out_.record.by_settings.insert(std::move(name));
        if (const Located *before = part(coupon, carried_key, Kind::list))
            guard(before->at, [&] { out_.record.before = carried_from(*before); });
        weld_known_ = out_.mistakes.empty(); // else what lies on it would be blamed for it
        line_ = out_.record.facts().line;
        if (const Located *exams = part(coupon, "exams", Kind::list))
            for (const auto &exam : exams->items) read_exam(exam);
        if (const Located *photos = part(coupon, "photos", Kind::list))
            for (const auto &photo : photos->items) read_photo(photo);
        return std::move(out_);
    }

private:
    void wrong(std::size_t at, std::string what) { out_.mistakes.push_back({at, std::move(what)}); }

    /// Runs a step; what cannot be taken is a mistake at that place.
    template <class F>
    void guard(std::size_t at, F f) {
        try {
            f();
        } catch (const Refusal &e) {
            wrong(at, e.what());
        }
    }

    static const Located *part(const Located &object, const char *key, Kind kind) {
        const Located *found = object.find(key);
        return found && found->kind == kind ? found : nullptr;
    }

    void wrong_kind(const Located &value, const std::string &expected) {
        wrong(value.at, value.key + ": expected " + expected + ", found " + value.said());
    }
    void twice(const Located &item) {
        wrong(item.key_at, "key '" + shown(item.key) + "' stands twice in one object");
    }
    void unknown(const Located &item, const std::vector<std::string> &known) {
        wrong(item.key_at, "unknown key '" + shown(item.key) + "'" + did_you_mean(item.key, known));
    }

    void check_keys(const Located &object, const Keys &keys) {
        for (const auto &item : object.items) {
            const auto known = std::find_if(keys.begin(), keys.end(),
                                            [&](const auto &key) { return key.first == item.key; });
            if (known == keys.end()) {
                std::vector<std::string> names;
                for (const auto &key : keys) names.push_back(key.first);
                unknown(item, names);
            } else if (item.key_given_twice) {
                twice(item);
            } else if (!is_of(item, known->second) && !is_none_found(item)) {
                wrong_kind(item, name_of(known->second));
            } else if (known->second == measured && item.kind == Kind::object) {
                check_measure(item, measure_dimensions().at(item.key));
            }
        }
    }

    std::vector<std::string> texts_in(const Located &object, const char *key) {
        std::vector<std::string> out;
        if (const Located *list = part(object, key, Kind::list))
            for (const auto &one : list->items) {
                if (one.kind == Kind::text)
                    out.push_back(one.text);
                else
                    wrong(one.at, std::string(key) + ": expected text, found " + one.said());
            }
        return out;
    }

    /// Serial numbers, or objects of texts.
    nlohmann::json used_in(const Located &equipment) {
        nlohmann::json out = nlohmann::json::array();
        for (const auto &one : equipment.items) {
            if (one.kind == Kind::text) out.push_back(one.text);
            if (one.kind == Kind::text) continue;
            if (one.kind != Kind::object)
                wrong(one.at, "equipment: expected a serial number or an object, found " + one.said());
            nlohmann::json item = nlohmann::json::object();
            for (const auto &value : one.items) {
                const auto &keys = equipment_used_keys();
                if (std::find(keys.begin(), keys.end(), value.key) == keys.end())
                    unknown(value, keys);
                else if (value.key_given_twice)
                    twice(value);
                else if (value.kind != Kind::text)
                    wrong_kind(value, "text");
                item[value.key] = value.text;
            }
            out.push_back(std::move(item));
        }
        return out;
    }

    void check_given(const Located &object, const std::string &what, const std::vector<std::string> &needed) {
        for (const auto &key : needed)
            if (!object.find(key)) wrong(object.at, what + " needs a \"" + key + "\"");
    }

    /// {"typed": "3/16 in", "nm": 4762500}
    void check_measure(const Located &measure, Dimension dimension) {
        const std::string unit(base_unit_name(dimension));
        for (const auto &item : measure.items) {
            if (item.key != "typed" && item.key != unit)
                unknown(item, {"typed", unit});
            else if (item.key_given_twice)
                twice(item);
            else if (item.key == "typed" && item.kind != Kind::text)
                wrong_kind(item, "text");
            else if (item.key == unit && !(item.kind == Kind::number && item.is_whole))
                wrong_kind(item, "a whole number");
        }
        if (!measure.find("typed"))
            wrong(measure.at, measure.key + ": an object here needs \"typed\", such as \"0.045 in\"");
    }

    /// The number beside a text must be what the text comes to: nobody can say which of the two is meant.
    void check_number(const Located &measure, Dimension dimension, const Exact &value) {
        const Located *number = measure.find(std::string(base_unit_name(dimension)));
        const Located *typed = measure.find("typed");
        if (number && typed && value != Exact(number->whole))
            wrong(number->at, measure.key + ": " + shown(number->text) + " " +
                                  std::string(base_unit_name(dimension)) + " is not " + shown(typed->text) +
                                  "; leave one of them out");
    }

    void read_fields(const Located &fields) {
        auto &texts = out_.texts;
        for (const auto &field : fields.items) {
            const Located *typed = field.kind == Kind::object ? field.find("typed") : &field;
            if (typed) texts.emplace(field.key, typed->text);
        }
        const auto set = [&](const Located &field) {
            const CouponField *known = coupon_field(field.key);
            const bool is_measure = known && known->kind == CouponField::Kind::measure;
            if (field.key_given_twice) return twice(field);
            const std::size_t mistakes = out_.mistakes.size();
            const Dimension dimension = is_measure ? info(known->quantity).dimension : Dimension::length;
            if (is_measure && field.kind == Kind::object)
                check_measure(field, dimension);
            else if (known && field.kind != Kind::text)
                wrong_kind(field, is_measure ? name_of(measured) : "text");
            if (out_.mistakes.size() > mistakes) return;
            const Located *typed = field.kind == Kind::object ? field.find("typed") : &field;
            guard(field.key_at, [&] {
                const std::string text = typed ? typed->text : "";
                out_.record.set(field.key, out_.record.sized(field.key, text, texts));
                if (is_measure) check_number(field, dimension, out_.record.fields.at(field.key).value);
            });
        };
        // `units` first: the others are read in it. Then what is written with its unit, which may fix theirs.
        const Located *units = fields.find("units");
        if (units) set(*units);
        for (const bool bare : {false, true})
            for (const auto &field : fields.items)
                if (&field != units &&
                    (field.kind == Kind::text && is_bare_length(field.key, field.text)) == bare)
                    set(field);
    }

    void read_exam(const Located &exam) {
        if (exam.kind != Kind::object)
            return wrong(exam.at, "an exam is an object with method and date, found " + exam.said());
        const std::size_t mistakes = out_.mistakes.size();
        check_keys(exam, exam_keys());
        check_given(exam, "an exam", {"method", "date"});
        GivenExam &out = out_.exams.emplace_back();
        out.at = exam.at;
        nlohmann::json json = plain(exam);
        json["sure"] = texts_in(exam, "sure");
        if (const Located *why = exam.find("incomplete");
            why && !why->text.empty() && trimmed(why->text).empty())
            wrong(why->at, "incomplete: blanks say nothing; why does the exam not count? else leave it out");
        if (const Located *conditions = part(exam, "conditions", Kind::object)) {
            json["conditions"] = nlohmann::json::object();
            for (const auto &item : conditions->items) {
                if (item.key_given_twice) twice(item);
                if (item.kind != Kind::text) wrong_kind(item, "text");
                json["conditions"][item.key] = item.text;
            }
        }
        if (const Located *equipment = part(exam, "equipment", Kind::list))
            json["equipment"] = used_in(*equipment);
        if (out_.mistakes.size() == mistakes) guard(exam.at, [&] { out.record = exam_from(json); });
        const bool sound = out_.mistakes.size() == mistakes;
        if (const Located *found = part(exam, "indications", Kind::list))
            for (const auto &one : found->items) read_indication(one, out, sound);
    }

    void read_indication(const Located &one, GivenExam &exam, bool exam_sound) {
        if (one.kind != Kind::object)
            return wrong(one.at, "an indication is an object with a type, found " + one.said());
        const std::size_t mistakes = out_.mistakes.size();
        check_keys(one, indication_keys());
        check_given(one, "an indication", {"type"});
        if (out_.mistakes.size() > mistakes || !weld_known_) return;
        guard(one.at, [&] {
            IndicationRecord record = indication_from(plain(one), line_, out_.record.fixed_unit());
            check_place_said(record);
            record.sure = texts_in(one, "sure");
            check_numbers(one, record);
            if (exam_sound && record.exam > 0 && record.exam != exam.record.number)
                wrong(one.find("exam")->at,
                      "exam: found " + std::to_string(record.exam) + ", but it lies within exam " +
                          (exam.record.number > 0 ? std::to_string(exam.record.number) : "without a number"));
            exam.indications.push_back({one.at, std::move(record)});
        });
    }

    void read_photo(const Located &photo) {
        if (photo.kind != Kind::object)
            return wrong(photo.at, "a photo is an object with its hash and kind, found " + photo.said());
        const std::size_t mistakes = out_.mistakes.size();
        check_keys(photo, photo_keys());
        check_given(photo, "a photo", {"photo", "kind"});
        if (out_.mistakes.size() == mistakes)
            guard(photo.at, [&] { out_.photos.push_back({photo.at, photo_from(plain(photo))}); });
    }

    void check_numbers(const Located &one, const IndicationRecord &record) {
        for (const auto &key : measure_keys())
            if (const Located *item = one.find(std::string(key.word)))
                check_number(*item, info(key.quantity).dimension, record.measures.at(key.quantity).value);
        const std::pair<const char *, const std::optional<Typed> *> places[] = {
            {"at", &record.at}, {"middle", &record.middle}, {"end", &record.end}, {"across", &record.across}};
        for (const auto &[key, place] : places)
            if (const Located *item = one.find(key); item && *place)
                check_number(*item, Dimension::length, (*place)->value);
    }

    /// An object of texts, numbers and measures, as the codec of entries takes it.
    static nlohmann::json plain(const Located &object) {
        nlohmann::json out = nlohmann::json::object();
        for (const auto &item : object.items) {
            if (item.kind == Kind::text) out[item.key] = item.text;
            if (item.kind == Kind::number) out[item.key] = item.whole;
            if (item.kind == Kind::truth) out[item.key] = item.yes;
            if (const Located *typed = item.kind == Kind::object ? item.find("typed") : nullptr)
                out[item.key] = typed->text;
        }
        return out;
    }

    GivenCoupon out_;
    WeldLine line_;
    bool weld_known_ = false;
};

} // namespace

std::vector<GivenCoupon> read_exchange(const std::string &text) {
    const Located root = read_located(text);
    const Located *format = root.find("format"), *version = root.find("version"),
                  *coupons = root.find("coupons");
    if (root.kind != Kind::object || !format || format->text != exchange_format || !coupons ||
        coupons->kind != Kind::list)
        throw DataError("expected {\"format\": \"beadbook exchange\", \"version\": 1, \"coupons\": [...]}");
    if (!version || version->kind != Kind::number)
        throw DataError(place_in(text, version ? version->at : root.at) +
                        ": version: expected the number 1, found " + (version ? version->said() : "nothing"));
    if (!version->is_whole || version->whole != exchange_version)
        throw DataError(place_in(text, version->at) +
                        ": this program reads version 1 of the exchange format");
    for (const auto &item : root.items) {
        if (item.key_given_twice)
            throw DataError(place_in(text, item.key_at) + ": key '" + shown(item.key) + "' stands twice");
        if (item.key != "format" && item.key != "version" && item.key != "coupons")
            throw DataError(place_in(text, item.key_at) + ": unknown key '" + shown(item.key) + "'" +
                            did_you_mean(item.key, {"format", "version", "coupons"}));
    }
    std::vector<GivenCoupon> out;
    for (const auto &coupon : coupons->items) out.push_back(CouponReader().read(coupon));
    return out;
}

GivenCoupon read_exchange_coupon(const std::string &text) { return CouponReader().read(read_located(text)); }

} // namespace beadbook::codec
