#include "technique/exam_check.hpp"

#include "language/evaluate.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace beadbook {
namespace {

/// Outcome of one condition, and what kept it open.
struct Outcome {
    Truth truth = Truth::unknown;
    std::vector<std::string> lacks;
};

/// The amounts that were recorded or worked out, by slot.
struct Amounts {
    std::array<std::optional<Exact>, Missing::most_quantities> known;
    bool has(Slot slot) const { return known[slot].has_value(); }
    const Exact &operator[](Slot slot) const { return *known[slot]; }
};

class Checker {
public:
    Checker(const std::map<std::string, std::string> &conditions, Day day, const Coupon &coupon) : day_(day) {
        for (const auto &[name, text] : conditions) {
            const ConditionInfo *info = condition_info(name);
            if (!info) continue;
            try {
                put(name, read_condition_value(*info, text));
            } catch (const InputError &e) {
                unread_.emplace(name, e.what()); // written before the words were fixed
            }
        }
        for (const Fact fact : {Fact::joint, Fact::form, Fact::magnetic})
            if (const auto word = coupon.facts[static_cast<std::size_t>(fact)])
                put(std::string(info(fact).name),
                    {ConditionInfo::Kind::word, info(fact).words[word - 1u], {}, {}});
        put_size("thickness", coupon, Quantity::thinner);
        put_size("diameter", coupon, Quantity::outside_diameter);
        derive_unsharpness();
    }

    Outcome test(const Condition &c) const {
        if (c.kind == Condition::Kind::comparison) return compare(c);
        const ConditionValue *value = find(c.subject);
        if (!value) return {Truth::unknown, {lack(c.subject)}};
        if (c.kind == Condition::Kind::word) return {c.fits(value->text) ? Truth::yes : Truth::no, {}};
        return {c.day(value->day, day_), {}};
    }

    /// "60 fc", "500 A", or what it was worked out to.
    std::string recorded(const Condition &c) const {
        const ConditionValue *value = find(c.subject);
        if (value && !value->text.empty()) return value->text;
        const Evaluated worked_out = c.left.evaluate(amounts_);
        return worked_out.known() ? print_figures(worked_out.value, c.left.dimension(), Unit::inch) : "";
    }

    /// What is asked, with the numbers put in: "from 540 A to 660 A".
    std::string asked(const Condition &c) const {
        if (c.kind != Condition::Kind::comparison)
            return std::string(trimmed(std::string_view(c.text).substr(c.subject.size())));
        std::string out;
        for (const auto &edge : c.edges) {
            out += (out.empty() ? "" : " ") + std::string(name_of(edge.compare)) + " " + edge.right.text;
            const Evaluated limit = edge.right.evaluate(amounts_);
            if (!edge.right.quantities().empty() && limit.known())
                out += " = " + print_figures(limit.value, edge.right.dimension(), Unit::inch);
        }
        return out;
    }

    bool derived(const std::string &subject) const { return derived_.contains(subject); }

private:
    void put(const std::string &name, ConditionValue value) {
        if (value.kind == ConditionInfo::Kind::amount)
            amounts_.known[practice_names().find(name)->slot] = value.amount;
        values_[name] = std::move(value);
    }

    void put_size(const char *name, const Coupon &coupon, Quantity q) {
        if (coupon.values.has(q)) put(name, {ConditionInfo::Kind::amount, "", coupon.values[q], {}});
    }

    const ConditionValue *find(const std::string &name) const {
        const auto found = values_.find(name);
        return found == values_.end() ? nullptr : &found->second;
    }

    std::string lack(const std::string &name) const {
        const auto unread = unread_.find(name);
        return unread == unread_.end() ? name : name + " (" + unread->second + ")";
    }

    Outcome compare(const Condition &c) const {
        Missing missing;
        Outcome out{c.compare(amounts_, missing), {}};
        for (Slot slot = 0; slot < Missing::most_quantities; ++slot)
            if (missing.has(Missing::quantity(slot)))
                out.lacks.push_back(lack(practice_names().called(slot)));
        if (missing.has(Missing::exact_number())) out.lacks.emplace_back("numbers that can be computed");
        return out;
    }

