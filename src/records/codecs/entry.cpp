#include "records/entry.hpp"

#include "measure/sha256.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>

namespace beadbook {

Family family_of(const std::string &kind) {
    for (const char *one : {"coupon", "exam", "indication", "remark", "verdict", "grade", "photo"})
        if (kind == one) return Family::coupon;
    if (kind == "confirmation" || kind == "filling") return Family::criteria;
    return kind == "person" ? Family::person : kind == "equipment" ? Family::equipment : Family::welder;
}

const char *name_of(Family family) {
    constexpr const char *names[] = {"coupon", "welder", "person", "equipment", "criteria"};
    return names[static_cast<std::size_t>(family)];
}

namespace {

/// As nlohmann writes it, which what is no plain text is left to: a chain of many entries is walked each time
/// that somebody is said to be qualified.
void quote(std::string &out, const std::string &text) {
    bool plain = true;
    for (const char c : text) plain &= static_cast<unsigned char>(c) - 0x20U < 0x60U;
    if (!plain) {
        // What is no UTF-8 any more was changed; its hash is another one, and no reason to stop.
        out += nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
        return;
    }
    const std::size_t before = out.size();
    out.resize(before + 2 * text.size() + 2);
    char *to = out.data() + before;
    *to++ = '"';
    for (const char c : text) {
        *to = '\\'; // written over where none is wanted
        to += c == '"' || c == '\\' ? 1 : 0;
        *to++ = c;
    }
    *to++ = '"';
    out.resize(static_cast<std::size_t>(to - out.data()));
}

} // namespace

std::string hash_of(const Entry &e) {
    std::string all = "[";
    all.reserve(e.body.size() * 5 / 4 + 300);
    const auto text = [&](const std::string &value) {
        quote(all, value);
        all += ',';
    };
    const auto number = [&](const auto &value) { all += (value ? std::to_string(*value) : "null") + ","; };
    text(e.previous);
    number(std::optional(e.seq));
    for (const auto *value : {&e.at, &e.who, &e.kind, &e.subject}) text(*value);
    number(e.exam);
    number(e.number);
    number(e.supersedes);
    text(e.reason);
    quote(all, e.body);
    return sha256(all + "]");
}

std::string withdrawal(std::optional<int> number) {
    nlohmann::json out{{"withdrawn", true}};
    if (number) out["number"] = *number;
    return codec::canonical(out);
}

std::string withdrawal_by_move(int number, const MovedTo &to) {
    return codec::canonical(
        {{"withdrawn", true},
         {"number", number},
         {"moved to", {{"coupon", to.coupon}, {"exam", to.exam}, {"number", to.number}}}});
}

std::optional<MovedTo> moved_to(const Entry &entry) {
    if (entry.body.find("\"moved to\"") == std::string::npos || !is_withdrawal(entry)) return std::nullopt;
    const nlohmann::json to = codec::parsed(entry.body).value("moved to", nlohmann::json::object());
    if (!to.contains("coupon")) return std::nullopt;
    return MovedTo{to.at("coupon").get<std::string>(), to.at("exam").get<int>(), to.at("number").get<int>()};
}

bool is_withdrawal(const Entry &entry) {
    // Text first: only a body that could be one is parsed.
    return entry.body.find("\"withdrawn\"") != std::string::npos &&
           codec::parsed(entry.body).contains("withdrawn");
}

const Entry *superseded_by(const Entry &entry, std::span<const Entry> history) {
    const auto old = std::find_if(history.begin(), history.end(),
                                  [&](const Entry &one) { return one.seq == entry.supersedes; });
    return old == history.end() ? nullptr : &*old;
}

void leave_out_since(std::vector<Entry> &history, std::optional<std::int64_t> before) {
    if (before) std::erase_if(history, [&](const Entry &e) { return e.seq >= *before; });
}

namespace {

constexpr const char *sign_in_key = "signed in";

/// Text first: only a body that could hold the key is parsed.
bool says_signed_in(const std::string &body) {
    return body.find(sign_in_key) != std::string::npos && codec::parsed(body).value(sign_in_key, false);
}

} // namespace

std::string signed_in(const std::string &body) {
    nlohmann::json out = codec::parsed(body);
    out[sign_in_key] = true;
    return codec::canonical(out);
}

std::string without_sign_in(const std::string &body) {
    if (!says_signed_in(body)) return body;
    nlohmann::json out = codec::parsed(body);
    out.erase(sign_in_key);
    return codec::canonical(out);
}

Stamp stamp_of(const Entry &entry) { return {entry.at, entry.who, says_signed_in(entry.body)}; }

} // namespace beadbook
