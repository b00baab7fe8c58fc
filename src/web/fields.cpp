#include "web/fields.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

int digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

/// What is no %XX stays as it is.
std::string decoded(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '%' && i + 2 < text.size() && digit(text[i + 1]) >= 0 && digit(text[i + 2]) >= 0) {
            out += static_cast<char>(digit(text[i + 1]) * 16 + digit(text[i + 2]));
            i += 2;
        } else {
            out += text[i] == '+' ? ' ' : text[i];
        }
    }
    return out;
}

} // namespace

void SentFields::set(const std::string &name, std::string value) {
    all_.erase(std::remove_if(all_.begin(), all_.end(), [&](const auto &one) { return one.first == name; }),
               all_.end());
    add(name, std::move(value));
}

bool SentFields::has(std::string_view name) const {
    return std::any_of(all_.begin(), all_.end(), [&](const auto &one) { return one.first == name; });
}

std::string SentFields::text(std::string_view name, const std::string &otherwise) const {
    for (auto one = all_.rbegin(); one != all_.rend(); ++one)
        if (one->first == name) return one->second;
    return otherwise;
}

std::vector<std::string> SentFields::all(std::string_view name) const {
    std::vector<std::string> out;
    for (const auto &one : all_)
        if (one.first == name) out.push_back(one.second);
    return out;
}

std::string SentFields::doubled(std::string_view but_for) const {
    for (auto one = all_.begin(); one != all_.end(); ++one)
        if (one->first != but_for &&
            std::any_of(all_.begin(), one, [&](const auto &before) { return before.first == one->first; }))
            return one->first;
    return "";
}

SentFields fields_in(std::string_view text, char between) {
    SentFields out;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(between), text.size());
        const std::string_view pair = trimmed(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        if (pair.empty()) continue;
        const std::size_t is = std::min(pair.find('='), pair.size());
        out.add(decoded(pair.substr(0, is)), is < pair.size() ? decoded(pair.substr(is + 1)) : "");
    }
    return out;
}

std::string url_word(std::string_view text) {
    static const char digits[] = "0123456789ABCDEF";
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                           c == '-' || c == '.' || c == '_' || c == '~';
        if (plain)
            out += c;
        else
            (out += '%').append({digits[byte / 16], digits[byte % 16]});
    }
    return out;
}

} // namespace beadbook
