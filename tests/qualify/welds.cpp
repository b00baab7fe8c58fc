#include "welds.hpp"

#include "language/issue.hpp"
#include "measure/parse.hpp"
#include "qualify/range_rules.hpp"

#include <stdexcept>

namespace beadbook::test {
namespace {

std::string said(Truth truth) {
    return truth == Truth::yes ? "yes" : truth == Truth::no ? "no" : "cannot say";
}

} // namespace

Weld weld(const std::string &text) {
    Weld out;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(text.find(", ", begin), text.size());
        const std::string part = text.substr(begin, end - begin);
        begin = end + 2;
        // "metal group P1": the longest name that the part begins with.
        std::optional<Trait> trait;
        for (std::size_t i = 0; i < trait_count; ++i) {
            const auto one = static_cast<Trait>(i);
            if (part.starts_with(std::string(info(one).name) + " ") &&
                (!trait || info(one).name.size() > info(*trait).name.size()))
                trait = one;
        }
        if (!trait) throw std::invalid_argument("no trait in '" + part + "'");
        const std::string value = part.substr(info(*trait).name.size() + 1);
        if (is_size(*trait))
            out.size(*trait) = parse_typed(value, info(*info(*trait).size).dimension, std::nullopt).value;
        else
            out.word(*trait) = value;
    }
    return out;
}

std::string qualifies(const std::string &rules, const std::string &test, const std::string &work) {
    return said(covers(*shipped_range_rules(rules), weld(test), weld(work)).covered);
}

std::string qualifies(const std::string &rules, const std::string &test, const std::string &work,
                      const std::string &trait) {
    const auto set = shipped_range_rules(rules);
    for (const auto &variable : set->variables)
        if (info(variable.of).name == trait)
            if (const auto cover = cover_of(range_of(*set, variable, weld(test)), weld(work)))
                return said(cover->covered);
    return "not asked";
}

std::string errors_of(const std::string &rules) {
    std::string out;
    for (const auto &issue : load_range_rules(rules).issues) out += print(issue, "f.yaml", rules);
    return out;
}

} // namespace beadbook::test
