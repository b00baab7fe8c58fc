#include "language/formula_parser.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <limits>

namespace beadbook {
namespace {

constexpr int deepest_formula = 24;

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }
bool wordy(char c) { return letter(c) || (c >= '0' && c <= '9') || c == '-'; }

class Parser {
public:
    Parser(const std::string &text, const Names &names) : text_(text), names_(names) {
        if (text.size() > 2000) throw InputError("a formula of more than 2000 characters");
    }

    Formula whole_formula() {
        Formula f = formula();
        expect_end();
        return finished(std::move(f));
    }

    Condition whole_condition() {
        Condition c;
        c.text = std::string(trimmed(text_));
        if (const auto fact = leading_name<Fact>(fact_count)) {
            c.kind = Condition::Kind::fact;
            c.fact = *fact;
            c.words = words(info(*fact));
        } else if (const auto attribute = leading_name<Attribute>(attribute_count)) {
            c.kind = Condition::Kind::attribute;
            c.attribute = *attribute;
            c.words = words(info(*attribute));
        } else {
            c.left = finished(formula());
            c.edges = edges(c.left.dimension());
            if (c.edges.empty()) fail("expected a comparison: over, from, under, to, at most, at least");
        }
        expect_end();
        return c;
    }

    std::vector<Condition::Edge> whole_range(Dimension dimension) {
        auto out = edges(dimension);
        expect_end();
        if (out.empty()) fail("expected a range such as 'from 0.67 x T to 4 x T'");
        return out;
    }

    std::vector<Table::Edge> whole_band(Dimension dimension) {
        std::vector<Table::Edge> out;
        for (const auto &edge : edges(dimension)) {
            if (!edge.right.is_constant()) fail("the edge of a band must be a plain number");
            out.push_back({edge.compare, edge.right.constant_value()});
        }
        expect_end();
        if (out.empty()) fail("expected a band such as 'over 1/8 in to 3/16 in'");
        return out;
    }

private:
    [[noreturn]] void fail(const std::string &what) const { throw InputError(what, at_); }
    [[noreturn]] void fail_at(std::size_t at, const std::string &what) const { throw InputError(what, at); }

    void blanks() {
        while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\n')) ++at_;
    }

    void expect_end() {
        blanks();
        if (at_ < text_.size()) fail("found '" + shown(text_.substr(at_)) + "' where the formula should end");
    }

    bool symbol(char c) {
        blanks();
        if (at_ >= text_.size() || text_[at_] != c) return false;
        ++at_;
        return true;
    }

    /// Takes the words if they stand here whole.
    bool keyword(std::string_view words) {
        blanks();
        if (std::string_view(text_).substr(at_, words.size()) != words) return false;
        const std::size_t end = at_ + words.size();
        if (end < text_.size() && wordy(text_[end])) return false;
        at_ = end;
        return true;
    }

    std::string word() {
        blanks();
        const std::size_t begin = at_;
        while (at_ < text_.size() && wordy(text_[at_])) ++at_;
        return text_.substr(begin, at_ - begin);
    }

    template <class Key>
    std::optional<Key> leading_name(std::size_t count) {
        const std::size_t begin = at_;
        std::optional<Key> best;
        for (std::size_t i = 0; i < count; ++i) {
            at_ = begin;
            const auto key = static_cast<Key>(i);
            if (keyword(info(key).name) && keyword("is")) {
                best = key;
                break;
            }
        }
        if (!best) at_ = begin;
        return best;
    }

    std::uint32_t words(const FactInfo &fact) {
        std::uint32_t out = 0;
        do {
            const std::size_t begin = at_;
            const std::string name = word();
            const std::uint8_t index = word_index(fact, name);
            if (index == 0)
                fail_at(begin + 1, "'" + shown(name) + "' is no " + std::string(fact.name) + "; expected " +
                                       listed(fact.words, "or") + did_you_mean(name, fact.words));
            out |= std::uint32_t{1} << index;
        } while (keyword("or"));
        return out;
    }

