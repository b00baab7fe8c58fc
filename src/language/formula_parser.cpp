#include "language/formula_parser.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr int deepest = 24;

/// More names than this are not listed in a message.
constexpr std::size_t most_listed = 32;

template <class Map>
std::vector<std::string> keys_of(const Map &map) {
    std::vector<std::string> out;
    for (const auto &[key, value] : map) out.push_back(key);
    return out;
}

std::string there_are(const std::vector<std::string> &names, const std::string &asked) {
    if (names.empty()) return "; none is read yet";
    return (names.size() > most_listed ? "" : "; expected " + listed(names, "or")) +
           did_you_mean(asked, names);
}

} // namespace

Formula FormulaParser::formula(bool or_asked) {
    const std::size_t begin = s_.blanks();
    asked_at_ = or_asked ? std::optional(begin) : std::nullopt;
    return finished(sum(), begin);
}

Formula FormulaParser::finished(Formula f, std::size_t begin) const {
    f.text = s_.since(begin);
    f.symbols.clear();
    for (const Slot slot : f.quantities()) f.symbols.push_back(names_.called(slot));
    return f;
}

Formula FormulaParser::sum() {
    if (++depth_ > deepest) s_.fail("the formula is nested too deeply");
    Formula left = term();
    for (;;) {
        const std::size_t begin = s_.blanks();
        const bool plus = s_.symbol('+');
        if (!plus && !s_.symbol('-')) break;
        const Formula right = term();
        same(left, right, begin, plus ? "adds" : "subtracts");
        left =
            Formula::combine(plus ? Formula::Op::add : Formula::Op::subtract, left, right, left.dimension());
    }
    --depth_;
    return left;
}

Formula FormulaParser::term() {
    Formula left = factor();
    for (;;) {
        const std::size_t begin = s_.blanks();
        if (s_.symbol('*') || s_.keyword("x")) {
            const Formula right = factor();
            left = Formula::combine(Formula::Op::multiply, left, right, product(left, right, begin));
        } else if (s_.symbol('/')) {
            const Formula right = factor();
            if (right.is_constant() && right.constant_value() == Exact(0))
                s_.fail_at(begin, "divides by zero");
            left = Formula::combine(Formula::Op::divide, left, right, quotient(left, right, begin));
        } else {
            return left;
        }
    }
}

Dimension FormulaParser::product(const Formula &a, const Formula &b, std::size_t at) const {
    if (const auto out = product_of(a.dimension(), b.dimension())) return *out;
    s_.fail_at(at, "multiplies " + std::string(name_of(a.dimension())) + " by " +
                       std::string(name_of(b.dimension())));
}

Dimension FormulaParser::quotient(const Formula &a, const Formula &b, std::size_t at) const {
    if (const auto out = quotient_of(a.dimension(), b.dimension())) return *out;
    s_.fail_at(at, "divides " + std::string(name_of(a.dimension())) + " by " +
                       std::string(name_of(b.dimension())));
}

void FormulaParser::same(const Formula &a, const Formula &b, std::size_t at, std::string_view what) const {
    if (a.dimension() != b.dimension())
        s_.fail_at(at, std::string(what) + " " + std::string(name_of(a.dimension())) + " and " +
                           std::string(name_of(b.dimension())));
}

/// `and` is no operator, so each sum ends before it by itself.
Formula FormulaParser::choice(Formula::Op op) {
    Formula left = sum();
    if (!s_.keyword("and")) s_.fail("expected 'and' and a second value");
    do {
        const std::size_t begin = s_.blanks();
        const Formula right = sum();
        same(left, right, begin, "chooses between");
        left = Formula::combine(op, left, right, left.dimension());
    } while (s_.keyword("and"));
    return left;
}

Formula FormulaParser::factor() {
    const std::size_t begin = s_.blanks();
    if (s_.symbol('(')) {
        Formula inside = sum();
        if (!s_.symbol(')')) s_.fail("a bracket is not closed");
        return inside;
    }
    if (s_.keyword("lesser of") || s_.keyword("least of")) return choice(Formula::Op::least);
    if (s_.keyword("greater of") || s_.keyword("greatest of")) return choice(Formula::Op::greatest);
    if (s_.keyword("table")) return table();
    if (s_.keyword("limit of")) return limit_of();
    if (!names_.blanks.empty() && s_.keyword("blank")) return blank();
    if (const auto number = s_.number()) return constant(*number, begin);
    if (auto found = named()) return *std::move(found);
    unknown(begin);
}

Formula FormulaParser::constant(const Exact &number, std::size_t begin) {
    // `2 x T`: the x is an operator, not the start of a unit, so only known unit words are taken.
    try {
        if (const auto unit = s_.unit()) {
            const Exact value = number * unit->scale + unit->offset;
            if (auto both = twin(value, *unit)) return *std::move(both);
            return Formula::constant(value, unit->dimension);
        }
    } catch (const OutOfRange &) {
        s_.fail_at(begin, "the number is too large");
    }
    return Formula::constant(number, Dimension::number);
}

