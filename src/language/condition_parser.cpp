#include "language/condition_parser.hpp"

#include "language/formula_parser.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

constexpr std::array<std::pair<std::string_view, Compare>, 8> compare_words{{{"over", Compare::over},
                                                                             {"from", Compare::at_least},
                                                                             {"at least", Compare::at_least},
                                                                             {"under", Compare::under},
                                                                             {"below", Compare::under},
                                                                             {"up to", Compare::at_most},
                                                                             {"to", Compare::at_most},
                                                                             {"at most", Compare::at_most}}};

[[noreturn]] void refuse_word(const Scanner &s, std::size_t at, const Name &subject,
                              const std::string &word) {
    if (word.empty() && subject.words.empty()) s.fail_at(at, "found the end; expected a word");
    if (word.empty()) s.fail_at(at, "found the end; expected " + listed(subject.words, "or"));
    s.fail_at(at, "'" + shown(word) + "' is no " + subject.text + "; expected " +
                      listed(subject.words, "or") + did_you_mean(word, subject.words));
}

/// By index in the closed list, for those who keep words so.
std::uint64_t fitting_of(const Name &subject, const Condition &c) {
    std::uint64_t out = 0;
    for (std::size_t i = 0; i < subject.words.size() && i + 1 < 64; ++i)
        if (c.fits(subject.words[i])) out |= std::uint64_t{1} << (i + 1);
    return out;
}

class ConditionParser {
public:
    ConditionParser(const std::string &text, const Names &names, std::string_view what)
        : s_(text, what), formulas_(s_, names) {}

    Condition condition() {
        Condition c;
        const std::size_t begin = s_.blanks();
        const Name *subject = formulas_.name();
        if (subject && subject->kind == Name::Kind::word) {
            if (!s_.keyword("is")) s_.fail_at(s_.blanks(), "expected 'is' and a word");
            read_words(*subject, c);
        } else if (subject && subject->kind == Name::Kind::day) {
            read_day(*subject, c);
        } else {
            s_.go_to(begin);
            c.left = formulas_.formula(true);
            if (c.left.lone_quantity()) c.subject = c.left.text;
            read_edges(c);
        }
        s_.expect_end();
        c.text = s_.since(begin);
        return c;
    }

    Condition condition_on(const Name &subject) {
        Condition c;
        const std::size_t begin = s_.blanks();
        if (subject.kind == Name::Kind::word) {
            read_words(subject, c);
        } else if (subject.kind == Name::Kind::day) {
            read_day(subject, c);
        } else {
            c.left = Formula::of(subject.slot, subject.dimension);
            c.left.text = c.subject = subject.text;
            c.left.symbols = {subject.text};
            read_edges(c);
        }
        s_.expect_end();
        c.text = subject.text + (subject.kind == Name::Kind::word ? " is " : " ") + s_.since(begin);
        return c;
    }

    std::vector<Condition::Edge> range(Dimension dimension) {
        auto out = edges(dimension);
        if (out.empty()) s_.fail("expected a range such as 'from 0.67 x T to 4 x T'");
        s_.expect_end();
        return out;
    }

    std::vector<Table::Edge> band(Dimension dimension) {
        std::vector<Table::Edge> out;
        for (const auto &edge : edges(dimension)) {
            if (!edge.right.is_constant()) s_.fail("the edge of a band must be a plain number");
            out.push_back({edge.compare, edge.right.constant_value()});
        }
        if (out.empty()) s_.fail("expected a band such as 'over 1/8 in to 3/16 in'");
        s_.expect_end();
        return out;
    }

private:
    /// The longest listed word that stands here whole.
    std::optional<std::string> listed_word(const Name &subject) {
        const std::size_t begin = s_.blanks();
        std::optional<std::string> best;
        for (const auto &word : subject.words) {
            s_.go_to(begin);
            if (s_.entry(word) && (!best || word.size() > best->size())) best = word;
        }
        s_.go_to(begin + (best ? best->size() : 0));
        return best;
    }

