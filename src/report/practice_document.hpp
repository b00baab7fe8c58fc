#pragma once

#include "operations/reading.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Practices at a glance, one of them with every rule, and the conditions that they speak of.
Document document_of(const std::vector<std::shared_ptr<const Practice>> &all);
Document document_of(const Practice &practice);
Document document_of(const std::vector<ConditionInfo> &conditions);
Document document_of(const Checked<Practice> &checked);

} // namespace beadbook
