#include "technique/exam_check.hpp"

#include "measure/text.hpp"
#include "technique/test_parser.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Outcome of one test, and what kept it open.
struct Outcome {
    Truth truth = Truth::unknown;
    std::vector<std::string> lacks;
};

class Checker {
public:
    Checker(const std::map<std::string, std::string> &conditions, Day day, const Coupon &coupon) : day_(day) {
        for (const auto &[name, text] : conditions) {
            const ConditionInfo *info = condition_info(name);
            if (!info) continue;
            try {
                values_.emplace(name, read_condition_value(*info, text));
            } catch (const InputError &e) {
                unread_.emplace(name, e.what()); // written before the words were fixed
            }
        }
        for (const Fact fact : {Fact::joint, Fact::form, Fact::magnetic})
            if (const auto word = coupon.facts[static_cast<std::size_t>(fact)])
                values_[std::string(info(fact).name)] = {
                    ConditionInfo::Kind::word, info(fact).words[word - 1u], {}, {}};
        const auto size = [&](const char *name, Quantity q) {
            if (coupon.values.has(q))
                values_[name] = {ConditionInfo::Kind::amount, "", Exact(coupon.values[q]), {}};
        };
        size("thickness", Quantity::thinner);
        size("diameter", Quantity::outside_diameter);
        derive_unsharpness();
    }

    Outcome test(const ConditionTest &t) const {
        const ConditionValue *value = find(t.subject);
        if (!value) return {Truth::unknown, {lack(t.subject)}};
        switch (t.kind) {
        case ConditionTest::Kind::words:
            return {std::find(t.words.begin(), t.words.end(), value->text) != t.words.end() ? Truth::yes
                                                                                            : Truth::no,
                    {}};
        case ConditionTest::Kind::not_past: return {value->day >= day_ ? Truth::yes : Truth::no, {}};
        case ConditionTest::Kind::within:
            return {value->day <= day_ && day_ <= value->day + t.period ? Truth::yes : Truth::no, {}};
        case ConditionTest::Kind::band: break;
        }
        Outcome out{Truth::yes, {}};
        for (const auto &edge : t.edges) {
            const auto limit = amount(edge.term, out.lacks);
            if (!limit)
                out.truth = both(out.truth, Truth::unknown);
            else if (!holds(value->amount, edge.compare, *limit))
                out.truth = Truth::no;
        }
        if (out.truth == Truth::no) out.lacks.clear();
        return out;
    }

    /// "60 fc", "500 A", or what it was worked out to.
    std::string recorded(const std::string &subject) const {
        const ConditionValue *value = find(subject);
        if (!value) return "";
        if (!value->text.empty()) return value->text;
        return print_figures(value->amount, subject_info(subject)->dimension, Unit::inch);
    }

    /// What is asked, with the numbers put in: "from 540 A to 660 A".
    std::string asked(const ConditionTest &t) const {
        std::string text = t.text.substr(t.subject.size());
        if (t.kind != ConditionTest::Kind::band) return std::string(trimmed(text));
        std::string out;
        for (const auto &edge : t.edges) {
            std::vector<std::string> ignored;
            const bool plain = edge.term.op == AmountTerm::Op::product && edge.term.factors.size() == 1 &&
                               edge.term.factors[0].condition.empty();
            const auto limit = plain ? std::nullopt : amount(edge.term, ignored);
            out += (out.empty() ? "" : " ") + std::string(name_of(edge.compare)) + " " + edge.term.text;
            if (limit) out += " = " + print_figures(*limit, edge.term.kind, Unit::inch);
        }
        return out;
    }

    bool derived(const std::string &subject) const { return derived_.contains(subject); }

private:
    const ConditionValue *find(const std::string &name) const {
        const auto found = values_.find(name);
        return found == values_.end() ? nullptr : &found->second;
    }

    std::string lack(const std::string &name) const {
        const auto unread = unread_.find(name);
        return unread == unread_.end() ? name : name + " (" + unread->second + ")";
    }

    std::optional<Exact> amount(const AmountTerm &term, std::vector<std::string> &lacks) const {
        if (term.op != AmountTerm::Op::product) {
            std::optional<Exact> out;
            for (const auto &one : term.terms) {
                const auto value = amount(one, lacks);
                if (!value) return std::nullopt;
                if (!out)
                    out = value;
                else
                    out = term.op == AmountTerm::Op::least ? std::min(*out, *value) : std::max(*out, *value);
            }
            return out;
        }
        Exact product = 1;
        for (const auto &factor : term.factors) {
            if (factor.condition.empty()) {
                product = product * factor.amount.value;
                continue;
            }
            const ConditionValue *value = find(factor.condition);
            if (!value) {
                lacks.push_back(lack(factor.condition));
                return std::nullopt;
            }
            product = product * value->amount;
        }
        return product;
    }