/// Two printed values, if `or` and a second number follow the first. They are the same but for rounding; more
/// apart is a slip of the pen.
std::optional<Formula> FormulaParser::twin(const Exact &first, const UnitWord &unit) {
    const std::size_t before = s_.at();
    const bool follows = s_.keyword("or");
    const std::size_t begin = s_.blanks();
    const auto number = follows ? s_.number() : std::nullopt;
    if (!number) {
        s_.go_to(before);
        return std::nullopt;
    }
    const auto other = s_.unit();
    if (!other || other->dimension != unit.dimension || !unit.family || !other->family ||
        *unit.family == *other->family)
        s_.fail_at(begin, "expected the same value in the other unit, as in 1/16 in or 1.6 mm");
    const Exact second = *number * other->scale + other->offset;
    const Exact &low = std::min(first, second), &high = std::max(first, second);
    const Exact degrees = 10'000'000; // 10 F: no share of it means anything
    if (unit.dimension == Dimension::temperature ? high - low > degrees : high * Exact(2) > low * Exact(3))
        s_.fail_at(begin, "the two differ too much to be one value in two units");
    const bool inch_first = *unit.family == Unit::inch;
    return Formula::combine(Formula::Op::twin, Formula::constant(inch_first ? first : second, unit.dimension),
                            Formula::constant(inch_first ? second : first, unit.dimension), unit.dimension);
}

Formula FormulaParser::table() {
    const std::size_t begin = s_.blanks();
    const std::string name = s_.word();
    const auto found = names_.tables.find(name);
    if (names_.unread_tables.contains(name)) throw ToldElsewhere();
    if (found == names_.tables.end())
        s_.fail_at(begin,
                   "there is no table '" + shown(name) + "'" + there_are(keys_of(names_.tables), name));
    return Formula::of(found->second, found->second->rows.front().value.dimension());
}

Formula FormulaParser::limit_of() {
    const std::size_t begin = s_.blanks();
    const std::string name = s_.word();
    const auto found = names_.limits.find(name);
    if (found == names_.limits.end())
        s_.fail_at(begin, "no rule above that is called '" + shown(name) + "' has a limit in this class" +
                              there_are(keys_of(names_.limits), name));
    return found->second;
}

Formula FormulaParser::blank() {
    const std::size_t begin = s_.blanks();
    const std::string name = s_.word();
    const auto found = names_.blanks.find(name);
    if (found == names_.blanks.end())
        s_.fail_at(begin,
                   "there is no blank '" + shown(name) + "'" + did_you_mean(name, keys_of(names_.blanks)));
    return Formula::blank(found->second.index, found->second.dimension);
}

const Name *FormulaParser::name() {
    const std::size_t begin = s_.blanks();
    const Name *best = nullptr;
    std::size_t end = begin;
    for (const auto &one : names_.all()) {
        s_.go_to(begin);
        if (!s_.keyword(one.text) || s_.at() <= end) continue;
        end = s_.at();
        best = &one;
    }
    s_.go_to(end);
    return best;
}

/// The longest name that stands here: `larger size` before `larger`.
std::optional<Formula> FormulaParser::named() {
    const std::size_t begin = s_.blanks();
    const Name *quantity = name();
    std::size_t end = s_.at();
    std::optional<Formula> best;
    for (const auto &[key, formula] : names_.formulas) {
        s_.go_to(begin);
        if (!s_.keyword(key) || s_.at() <= end) continue;
        end = s_.at();
        best = formula;
    }
    for (const auto &key : names_.unread_formulas) {
        s_.go_to(begin);
        if (s_.keyword(key) && s_.at() > end) throw ToldElsewhere();
    }
    s_.go_to(end);
    if (best || !quantity) return best;
    if (quantity->kind != Name::Kind::quantity)
        s_.fail_at(begin, "'" + quantity->text + "' is a " +
                              (quantity->kind == Name::Kind::word ? "word" : "day") +
                              "; a number is expected here");
    return Formula::of(quantity->slot, quantity->dimension);
}

void FormulaParser::unknown(std::size_t begin) const {
    std::vector<std::string> known;
    for (const auto &one : names_.all())
        if (asked_at_ == begin || one.kind == Name::Kind::quantity) known.push_back(one.text);
    for (const auto &[key, formula] : names_.formulas) known.push_back(key);
    const std::string word = s_.word_at(begin);
    const std::string other_case = word_among(word, known); // `t` for `T`
    s_.fail_at(begin,
               "found " + s_.found_at(begin) + "; expected a number with its unit" +
                   (known.empty()                 ? ""
                    : known.size() <= most_listed ? ", " + listed(known, "or")
                                                  : " or a name that is known here") +
                   (other_case.empty() ? did_you_mean(word, known) : "; did you mean '" + other_case + "'?"));
}

Formula parse_formula(const std::string &text, const Names &names) {
    Scanner scanner(text, "formula");
    Formula out = FormulaParser(scanner, names).formula();
    scanner.expect_end();
    return out;
}

} // namespace beadbook
