#pragma once

#include "criteria/model.hpp"
#include "criteria/set_names.hpp"
#include "language/read.hpp"

namespace beadbook {

/// What the readers of a set's parts share.
struct ReadContext {
    const Vocabulary &vocabulary;
    CriteriaSet &set; ///< classes, rules read so far
    Names &names;
    Issues &issues;
    bool class_twice = false; ///< so that another one may be meant, of which nothing more is told
};

Standing read_standing(const Fields &fields, Issues &issues);
Standing read_standing(const Yaml &node, const std::string &path, Issues &issues);

/// Key `units`: in or mm.
Unit read_unit(const Fields &top);

std::optional<Rule> read_rule(const Yaml &node, ReadContext &context);
Relevance read_relevance(const Yaml &node, ReadContext &context);
Merge read_merge(const Yaml &node, ReadContext &context);
RequiredExam read_required_exam(const Yaml &node, ReadContext &context);
ScopePart read_scope_part(const Yaml &node, ReadContext &context);
Silence read_silence(const Yaml &node, ReadContext &context);
Gap read_gap(const Yaml &node, ReadContext &context);
/// A part of `blanks`, and its name among the names that formulas may use.
void read_blank(const Yaml &node, ReadContext &context);

} // namespace beadbook
