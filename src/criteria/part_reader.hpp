#pragma once

#include "criteria/rule_reader.hpp"

#include <initializer_list>

namespace beadbook {

/// An error for each condition that speaks of a scope (or an attribute) that is not known under this key.
void refuse_scopes(const std::vector<Condition> &conditions, std::initializer_list<Scope> scopes,
                   bool attributes, const Fields &fields, std::string_view key);

/// Keys `types`, `except` and `exams`.
Subject read_subject(const Fields &fields, ReadContext &context, bool needed);

} // namespace beadbook
