#pragma once

#include "criteria/model.hpp"
#include "language/fields.hpp"
#include "language/formula_parser.hpp"

namespace beadbook {

/// What the readers of a set's parts share.
struct ReadContext {
    const Vocabulary &vocabulary;
    CriteriaSet &set; ///< classes, rules read so far
    Names &names;
    Issues &issues;
};

std::optional<Formula> read_formula(const Yaml &node, const std::string &path, ReadContext &context);
std::optional<Condition> read_condition(const Yaml &node, const std::string &path, ReadContext &context);
std::shared_ptr<const Table> read_table(const std::string &name, const Yaml &node, ReadContext &context);
Standing read_standing(const Fields &fields, Issues &issues);
Standing read_standing(const Yaml &node, const std::string &path, Issues &issues);

/// Key `units`: in or mm.
Unit read_unit(const Fields &top);
/// Key `quantities`: the author's symbols for a coupon's quantities.
void read_symbols(const Fields &top, Names &names);

std::optional<Rule> read_rule(const Yaml &node, ReadContext &context);
Relevance read_relevance(const Yaml &node, ReadContext &context);
Merge read_merge(const Yaml &node, ReadContext &context);
RequiredExam read_required_exam(const Yaml &node, ReadContext &context);
Gap read_gap(const Yaml &node, ReadContext &context);

} // namespace beadbook
