#include "records/codecs/typed.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <limits>

namespace beadbook::codec {
namespace {

constexpr std::string_view base_unit_names[] = {"value", "nm", "nm2", "microdegree", "microfahrenheit"};

} // namespace

std::string_view base_unit_name(Dimension dimension) {
    return base_unit_names[static_cast<std::size_t>(dimension)];
}

nlohmann::json json_of(const Typed &typed, Dimension dimension) {
    nlohmann::json out{{"typed", typed.text}};
    // Whole in every dimension that is stored; areas can pass 64 bits and then go without.
    if (typed.value.is_whole() && typed.value < Exact(std::numeric_limits<std::int64_t>::max()))
        out[std::string(base_unit_name(dimension))] = static_cast<std::int64_t>(typed.value.num());
    return out;
}

Typed typed_from(const nlohmann::json &json, Dimension dimension, std::optional<Unit> unit) {
    const nlohmann::json &text = json.is_object() && json.contains("typed") ? json["typed"] : json;
    if (text.is_string()) return parse_measured(text.get<std::string>(), dimension, unit);
    throw InputError("expected text such as \"0.045 in\", found " + shown(text.dump()));
}

std::string exact_text(const Exact &value) {
    const auto digits = [](Int128 v) {
        std::string out;
        const bool negative = v < 0;
        if (negative) v = -v;
        do out.insert(out.begin(), static_cast<char>('0' + static_cast<int>(v % 10)));
        while ((v /= 10) != 0);
        return (negative ? "-" : "") + out;
    };
    return digits(value.num()) + (value.is_whole() ? "" : "/" + digits(value.den()));
}

Exact exact_from(const std::string &text) {
    const std::size_t slash = std::min(text.find('/'), text.size());
    const auto whole = [&](std::size_t begin, std::size_t end) {
        const bool negative = begin < end && text[begin] == '-';
        if (negative) ++begin;
        if (begin == end || end - begin > 37)
            throw StoreError("an entry is damaged: '" + shown(text) + "' is no number");
        Int128 out = 0;
        for (std::size_t i = begin; i < end; ++i) {
            if (text[i] < '0' || text[i] > '9')
                throw StoreError("an entry is damaged: '" + shown(text) + "' is no number");
            out = out * 10 + (text[i] - '0');
        }
        return negative ? -out : out;
    };
    const Int128 num = whole(0, slash);
    return slash == text.size() ? Exact::whole(num) : Exact::fraction(num, whole(slash + 1, text.size()));
}

std::string text_of(const nlohmann::json &json, const char *key, const char *what) {
    if (!json.contains(key)) return "";
    if (!json[key].is_string()) throw DataError(std::string(what) + ": \"" + key + "\" is not text");
    return checked_text(json[key].get<std::string>(), key);
}

std::string canonical(const nlohmann::json &json) { return json.dump(); }

nlohmann::json parsed(const std::string &body) {
    try {
        return nlohmann::json::parse(body);
    } catch (const nlohmann::json::exception &e) {
        throw StoreError(std::string("an entry is damaged: ") + e.what());
    }
}

} // namespace beadbook::codec