    /// Ug = F d / D, all known lengths.
    void derive_unsharpness() {
        const ConditionValue *f = find("focal size"), *big = find("source to object"),
                             *small = find("object to film");
        if (find("unsharpness") || !f || !big || !small || big->amount == Exact(0)) return;
        try {
            put("unsharpness",
                {ConditionInfo::Kind::amount, "", f->amount * small->amount / big->amount, {}});
        } catch (const OutOfRange &) {
            return;
        }
        derived_.insert("unsharpness");
    }

    Day day_;
    std::map<std::string, ConditionValue> values_;
    Amounts amounts_;
    std::map<std::string, std::string> unread_;
    std::set<std::string> derived_;
};

Outcome all_of(const std::vector<Condition> &tests, const Checker &checker) {
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
    out.text = rule.must.subject.empty() ? rule.must.left.text : rule.must.subject;
    if (out.holds == Truth::unknown) {
        add_once(out.lacks, scope.lacks);
        add_once(out.lacks, must.lacks);
        out.text +=
            ": cannot say without " + listed(out.lacks) + "; " + checker.asked(rule.must) + " is asked";
    } else {
        out.text += " " + checker.recorded(rule.must) +
                    (checker.derived(rule.must.subject) ? " (worked out)" : "") + ": " +
                    checker.asked(rule.must) + (out.holds == Truth::yes ? " holds" : " is asked");
    }
    out.text += " [" + authority(rule.clause, rule.standing) + "]";
    if (out.holds != Truth::yes && !rule.repeat.empty()) out.text += "; " + rule.repeat;
    return out;
}

/// The gaps that bear on the exam, or may for all that is known.
void add_gaps(ExamCheck &out, const Practice &practice, const Checker &checker) {
    for (const auto &gap : practice.gaps) {
        const Outcome bears = all_of(gap.when, checker);
        if (!gap.harmless.empty() || bears.truth == Truth::no) continue;
        out.gaps.push_back({gap.what, {}});
        if (bears.truth == Truth::unknown) add_once(out.gaps.back().lacks, bears.lacks);
        out.valid = both(out.valid, Truth::unknown);
    }
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
    if (valid == Truth::no) return "not valid: " + failed;
    std::string bears;
    for (const auto &gap : gaps) {
        add_once(lacks, gap.lacks);
        if (gap.lacks.empty()) bears += (bears.empty() ? "" : "; ") + gap.what;
    }
    std::string out = "cannot be called valid";
    if (!lacks.empty()) out += " without " + listed(lacks);
    if (!bears.empty())
        out += (lacks.empty() ? ": " : ", and: ") + std::string("its practice here does not hold: ") + bears;
    return out;
}

ExamCheck check_exam(const Practice &practice, const std::map<std::string, std::string> &conditions, Day day,
                     const Coupon &coupon, Gaps gaps) {
    const Checker checker(conditions, day, coupon);
    ExamCheck out;
    for (const auto &rule : practice.rules) {
        const Outcome scope = all_of(rule.when, checker);
        if (scope.truth == Truth::no) continue;
        out.findings.push_back(finding_of(rule, scope, checker.test(rule.must), checker));
        const auto &last = out.findings.back();
        if (!last.warning) out.valid = both(out.valid, last.holds);
    }
    if (gaps == Gaps::bear) add_gaps(out, practice, checker);
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
    const auto want_all = [&](const Condition &c) {
        want(c.subject);
        for (const auto &name : c.left.symbols) want(name);
        for (const auto &edge : c.edges)
            for (const auto &name : edge.right.symbols) want(name);
    };
    for (const auto &rule : practice.rules) {
        if (all_of(rule.when, checker).truth == Truth::no) continue;
        for (const auto &c : rule.when) want_all(c);
        want_all(rule.must);
    }
    for (const auto &gap : practice.gaps)
        for (const auto &c : gap.when) want_all(c);
    return out;
}

} // namespace beadbook
