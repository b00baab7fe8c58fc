#include "technique/test_parser.hpp"

#include "language/quantity_name.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using TestKind = ConditionTest::Kind;

std::vector<std::string> subject_names() {
    std::vector<std::string> out;
    for (const auto &c : condition_infos()) out.push_back(c.name);
    for (const char *name : {"joint", "form", "magnetic", "thickness", "diameter"}) out.emplace_back(name);
    return out;
}

class Parser {
public:
    explicit Parser(const std::string &text) : text_(text) {
        if (text.size() > 500) throw InputError("longer than 500 characters");
    }

    ConditionTest parse() {
        ConditionTest out;
        out.text = std::string(trimmed(text_));
        const ConditionInfo info = subject(out.subject);
        if (info.kind == ConditionInfo::Kind::word)
            words(info, out);
        else if (info.kind == ConditionInfo::Kind::day)
            day(out);
        else
            band(info.amount, out);
        blanks();
        if (at_ < text_.size()) fail("found '" + shown(text_.substr(at_)) + "' where it should end");
        return out;
    }

private:
    [[noreturn]] void fail(const std::string &what) const { throw InputError(what, at_); }

    void blanks() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    }

    bool keyword(std::string_view word) {
        blanks();
        const std::size_t end = at_ + word.size();
        if (text_.compare(at_, word.size(), word) != 0 || (end < text_.size() && text_[end] != ' '))
            return false;
        at_ = end;
        return true;
    }

    /// The longest name that the rest begins with.
    std::optional<std::string> name() {
        blanks();
        std::string best;
        for (const auto &one : subject_names()) {
            const std::size_t end = at_ + one.size();
            if (text_.compare(at_, one.size(), one) == 0 && (end == text_.size() || text_[end] == ' ') &&
                one.size() > best.size())
                best = one;
        }
        if (best.empty()) return std::nullopt;
        at_ += best.size();
        return best;
    }

    ConditionInfo subject(std::string &out) {
        const std::size_t begin = at_;
        if (const auto found = name()) {
            out = *found;
            return *subject_info(*found);
        }
        at_ = begin;
        blanks();
        const auto all = words_of(std::string_view(text_).substr(at_));
        const std::string word(all.empty() ? "" : all.front());
        fail("'" + shown(word) + "' is no condition" + did_you_mean(word, subject_names()));
    }

    void words(const ConditionInfo &info, ConditionTest &out) {
        if (!keyword("is")) fail("expected 'is' and a word");
        do {
            blanks();
            std::size_t end = text_.find(" or ", at_);
            if (end == std::string::npos) end = text_.size();
            const std::string word(trimmed(std::string_view(text_).substr(at_, end - at_)));
            if (!info.words.empty() &&
                std::find(info.words.begin(), info.words.end(), word) == info.words.end())
                fail("'" + shown(word) + "'; expected " + listed(info.words, "or") +
                     did_you_mean(word, info.words));
            out.words.push_back(word);
            at_ = end;
        } while (keyword("or"));
    }

    void day(ConditionTest &out) {
        if (keyword("not past")) {
            out.kind = TestKind::not_past;
            return;
        }
        if (!keyword("within")) fail("expected 'not past' or 'within' and a period");
        out.kind = TestKind::within;
        blanks();
        out.period = parse_period(std::string_view(text_).substr(at_));
        at_ = text_.size();
    }

    std::optional<Compare> edge_word() {
        return compare_words([&](std::string_view word) { return keyword(word); });
    }

    void band(AmountKind kind, ConditionTest &out) {
        out.kind = TestKind::band;
        while (const auto compare = edge_word()) {
            const std::size_t begin = at_;
            AmountTerm one = term();
            if (one.kind != kind) {
                at_ = begin;
                fail("compares " + std::string(name_of(kind)) + " with " + std::string(name_of(one.kind)));
            }
            out.edges.push_back({*compare, std::move(one)});
        }
        if (out.edges.empty()) fail("expected at least, at most, over, under, from or to, and an amount");
    }

    AmountTerm term() {
        blanks();
        const std::size_t begin = at_;
        AmountTerm out;
        const bool greater = keyword("greater of");
        if (greater || keyword("lesser of")) {
            out.op = greater ? AmountTerm::Op::greatest : AmountTerm::Op::least;
            out.terms.push_back(product());
            if (!keyword("and")) fail("expected 'and' and another amount");
            do {
                out.terms.push_back(product());
                if (out.terms.back().kind != out.terms.front().kind)
                    fail("the amounts are of different kinds");
            } while (keyword("and"));
            out.kind = out.terms.front().kind;
        } else {
            out = product();
        }
        out.text = std::string(trimmed(std::string_view(text_).substr(begin, at_ - begin)));
        return out;
    }

    AmountTerm product() {
        AmountTerm out;
        do {
            const auto [kind, factor] = one_factor();
            if (out.factors.empty() || out.kind == AmountKind::number)
                out.kind = kind;
            else if (kind == AmountKind::number)
                ; // a plain number changes no kind
            else if ((out.kind == AmountKind::current_per_length && kind == AmountKind::length) ||
                     (out.kind == AmountKind::length && kind == AmountKind::current_per_length))
                out.kind = AmountKind::current;
            else
                fail(std::string(name_of(out.kind)) + " times " + std::string(name_of(kind)) +
                     " means nothing here");
            out.factors.push_back(factor);
        } while (keyword("x"));
        return out;
    }

    std::pair<AmountKind, AmountTerm::Factor> one_factor() {
        blanks();
        if (const auto amount = scan_amount(text_, at_)) return {amount->kind, {*amount, ""}};
        const std::size_t begin = at_;
        const auto found = name();
        const auto info = found ? subject_info(*found) : std::nullopt;
        if (!info || info->kind != ConditionInfo::Kind::amount) {
            at_ = begin;
            fail("expected an amount or the name of a condition that is one");
        }
        return {info->amount, {{}, *found}};
    }

    const std::string &text_;
    std::size_t at_ = 0;
};

} // namespace

std::optional<ConditionInfo> subject_info(std::string_view name) {
    if (const ConditionInfo *known = condition_info(name)) return *known;
    ConditionInfo out;
    out.name = std::string(name);
    for (const Fact fact : {Fact::joint, Fact::form, Fact::magnetic})
        if (info(fact).name == name) {
            out.words = info(fact).words;
            return out;
        }
    if (name != "thickness" && name != "diameter") return std::nullopt;
    out.kind = ConditionInfo::Kind::amount;
    out.amount = AmountKind::length;
    return out;
}

ConditionTest parse_condition_test(const std::string &text) { return Parser(text).parse(); }

} // namespace beadbook