    std::string value(const Name &subject) {
        const std::size_t begin = s_.blanks();
        if (auto word = listed_word(subject)) return *std::move(word);
        const std::string_view rest = s_.rest();
        const std::string word(trimmed(rest.substr(0, rest.find(" or "))));
        if (word.empty() || !subject.words.empty()) refuse_word(s_, begin, subject, word);
        s_.go_to(begin + word.size());
        return word;
    }

    void read_words(const Name &subject, Condition &c) {
        c.kind = Condition::Kind::word;
        c.slot = subject.slot;
        c.subject = subject.text;
        const std::size_t begin = s_.blanks();
        c.denied = !listed_word(subject) && s_.keyword("not");
        if (!c.denied) s_.go_to(begin);
        do c.words.push_back(value(subject));
        while (s_.keyword("or"));
        c.fitting = fitting_of(subject, c);
    }

    void read_day(const Name &subject, Condition &c) {
        c.slot = subject.slot;
        c.subject = subject.text;
        if (s_.keyword("not past")) {
            c.kind = Condition::Kind::not_past;
            return;
        }
        if (!s_.keyword("within")) s_.fail_at(s_.blanks(), "expected 'not past' or 'within' and a period");
        c.kind = Condition::Kind::within;
        const std::size_t begin = s_.blanks();
        try {
            c.period = parse_period(s_.rest());
        } catch (const InputError &e) {
            s_.fail_at(begin, e.what());
        }
        s_.go_to(s_.at() + s_.rest().size());
    }

    void read_edges(Condition &c) {
        c.edges = edges(c.left.dimension());
        if (c.edges.empty())
            s_.fail("expected a comparison: over, at least, from, under, below, up to, to or at most");
    }

    std::optional<Compare> compare_word() {
        for (const auto &[word, compare] : compare_words)
            if (s_.keyword(word)) return compare;
        return std::nullopt;
    }

    std::vector<Condition::Edge> edges(Dimension dimension) {
        std::vector<Condition::Edge> out;
        while (const auto compare = compare_word()) {
            const std::size_t begin = s_.blanks();
            Formula right = formulas_.formula();
            if (right.dimension() != dimension)
                s_.fail_at(begin, "compares " + std::string(name_of(dimension)) + " with " +
                                      std::string(name_of(right.dimension())) +
                                      (right.dimension() == Dimension::number && right.is_constant()
                                           ? "; a unit is missing"
                                           : ""));
            out.push_back({*compare, std::move(right)});
        }
        return out;
    }

    Scanner s_;
    FormulaParser formulas_;
};

} // namespace

Condition parse_condition(const std::string &text, const Names &names) {
    return ConditionParser(text, names, "condition").condition();
}

Condition parse_condition_on(const Name &subject, const std::string &rest, const Names &names) {
    return ConditionParser(rest, names, "condition").condition_on(subject);
}

Condition condition_of(const Name &subject, const std::vector<std::string> &words) {
    Condition c;
    c.kind = Condition::Kind::word;
    c.slot = subject.slot;
    c.subject = subject.text;
    c.words = words;
    const std::string none;
    const Scanner nowhere(none, "condition");
    for (const auto &word : words)
        if (!subject.words.empty() &&
            std::find(subject.words.begin(), subject.words.end(), word) == subject.words.end())
            refuse_word(nowhere, 0, subject, word);
    c.fitting = fitting_of(subject, c);
    c.text = subject.text + " is " + listed(words, "or");
    return c;
}

std::vector<Condition::Edge> parse_range(const std::string &text, const Names &names, Dimension dimension) {
    return ConditionParser(text, names, "range").range(dimension);
}

std::vector<Table::Edge> parse_band(const std::string &text, const Names &names, Dimension dimension) {
    return ConditionParser(text, names, "band").band(dimension);
}

} // namespace beadbook