    /// Ug = F d / D, all known lengths.
    void derive_unsharpness() {
        const ConditionValue *f = find("focal size"), *big = find("source to object"),
                             *small = find("object to film");
        if (find("unsharpness") || !f || !big || !small || big->amount == Exact(0)) return;
        values_["unsharpness"] = {
            ConditionInfo::Kind::amount, "", f->amount * small->amount / big->amount, {}};
        derived_.insert("unsharpness");
    }

    Day day_;
    std::map<std::string, ConditionValue> values_;
    std::map<std::string, std::string> unread_;
    std::set<std::string> derived_;
};

Outcome all_of(const std::vector<ConditionTest> &tests, const Checker &checker) {
    Outcome out{Truth::yes, {}};
    for (const auto &t : tests) {
        const Outcome one = checker.test(t);
        out.truth = both(out.truth, one.truth);
        out.lacks.insert(out.lacks.end(), one.lacks.begin(), one.lacks.end());
    }
    return out;
}

void add_once(std::vector<std::string> &list, const std::vector<std::string> &more) {
    for (const auto &one : more)
        if (std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
}

ConditionFinding finding_of(const PracticeRule &rule, const Outcome &scope, const Outcome &must,
                            const Checker &checker) {
    ConditionFinding out{rule.id, must.truth, rule.warning, {}, ""};
    // Where it is not known whether the rule is asked, only its being kept anyway is certain.
    if (scope.truth == Truth::unknown && must.truth == Truth::no) out.holds = Truth::unknown;
    out.text = rule.must.subject;
    if (out.holds == Truth::unknown) {
        add_once(out.lacks, scope.lacks);
        add_once(out.lacks, must.lacks);
        out.text +=
            ": cannot say without " + listed(out.lacks) + "; " + checker.asked(rule.must) + " is asked";
    } else {
        out.text += " " + checker.recorded(rule.must.subject) +
                    (checker.derived(rule.must.subject) ? " (worked out)" : "") + ": " +
                    checker.asked(rule.must) + (out.holds == Truth::yes ? " holds" : " is asked");
    }
    out.text += " [" + authority(rule.clause, rule.standing) + "]";
    if (out.holds != Truth::yes && !rule.repeat.empty()) out.text += "; " + rule.repeat;
    return out;
}

} // namespace

std::string ExamCheck::why_not() const {
    if (valid == Truth::yes) return "";
    std::vector<std::string> lacks;
    std::string failed;
    for (const auto &f : findings) {
        if (f.holds != valid || f.warning) continue;
        add_once(lacks, f.lacks);
        failed += (failed.empty() ? "" : "; ") + f.text;
    }
    return valid == Truth::no ? "not valid: " + failed : "cannot be called valid without " + listed(lacks);
}

ExamCheck check_exam(const Practice &practice, const std::map<std::string, std::string> &conditions, Day day,
                     const Coupon &coupon) {
    const Checker checker(conditions, day, coupon);
    ExamCheck out;
    for (const auto &rule : practice.rules) {
        const Outcome scope = all_of(rule.when, checker);
        if (scope.truth == Truth::no) continue;
        out.findings.push_back(finding_of(rule, scope, checker.test(rule.must), checker));
        const auto &last = out.findings.back();
        if (!last.warning) out.valid = both(out.valid, last.holds);
    }
    std::stable_sort(out.findings.begin(), out.findings.end(),
                     [](const ConditionFinding &a, const ConditionFinding &b) { return a.holds < b.holds; });
    return out;
}

std::vector<std::string> conditions_wanted(const Practice &practice,
                                           const std::map<std::string, std::string> &conditions, Day day,
                                           const Coupon &coupon) {
    const Checker checker(conditions, day, coupon);
    std::vector<std::string> out;
    const auto want = [&](const std::string &subject) {
        if (condition_info(subject) && !conditions.contains(subject) &&
            std::find(out.begin(), out.end(), subject) == out.end())
            out.push_back(subject);
    };
    for (const auto &rule : practice.rules) {
        if (all_of(rule.when, checker).truth == Truth::no) continue;
        for (const auto &t : rule.when) want(t.subject);
        want(rule.must.subject);
        for (const auto &edge : rule.must.edges) {
            const auto &terms = edge.term.terms;
            for (const auto &factor : edge.term.factors) want(factor.condition);
            for (const auto &term : terms)
                for (const auto &factor : term.factors) want(factor.condition);
        }
    }
    return out;
}

} // namespace beadbook
