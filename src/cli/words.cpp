#include "cli/words.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"

#include <charconv>

namespace beadbook {

Option by_option() { return {"by", "NAME", "who does this (else BEADBOOK_USER, else your login)"}; }
Option json_option() { return {"json", "", "print JSON for programs"}; }
Option sure_option() { return {"sure", "", "it is meant so, though nobody would believe it at first sight"}; }
Option why_option() { return {"why", "TEXT", "the reason; it is kept with the old entry"}; }
Option date_option(const std::string &name, const std::string &help) { return {name, "DAY", help}; }

Option happened_option() { return date_option("date", "on this day (default today)"); }
Option on_option() { return date_option("on", "as it stands on this day (default today)"); }

std::vector<Option> coupon_field_options() {
    std::vector<Option> out;
    for (const auto &field : coupon_fields()) out.push_back({field.name, "VALUE", field.help});
    return out;
}

std::map<std::string, std::string> coupon_fields_given(const Args &args) {
    std::map<std::string, std::string> out;
    for (const auto &field : coupon_fields())
        if (args.has(field.name)) out[field.name] = args.text(field.name);
    return out;
}

std::optional<Day> day_given(const Args &args, const std::string &option) {
    if (!args.has(option)) return std::nullopt;
    return parse_day(args.text(option));
}

int whole_number(const std::string &text, std::string_view what) {
    const std::string_view digits = text.starts_with("#") ? std::string_view(text).substr(1) : text;
    int value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc() || end != digits.data() + digits.size() || value < 1)
        throw UsageError("'" + shown(text) + "' is no " + std::string(what) +
                         "; expected a whole number such as 3");
    return value;
}

Exam method_word(const std::string &word) {
    if (const auto method = exam_named(word)) return *method;
    throw UsageError("'" + shown(word) + "' is no exam; expected " + exam_names_text());
}

} // namespace beadbook
