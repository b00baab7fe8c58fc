#include "records/codecs/carried.hpp"

#include "facts/coupon_record.hpp"
#include "measure/day.hpp"
#include "measure/text.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <iterator>

namespace beadbook::codec {
namespace {

constexpr std::pair<const char *, std::string CarriedFact::*> carried_texts[] = {
    {"class", &CarriedFact::class_id},
    {"by", &CarriedFact::by},
    {"on", &CarriedFact::on},
    {"why", &CarriedFact::why},
    {"coupon", &CarriedFact::coupon}};

constexpr std::pair<const char *, std::vector<std::string> CarriedFact::*> carried_lists[] = {
    {"changed", &CarriedFact::changed}, {"methods", &CarriedFact::methods}};

const std::string here = std::string(carried_key) + ": ";

CarriedFact::Kind kind_of(const nlohmann::json &json) {
    const std::string word = text_of(json, "what", carried_key);
    const auto found = std::find(std::begin(carried_kinds), std::end(carried_kinds), word);
    if (found == std::end(carried_kinds))
        throw DataError(here + "what: found '" + shown(word) + "', expected " +
                        listed({std::begin(carried_kinds), std::end(carried_kinds)}, "or"));
    return static_cast<CarriedFact::Kind>(found - std::begin(carried_kinds));
}

void check_keys(const nlohmann::json &json) {
    std::vector<std::string> known{"what", "as"};
    for (const auto &[key, member] : carried_lists) known.emplace_back(key);
    for (const auto &[key, member] : carried_texts) known.emplace_back(key);
    for (const auto &item : json.items())
        if (std::find(known.begin(), known.end(), item.key()) == known.end())
            throw DataError(here + "unknown key '" + shown(item.key()) + "'" +
                            did_you_mean(item.key(), known));
}

CarriedFact fact_from(const nlohmann::json &json) {
    if (!json.is_object()) throw DataError(here + "expected an object with \"what\"");
    check_keys(json);
    CarriedFact out;
    out.kind = kind_of(json);
    take_texts(json, out, carried_texts, carried_key);
    if (!out.on.empty()) parse_day(out.on);
    for (const auto &[key, member] : carried_lists) {
        if (!json.contains(key)) continue;
        const std::string of = here + "\"" + key + "\"";
        if (!json[key].is_array()) throw DataError(of + " is not a list");
        for (const auto &name : json[key]) {
            if (!name.is_string()) throw DataError(of + " holds something that is no text");
            (out.*member).push_back(checked_text(name.get<std::string>(), key));
        }
    }
    for (const auto &method : out.methods)
        if (method != "mechanical" && !exam_named(method))
            throw DataError(here + "methods: '" + shown(method) + "' is no exam");
    if (json.contains("as")) {
        if (!json["as"].is_object()) throw DataError(here + "\"as\" is not an object");
        for (const auto &item : json["as"].items()) {
            if (!item.value().is_string())
                throw DataError(here + "as: " + shown(item.key()) + " is not text");
            out.as.emplace(item.key(), item.value().get<std::string>());
        }
        CouponRecord().set_all(out.as);
    }
    using Kind = CarriedFact::Kind;
    const bool of_somebody = out.kind == Kind::rejected || out.kind == Kind::graded_failed;
    const auto need = [&](bool given, const char *key) {
        if (!given) throw DataError(here + std::string(id_of(out.kind)) + " needs \"" + key + "\"");
    };
    const bool beside = out.kind == Kind::failed_beside;
    if (of_somebody || beside) need(!out.as.empty(), "as");
    if (beside) need(!out.coupon.empty(), "coupon");
    if (of_somebody || out.kind == Kind::welder) need(!out.by.empty(), "by");
    if (of_somebody || out.kind == Kind::welded) need(!out.on.empty(), "on");
    if (out.kind == Kind::rejected) need(!out.changed.empty(), "changed");
    return out;
}

std::vector<CarriedFact> facts_from(const nlohmann::json &list) {
    if (!list.is_array()) throw DataError(here + "expected a list");
    std::vector<CarriedFact> out;
    for (const auto &one : list) out.push_back(fact_from(one));
    return out;
}

nlohmann::json carried_json(const CarriedFact &fact) {
    nlohmann::json out{{"what", id_of(fact.kind)}};
    put_texts(out, fact, carried_texts);
    if (!fact.as.empty()) out["as"] = fact.as;
    for (const auto &[key, member] : carried_lists)
        if (!(fact.*member).empty()) out[key] = fact.*member;
    return out;
}

/// The same value, if no key stands twice in it.
nlohmann::json once(const Located &value) {
    nlohmann::json out = nlohmann::json::object();
    switch (value.kind) {
    case Located::Kind::text: return value.text;
    case Located::Kind::list: out = nlohmann::json::array(); break;
    case Located::Kind::object: break;
    default: throw DataError(here + "expected text, found " + value.said());
    }
    for (const auto &item : value.items) {
        if (item.key_given_twice)
            throw DataError(here + "key '" + shown(item.key) + "' stands twice in one object");
        if (value.kind == Located::Kind::list)
            out.push_back(once(item));
        else
            out[item.key] = once(item);
    }
    return out;
}

} // namespace

void put_carried(nlohmann::json &out, const std::vector<CarriedFact> &facts) {
    for (const auto &fact : facts) out[carried_key].push_back(carried_json(fact));
}

std::vector<CarriedFact> carried_from(const nlohmann::json &coupon) {
    return coupon.contains(carried_key) ? facts_from(coupon[carried_key]) : std::vector<CarriedFact>{};
}

std::vector<CarriedFact> carried_from(const Located &list) { return facts_from(once(list)); }

std::string carried_cell(const std::vector<CarriedFact> &facts) {
    nlohmann::json out = nlohmann::json::object();
    put_carried(out, facts);
    return facts.empty() ? "" : out[carried_key].dump();
}

std::vector<CarriedFact> carried_from_cell(const std::string &cell) {
    return cell.empty() ? std::vector<CarriedFact>{} : carried_from(read_located(cell));
}

} // namespace beadbook::codec
