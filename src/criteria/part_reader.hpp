#pragma once

#include "criteria/rule_reader.hpp"

#include <initializer_list>

namespace beadbook {

/// An error for each condition that speaks of a scope (or an attribute) that is not known under this key.
void refuse_scopes(const std::vector<Condition> &conditions, std::initializer_list<Scope> scopes,
                   bool attributes, const Fields &fields, std::string_view key);

/// An error if a condition hangs on a blank: whether a rule speaks at all must not wait for a number.
void refuse_blanks(const Condition &condition, const Fields &fields, std::string_view key);

/// Key `area` of a rule that sums areas: `rectangle`, of each that nobody measured otherwise.
bool read_as_rectangles(const Fields &fields, const Rule &rule);

/// What stands on a blank is neither read nor remembered: its standing, and which classes hang on the blank.
void note_blanks(Rule &rule, CriteriaSet &set);

/// One standing for a rule; classes whose number is known otherwise are named under `standing of`.
std::vector<Standing> read_standings(const Fields &fields, ReadContext &context);
/// Key `classes`: a list of them; all, if it is absent.
std::vector<bool> read_class_list(const Fields &fields, ReadContext &context);
/// A map with a value for each class: errors where the set has no such class, or one of its own is missing.
void check_class_keys(const Yaml &map, const std::string &path, ReadContext &context);

/// Whether `exams` must stand there. A gap without it is one for all methods: it can only make a verdict
/// cannot say.
enum class ExamsKey : std::uint8_t { needed, all_if_absent };
/// Keys `types`, `except` and `exams`.
Subject read_subject(const Fields &fields, ReadContext &context, ExamsKey exams);

} // namespace beadbook
