#include "records/codecs/body_fault.hpp"

#include "records/codecs/typed.hpp"

#include <cmath>

namespace beadbook::codec {
namespace {

/// Keys of the numbers that are read as such of the trade.
bool is_small_number(const std::string &key) {
    for (const char *one : {"number", "exam", "found", "form", "part", "engine"})
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
        // A key that stands twice, a blank, another order: who reads the bytes otherwise reads another fact.
        if (canonical(body) != text) return "its body is not written as this program writes it";
        if (has_number_out_of_range(body)) return "a number in its body is out of range";
    } catch (const Refusal &) {
        return "its body cannot be read";
    }
    return "";
}

std::string paper_of(const std::string &text) {
    const nlohmann::json body = parsed(text);
    const auto paper = body.find("document");
    return paper != body.end() && paper->is_string() ? paper->get<std::string>() : "";
}

} // namespace beadbook::codec
