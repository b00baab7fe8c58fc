#pragma once

#include "operations/reading.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Criteria sets at a glance, one set with every rule, and the words for imperfections.
Document document_of(const std::vector<std::shared_ptr<const CriteriaSet>> &sets);
Document document_of(const CriteriaSet &set);
Document document_of(const Vocabulary &vocabulary);
Document document_of(const CheckedCriteria &checked);

/// What a rule measures: "length", "sum of length", "allowed".
std::string measure_words(const Rule &rule);
/// " of a line (gap at most 1/4 in) of 4 or more", of what is held in groups; else empty.
std::string line_words(const Rule &rule);
/// "porosity; crack, by VT and PT".
std::string subject_words(const Subject &subject);
/// "6 in", "whole weld"; "6 in (A), 12 in (B)" where classes differ. Empty: it has none.
std::string window_words_of(const CriteriaSet &set, const Rule &rule);
/// On what coupon and which indications, "joint is groove, depth over 1/32 in"; empty if on all.
std::string condition_words(const std::vector<Condition> &when, const std::vector<Condition> &where = {});

} // namespace beadbook