    std::optional<Compare> edge_word() {
        return compare_words([&](std::string_view word) { return keyword(word); });
    }

    std::vector<Condition::Edge> edges(Dimension dimension) {
        std::vector<Condition::Edge> out;
        while (const auto compare = edge_word()) out.push_back({*compare, edge_formula(dimension)});
        return out;
    }

    Formula edge_formula(Dimension dimension) {
        blanks();
        const std::size_t begin = at_;
        Formula f = finished(formula());
        if (f.dimension() != dimension)
            fail_at(begin, "compares " + std::string(name_of(dimension)) + " with " +
                               std::string(name_of(f.dimension())));
        return f;
    }

    Formula finished(Formula f) const {
        f.text = std::string(trimmed(text_));
        for (const Quantity q : f.quantities()) {
            std::string name(info(q).name);
            for (const auto &[symbol, meaning] : names_.symbols)
                if (meaning == q) name = symbol;
            f.symbols.push_back(std::move(name));
        }
        return f;
    }

    Formula formula() {
        if (++depth_ > deepest_formula) fail("the formula is nested too deeply");
        Formula left = term();
        for (;;) {
            blanks();
            const std::size_t begin = at_;
            const bool plus = symbol('+');
            if (!plus && !symbol('-')) break;
            const Formula right = term();
            same(left, right, begin, plus ? "adds" : "subtracts");
            left = Formula::combine(plus ? Formula::Op::add : Formula::Op::subtract, left, right,
                                    left.dimension());
        }
        --depth_;
        return left;
    }

    Formula term() {
        Formula left = factor();
        for (;;) {
            blanks();
            const std::size_t begin = at_;
            if (symbol('*') || keyword("x")) {
                const Formula right = factor();
                left = Formula::combine(Formula::Op::multiply, left, right, product(left, right, begin));
            } else if (symbol('/')) {
                const Formula right = factor();
                left = Formula::combine(Formula::Op::divide, left, right, quotient(left, right, begin));
            } else {
                return left;
            }
        }
    }

    Dimension product(const Formula &a, const Formula &b, std::size_t at) const {
        if (a.dimension() == Dimension::number) return b.dimension();
        if (b.dimension() == Dimension::number) return a.dimension();
        if (a.dimension() == Dimension::length && b.dimension() == Dimension::length) return Dimension::area;
        fail_at(at, "multiplies " + std::string(name_of(a.dimension())) + " by " +
                        std::string(name_of(b.dimension())));
    }

    Dimension quotient(const Formula &a, const Formula &b, std::size_t at) const {
        if (b.dimension() == Dimension::number) return a.dimension();
        if (a.dimension() == b.dimension()) return Dimension::number;
        if (a.dimension() == Dimension::area && b.dimension() == Dimension::length) return Dimension::length;
        fail_at(at, "divides " + std::string(name_of(a.dimension())) + " by " +
                        std::string(name_of(b.dimension())));
    }

    void same(const Formula &a, const Formula &b, std::size_t at, std::string_view what) const {
        if (a.dimension() != b.dimension())
            fail_at(at, std::string(what) + " " + std::string(name_of(a.dimension())) + " and " +
                            std::string(name_of(b.dimension())));
    }

    /// `and` is no operator, so each sum ends before it by itself.
    Formula choice(Formula::Op op) {
        Formula left = formula();
        if (!keyword("and")) fail("expected 'and' and a second value");
        do {
            blanks();
            const std::size_t begin = at_;
            const Formula right = formula();
            same(left, right, begin, "chooses between");
            left = Formula::combine(op, left, right, left.dimension());
        } while (keyword("and"));
        return left;
    }

