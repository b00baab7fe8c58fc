#pragma once

#include "operations/reading.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Rules for welders at a glance, and one of them with every range and period.
Document document_of(const std::vector<std::shared_ptr<const RangeRules>> &all);
Document document_of(const RangeRules &rules);
Document document_of(const Checked<RangeRules> &checked);

/// What a rule allows: "from 0.67 x T to 4 x T", "1G: F; 2G: F and H".
std::string allowance_words(const RangeRule &rule);
/// How an end that a formula works out is compared: "rounded to 0.001 in, halves to the even figure".
std::string ends_words(const EndComparison &ends);
/// How long a qualification of this way holds: "lasts 2 years, to be used within every 6 months".
std::string period_words(const ValidityWay &way);
/// What the rules, as they are known here, do not say of the test weld; empty if nothing: an answer by them
/// tells it.
std::string not_known_words(const RangeRules &rules);
std::string extension_words(const ValidityWay::Extension &extension);

} // namespace beadbook
