#pragma once

#include "cli/options.hpp"
#include "criteria/vocabulary.hpp"
#include "measure/day.hpp"

#include <map>
#include <optional>
#include <string>

namespace beadbook {

// Options that several commands take.
Option by_option();
Option json_option();
Option why_option();
Option sure_option();
Option happened_option();
Option on_option();
Option date_option(const std::string &name, const std::string &help);
/// One option for each field of a coupon.
std::vector<Option> coupon_field_options();

/// Fields of a coupon that the call gives.
std::map<std::string, std::string> coupon_fields_given(const Args &args);

/// The day that an option gives, if it does. Throws InputError.
std::optional<Day> day_given(const Args &args, const std::string &option);

/// A whole number from 1, also written #3. Throws UsageError.
int whole_number(const std::string &text, std::string_view what);

/// A method by its short name. Throws UsageError.
Exam method_word(const std::string &word);

} // namespace beadbook
