#include "records/changed_values.hpp"

#include "records/codecs/typed.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace beadbook {
namespace {

/// In the order of the bodies, which is that of their keys.
using Values = std::map<std::string, std::string>;

std::string scalar_of(const nlohmann::json &value) {
    return value.is_string() ? value.get<std::string>() : value.dump();
}

/// What says nothing to a reader, or stands in the entry's own line.
bool is_plumbing(const std::string &key) {
    static const std::set<std::string> keys{"id",     "number",     "exam",      "form",      "file",
                                            "engine", "vocabulary", "signed in", "rules file"};
    return keys.contains(key) || key.ends_with("hash");
}

/// Where a find was or is filed; the reason stands with the entry.
std::string place_text(const nlohmann::json &place) {
    return "coupon " + place.value("coupon", "") + ", exam " + std::to_string(place.value("exam", 0)) +
           ", #" + std::to_string(place.value("number", 0));
}

void flatten(const nlohmann::json &body, const std::string &before, Values &out, bool fields = false) {
    for (const auto &[key, value] : body.items()) {
        // A coupon's form is one of its fields, a body's form is none.
        if (!fields && is_plumbing(key)) continue;
        const std::string name = key == "fields" ? before : before.empty() ? key : before + " " + key;
        if (key == "moved from") {
            out[key] = place_text(value);
        } else if (value.is_object() && value.contains("typed")) {
            out[name] = scalar_of(value["typed"]);
        } else if (value.is_object()) {
            flatten(value, key == "conditions" ? "condition" : name, out, key == "fields");
        } else if (value.is_array()) {
            std::string all;
            for (const auto &one : value)
                if (const bool named = one.is_object() && one.contains("serial");
                    named || !one.is_structured())
                    all += (all.empty() ? "" : ", ") + scalar_of(named ? one["serial"] : one);
            if (!all.empty()) out[name] = all;
        } else {
            out[name] = scalar_of(value);
        }
    }
}

Values values_of(const Entry &entry) {
    Values out;
    const nlohmann::json body = codec::parsed(entry.body);
    if (entry.kind == "verdict") {
        if (body.contains("criteria")) out["criteria"] = body["criteria"].value("set", "");
        for (const auto &one : body.value("classes", nlohmann::json::array()))
            out["class " + one.value("class", "")] = one.value("verdict", "");
        return out;
    }
    if (!is_withdrawal(entry)) flatten(body, "", out);
    // What was moved away is told by where it went.
    if (moved_to(entry)) out["moved to"] = place_text(body.at("moved to"));
    return out;
}

/// A practice of one name may read otherwise by now: hashes are left out else, and no other value tells it.
void take_changed_text(const nlohmann::json &before, const nlohmann::json &now,
                       std::vector<ChangedValue> &out) {
    const std::string was = before.value("practice hash", ""), is = now.value("practice hash", "");
    if (before.value("practice", "") != now.value("practice", "") || was == is) return;
    out.push_back({"text of practice " + now.value("practice", ""), was.substr(0, 12), is.substr(0, 12)});
}

const Entry *stands_for(std::span<const Entry> history, const Entry &entry) {
    const bool as_before = entry.kind == "verdict" || entry.kind == "grade";
    const Entry *out = nullptr;
    for (const auto &one : history) {
        if (one.seq >= entry.seq) break;
        if (entry.supersedes ? one.seq == *entry.supersedes : as_before && one.kind == entry.kind) out = &one;
    }
    return out;
}

} // namespace

bool stands_for_another(std::span<const Entry> history, const Entry &entry) {
    return stands_for(history, entry) != nullptr;
}

std::vector<ChangedValue> changed_values(std::span<const Entry> history, const Entry &entry) {
    const Entry *old = stands_for(history, entry);
    const Values before = old ? values_of(*old) : Values{}, now = values_of(entry);
    std::vector<ChangedValue> out;
    for (const auto &[name, value] : before)
        if (const auto at = now.find(name); at == now.end() || at->second != value)
            out.push_back({name, value, at == now.end() ? "" : at->second});
    for (const auto &[name, value] : now)
        if (!before.contains(name)) out.push_back({name, "", value});
    if (old && entry.kind == "exam" && !is_withdrawal(entry) && !is_withdrawal(*old))
        take_changed_text(codec::parsed(old->body), codec::parsed(entry.body), out);
    // Which exam found it is the entry's, not the body's.
    if (old && old->exam != entry.exam && entry.kind == "indication" && !is_withdrawal(entry))
        out.push_back(
            {"exam", std::to_string(old->exam.value_or(0)), std::to_string(entry.exam.value_or(0))});
    return out;
}

std::vector<ChangedValue> changed_beside_finishing(std::span<const Entry> history, const Entry &entry) {
    auto out = changed_values(history, entry);
    std::erase_if(out, [](const ChangedValue &value) {
        return value.name == "finished by" || value.name == "finished why" || value.name == "finished on" ||
               value.name == "found";
    });
    return out;
}

} // namespace beadbook
