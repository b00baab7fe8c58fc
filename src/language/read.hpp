#pragma once

#include "language/condition.hpp"
#include "language/fields.hpp"
#include "language/names.hpp"
#include "measure/parse.hpp"

namespace beadbook {

/// Where in the file the character at `column` (bytes) of a scalar's text stands.
Where inside(const Yaml &scalar, std::size_t column);

/// What `parse` makes of a scalar's text; its InputError becomes an issue at the place of the mistake, but
/// for what was told where it stands.
template <class Parse>
auto parsed(const Yaml &node, const std::string &path, Issues &issues, Parse parse)
    -> std::optional<decltype(parse(node.text))> {
    if (!scalar_text(node, path, issues)) return std::nullopt;
    try {
        return parse(node.text);
    } catch (const ToldElsewhere &) {
        return std::nullopt;
    } catch (const InputError &e) {
        issues.error(inside(node, e.column), path, e.what());
        return std::nullopt;
    }
}

std::optional<Formula> read_formula(const Yaml &node, const std::string &path, const Names &names,
                                    Issues &issues);
std::optional<Condition> read_condition(const Yaml &node, const std::string &path, const Names &names,
                                        Issues &issues);
/// The conditions under a key, one or a list, each one a line of text; all of them must hold.
std::vector<Condition> read_conditions(const Fields &fields, std::string_view key, const Names &names,
                                       Issues &issues);
/// A table of values by bands; null if nothing of it could be read.
std::shared_ptr<const Table> read_table(const std::string &name, const Yaml &node, const Names &names,
                                        Issues &issues);

} // namespace beadbook
