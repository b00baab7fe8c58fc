#include "measure/text.hpp"
#include "records/codecs/exchange.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/photo.hpp"

#include <nlohmann/json.hpp>
#include <utility>

namespace beadbook::codec {
namespace {

/// What was measured, without what only its own record knows.
nlohmann::json exchanged(const CouponState &c) {
    std::map<int, nlohmann::json> found;
    for (const auto &i : c.indications) {
        nlohmann::json one = json_of(i);
        for (const char *of_this_record : {"file", "moved from"}) one.erase(of_this_record);
        found[i.exam].push_back(std::move(one));
    }
    nlohmann::json out = json_of(c.record);
    out["exams"] = nlohmann::json::array();
    for (const auto &e : c.exams) {
        nlohmann::json exam = json_of(e);
        exam["indications"] = found.contains(e.number) ? found[e.number] : nlohmann::json::array();
        out["exams"].push_back(std::move(exam));
    }
    for (const auto &photo : c.photos)
        if (photo.withdrawn.empty()) out["photos"].push_back(json_of(photo));
    return out;
}

} // namespace

std::string exchange_line(const CouponState &coupon) {
    return escaped_for_json(exchanged(coupon).dump()) + "\n";
}

std::string ExchangeText::head() const { return "{\n  \"coupons\": ["; }

std::string ExchangeText::coupon(const CouponState &coupon) {
    std::string out = std::exchange(any_, true) ? ",\n    " : "\n    ";
    // As deep as it lies in the file; a text holds no line end.
    for (const char c : escaped_for_json(exchanged(coupon).dump(2))) {
        out += c;
        if (c == '\n') out += "    ";
    }
    return out;
}

std::string ExchangeText::end() const {
    return std::string(any_ ? "\n  ]" : "]") + ",\n  \"format\": \"" + std::string(exchange_format) +
           "\",\n  \"version\": " + std::to_string(exchange_version) + "\n}\n";
}

} // namespace beadbook::codec
