#include "language/read.hpp"

#include "language/condition_parser.hpp"
#include "language/formula_parser.hpp"

#include <algorithm>

namespace beadbook {
namespace {

void read_row(const Yaml::Entry &entry, const std::string &path, const Names &names, Issues &issues,
              Table &table) {
    Table::Row row;
    row.text = entry.key;
    row.where = entry.key_where;
    try {
        row.band = parse_band(entry.key, names, table.by.dimension());
    } catch (const InputError &e) {
        Where at = entry.key_where;
        at.column += static_cast<int>(e.column);
        issues.error(at, path + ".rows", e.what());
    }
    auto value = read_formula(entry.value, path + ".rows." + entry.key, names, issues);
    if (!value) return;
    if (!table.rows.empty() && value->dimension() != table.rows.front().value.dimension())
        issues.error(entry.value.where, path, "the rows give different kinds of values");
    row.value = std::move(*value);
    table.rows.push_back(std::move(row));
}

} // namespace

Where inside(const Yaml &node, std::size_t column) {
    // The lines of a folded scalar are gone; its begin is the best that is known.
    if (node.text.find('\n') != std::string::npos) return node.where;
    const auto end = node.text.begin() + static_cast<std::ptrdiff_t>(std::min(column, node.text.size()));
    const auto characters = std::count_if(node.text.begin(), end, [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80; // not the middle of one in UTF-8
    });
    return {node.where.line, node.where.column + static_cast<int>(characters) + (node.quoted ? 1 : 0)};
}

std::optional<Formula> read_formula(const Yaml &node, const std::string &path, const Names &names,
                                    Issues &issues) {
    return parsed(node, path, issues, [&](const std::string &text) { return parse_formula(text, names); });
}

std::optional<Condition> read_condition(const Yaml &node, const std::string &path, const Names &names,
                                        Issues &issues) {
    return parsed(node, path, issues, [&](const std::string &text) { return parse_condition(text, names); });
}

std::vector<Condition> read_conditions(const Fields &fields, std::string_view key, const Names &names,
                                       Issues &issues) {
    std::vector<Condition> out;
    for (const Yaml *node : fields.words(key))
        if (auto c = read_condition(*node, fields.path_of(key), names, issues)) out.push_back(std::move(*c));
    return out;
}

std::shared_ptr<const Table> read_table(const std::string &name, const Yaml &node, const Names &names,
                                        Issues &issues) {
    const std::string path = "tables." + name;
    const Fields fields(node, path, {"by", "rounded to", "rows"}, issues);
    auto table = std::make_shared<Table>();
    table->name = name;
    table->where = node.where;
    if (const Yaml *by = fields.need("by"))
        if (auto f = read_formula(*by, path + ".by", names, issues)) table->by = std::move(*f);
    if (table->by.text.empty()) return nullptr;
    if (const Yaml *step = fields.get("rounded to"))
        if (auto f = read_formula(*step, path + ".rounded to", names, issues)) {
            table->step = f->constant_value();
            if (f->dimension() != table->by.dimension() || !f->is_constant() || table->step <= Exact(0))
                fields.error("rounded to", "expected a plain positive number of the same kind as 'by'");
        }
    const Yaml *rows = fields.need("rows");
    if (!rows) return nullptr;
    if (rows->kind != Yaml::Kind::map || rows->entries.empty()) {
        fields.error("rows", "expected a map from bands to values, such as {over 1/8 in to 3/16 in: 1/8 in}");
        return nullptr;
    }
    for (const auto &entry : rows->entries) read_row(entry, path, names, issues, *table);
    return table->rows.empty() ? nullptr : table;
}

} // namespace beadbook