    Formula factor() {
        blanks();
        const std::size_t begin = at_;
        if (symbol('(')) {
            Formula inside = formula();
            if (!symbol(')')) fail("a bracket is not closed");
            return inside;
        }
        if (keyword("lesser of") || keyword("least of")) return choice(Formula::Op::least);
        if (keyword("greater of") || keyword("greatest of")) return choice(Formula::Op::greatest);
        if (keyword("table")) return table();
        if (keyword("limit of")) return limit_of();
        if (const auto number = scan_number(text_, at_)) return constant(*number, begin);
        if (const auto named = name()) return *named;
        const std::string found = at_ < text_.size() ? "'" + shown(word_at(begin)) + "'" : "the end";
        fail_at(begin, "found " + found + "; expected a number with its unit, " + listed(known(), "or") +
                           did_you_mean(word_at(begin), known()));
    }

    std::string word_at(std::size_t begin) const {
        std::size_t end = begin;
        while (end < text_.size() && wordy(text_[end])) ++end;
        return text_.substr(begin, std::max<std::size_t>(end - begin, begin < text_.size() ? 1 : 0));
    }

    Formula constant(const Exact &number, std::size_t begin) {
        // `2 x T`: the x is an operator, not the start of a unit, so only known unit words are taken.
        try {
            if (const auto unit = scan_unit(text_, at_))
                return Formula::constant(number * unit->scale + unit->offset, unit->dimension);
        } catch (const OutOfRange &) {
            fail_at(begin, "the number is too large");
        }
        return Formula::constant(number, Dimension::number);
    }

    Formula table() {
        const std::size_t begin = at_ + 1;
        const std::string name = word();
        const auto found = names_.tables.find(name);
        if (found == names_.tables.end()) {
            std::vector<std::string> all;
            for (const auto &[key, value] : names_.tables) all.push_back(key);
            fail_at(begin, "there is no table '" + shown(name) + "'" + did_you_mean(name, all));
        }
        return Formula::of(found->second, found->second->rows.front().value.dimension());
    }

    Formula limit_of() {
        const std::size_t begin = at_ + 1;
        const std::string name = word();
        const auto found = names_.limits.find(name);
        if (found == names_.limits.end()) {
            std::vector<std::string> all;
            for (const auto &[key, value] : names_.limits) all.push_back(key);
            fail_at(begin, "no rule above, '" + shown(name) + "', has a limit in this class" +
                               did_you_mean(name, all));
        }
        return found->second;
    }

    /// The longest name that stands here: `larger size` before `larger`.
    std::optional<Formula> name() {
        std::optional<Formula> best;
        std::size_t end = at_;
        const std::size_t begin = at_;
        const auto offer = [&](std::string_view name, const auto &make) {
            at_ = begin;
            if (keyword(name) && at_ > end) {
                end = at_;
                best = make();
            }
        };
        for (const auto &[symbol, q] : names_.symbols) offer(symbol, [&] { return Formula::of(q); });
        for (const auto &[key, f] : names_.formulas) offer(key, [&] { return f; });
        for (std::size_t i = coupon_quantities; i < quantity_count; ++i) {
            const auto q = static_cast<Quantity>(i);
            offer(info(q).name, [&] { return Formula::of(q); });
        }
        at_ = end;
        return best;
    }

    std::vector<std::string> known() const {
        std::vector<std::string> out;
        for (const auto &[symbol, q] : names_.symbols) out.push_back(symbol);
        for (const auto &[key, f] : names_.formulas) out.push_back(key);
        for (std::size_t i = coupon_quantities; i < quantity_count; ++i)
            out.emplace_back(info(static_cast<Quantity>(i)).name);
        return out;
    }

    const std::string &text_;
    const Names &names_;
    std::size_t at_ = 0;
    int depth_ = 0;
};

} // namespace

Formula parse_formula(const std::string &text, const Names &names) {
    return Parser(text, names).whole_formula();
}

Condition parse_condition(const std::string &text, const Names &names) {
    return Parser(text, names).whole_condition();
}

std::vector<Condition::Edge> parse_range(const std::string &text, const Names &names, Dimension dimension) {
    return Parser(text, names).whole_range(dimension);
}

std::vector<Table::Edge> parse_band(const std::string &text, const Names &names, Dimension dimension) {
    return Parser(text, names).whole_band(dimension);
}

} // namespace beadbook
