#include "records/codecs/owners_copy.hpp"

#include "facts/person_name.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {
namespace {

constexpr int copy_form = 1;

nlohmann::json json_of(const CopyRead &read) {
    nlohmann::json out{{"form", copy_form},
                       {"copy", read.copy},
                       {"page", read.page},
                       {"by", read.by},
                       {"on", print(read.on)}};
    if (!read.second.empty()) out["second"] = read.second;
    return out;
}

std::string needed(const nlohmann::json &json, const char *key) {
    std::string out = text_of(json, key, "the owner's copy");
    if (out.empty()) throw StoreError("it has no " + std::string(key));
    return out;
}

CopyRead read_from(const nlohmann::json &json) {
    if (json.value("form", 0) != copy_form)
        throw StoreError("it was stored by a newer program; this one cannot read it");
    return {needed(json, "copy"), needed(json, "page"), needed(json, "by"),
            text_of(json, "second", "the owner's copy"), parse_day(needed(json, "on"))};
}

Entry entry(const char *kind, const std::string &set, const nlohmann::json &body) {
    Entry out;
    out.kind = kind;
    out.subject = set;
    out.body = canonical(body);
    return out;
}

} // namespace

Entry entry_of(const ConfirmationRecord &c) {
    nlohmann::json body = json_of(c.read);
    body["edition"] = c.edition;
    body["hash"] = c.hash;
    body["part"] = c.part;
    if (!c.class_id.empty()) body["class"] = c.class_id;
    return entry("confirmation", c.set, body);
}

Entry entry_of(const FillingRecord &f) {
    nlohmann::json body = json_of(f.read);
    body["edition"] = f.edition;
    body["blank"] = f.blank;
    body["clause"] = f.clause;
    body["kind"] = f.kind;
    body["class"] = f.class_id;
    if (!f.limits.empty()) body["limits"] = f.limits;
    if (!f.use.empty()) body["use"] = f.use;
    body["value"] = {{"typed", f.typed}, {"exact", exact_text(f.value)}};
    return entry("filling", f.set, body);
}

ConfirmationRecord confirmation_from(const Entry &e) {
    const nlohmann::json body = parsed(e.body);
    return {e.subject,
            needed(body, "edition"),
            needed(body, "hash"),
            needed(body, "part"),
            text_of(body, "class", "a confirmation"),
            read_from(body)};
}

FillingRecord filling_from(const Entry &e) {
    const nlohmann::json body = parsed(e.body);
    FillingRecord out{e.subject,
                      needed(body, "edition"),
                      needed(body, "blank"),
                      needed(body, "clause"),
                      needed(body, "kind"),
                      needed(body, "class"),
                      body.contains("limits") ? needed(body, "limits") : "",
                      body.contains("use") ? needed(body, "use") : "",
                      needed(body.at("value"), "typed"),
                      exact_from(needed(body.at("value"), "exact")),
                      read_from(body)};
    // Nobody fills a blank alone, also not by a record that another program wrote.
    if (out.read.second.empty() || same_person(out.read.by, out.read.second))
        throw StoreError("it was filled by one person only");
    return out;
}

} // namespace beadbook::codec
