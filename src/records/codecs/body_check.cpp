#include "records/codecs/body_check.hpp"

#include "records/codecs/typed.hpp"

#include <cmath>
#include <limits>

namespace beadbook::codec {
namespace {

/// Keys of the numbers that are read as such of the trade.
bool is_small_number(const std::string &key) {
    for (const char *one : {"number", "exam", "found", "form", "part", "engine", "find"})
        if (key == one) return true;
    return false;
}

/// A number that a reader could take for another one.
bool has_number_out_of_range(const nlohmann::json &json, const std::string &key = "") {
    if (json.is_structured()) {
        for (const auto &item : json.items())
            if (has_number_out_of_range(item.value(), json.is_object() ? item.key() : key)) return true;
        return false;
    }
    constexpr double too_large = 9.2e18; // beyond 64 bits a number is read as a floating one
    if (json.is_number_float()) return std::fabs(json.get<double>()) > too_large;
    if (!json.is_number_integer()) return false;
    if (json.is_number_unsigned() && json.get<std::uint64_t>() > std::numeric_limits<std::int64_t>::max())
        return true;
    const auto value = json.get<std::int64_t>();
    return is_small_number(key) && (value < 0 || value > std::numeric_limits<int>::max());
}

} // namespace

std::string fault_of_body(const std::string &text) {
    try {
        const nlohmann::json body = parsed(text);
        if (canonical(body) != text) return "its body is not written as this program writes it";
        if (has_number_out_of_range(body)) return "a number in its body is out of range";
    } catch (const Refusal &) {
        return "its body cannot be read";
    }
    return "";
}

std::optional<std::string> document_of(const Entry &e) {
    if (e.kind != "qualification") return std::nullopt;
    const nlohmann::json body = parsed(e.body);
    const auto paper = body.find("document");
    if (paper == body.end() || !paper->is_string()) return std::nullopt;
    return paper->get<std::string>();
}

} // namespace beadbook::codec
