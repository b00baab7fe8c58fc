#include "operations/looser_rules.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Whether most of the ranges that the shipped rules have stand there too, by id and clause.
bool has_most_ranges(const RangeRules &own, const RangeRules &shipped) {
    const auto here = std::count_if(shipped.rules.begin(), shipped.rules.end(), [&](const RangeRule &rule) {
        return std::any_of(own.rules.begin(), own.rules.end(), [&](const RangeRule &one) {
            return one.id == rule.id && one.clause == rule.clause;
        });
    });
    return here * 2 > static_cast<std::ptrdiff_t>(shipped.rules.size());
}

bool is_taken_for(const RangeRules &own, const RangeRules &shipped) {
    return own.name == shipped.name || same_word(own.title, shipped.title) || has_most_ranges(own, shipped);
}

bool is_longer(const Period &period, const Period &than) {
    const auto days = [](const Period &one) { return one.months * 30.4375 + one.days; };
    return days(period) > days(than);
}

bool says_the_same(const RangeRule &one, const RangeRule &other) {
    return one.of == other.of && one.test.text == other.test.text && one.work.text == other.work.text &&
           one.kind == other.kind && one.text == other.text && one.words == other.words && one.by == other.by;
}

bool limits_the_same(const Variable &one, const Variable &other) {
    return one.of == other.of && one.work.text == other.work.text;
}

/// What allows other work, or is asked of other tests: which of both is the wider one nobody works out here.
std::vector<std::string> otherwise(const RangeRules &own, const RangeRules &shipped) {
    std::vector<std::string> out;
    for (const auto &variable : shipped.variables)
        if (std::none_of(own.variables.begin(), own.variables.end(),
                         [&](const Variable &one) { return limits_the_same(one, variable); }))
            out.push_back("what limits " + std::string(info(variable.of).name));
    if (own.quantities != shipped.quantities) out.emplace_back("what the symbols of its ranges stand for");
    for (const auto &rule : own.rules)
        if (std::none_of(shipped.rules.begin(), shipped.rules.end(), [&](const RangeRule &other) {
                return rule.id == other.id && says_the_same(rule, other);
            }))
            out.push_back("range '" + rule.id + "'");
    for (const auto &exam : own.exams)
        for (const auto &other : shipped.exams)
            if (exam.id == other.id && exam.test.text != other.test.text)
                out.push_back("of which tests examination '" + exam.id + "' is asked");
    return out;
}

class RulesBeside {
public:
    RulesBeside(const RangeRules &own, const RangeRules &shipped) : own_(own), shipped_(shipped) {}

    std::vector<std::string> looser() {
        for (const auto &one : shipped_.unread) compare_unread(one);
        compare_ends();
        compare_metals();
        compare_retest("retest", own_.retest.immediate, shipped_.retest.immediate);
        compare_retest("retest after training", own_.retest.after_training, shipped_.retest.after_training);
        if (shipped_.retest.times > 0 &&
            (own_.retest.times == 0 || own_.retest.times > shipped_.retest.times))
            add("a retest at once after " +
                (own_.retest.times == 0 ? "any number of failures" : std::to_string(own_.retest.times)) +
                ", not " + std::to_string(shipped_.retest.times));
        if (shipped_.retest.same_exam && !own_.retest.same_exam && own_.retest.immediate)
            add("a retest need not be examined by the methods that the test failed by");
        if (own_.renewal && !shipped_.renewal) add("a lapsed one is renewed, not tested anew");
        compare_coupons("renewal", own_.renewal, shipped_.renewal);
        for (const auto &exam : shipped_.exams) compare_exam(exam);
        compare_acceptance();
        for (const auto &way : own_.validity) compare_way(way);
        for (const auto &gap : shipped_.gaps)
            if (!is_of_an_unread(gap) &&
                std::find(own_.gaps.begin(), own_.gaps.end(), gap) == own_.gaps.end())
                add("not said that '" + gap + "'");
        for (const auto &range : own_.rules) compare_standing(range);
        return std::move(out_);
    }

private:
    void add(std::string words) { out_.push_back(std::move(words)); }

    void compare_coupons(const std::string &what, const std::optional<CouponsAsked> &own,
                         const std::optional<CouponsAsked> &shipped) {
        if (own && shipped && own->coupons < shipped->coupons)
            add(what + " of " + counted(static_cast<std::size_t>(own->coupons), "coupon") + ", not " +
                std::to_string(shipped->coupons));
    }

    void compare_retest(const std::string &what, const std::optional<CouponsAsked> &own,
                        const std::optional<CouponsAsked> &shipped) {
        if (own && !shipped)
            add(what + " of " + counted(static_cast<std::size_t>(own->coupons), "coupon") +
                ", of which nothing is said there");
        compare_coupons(what, own, shipped);
    }

    /// What no limit was read of stays open there; a limit of one's own is told as a range that is.
    void compare_unread(const UnreadTrait &one) {
        const bool open_here =
            std::any_of(own_.unread.begin(), own_.unread.end(), [&](const UnreadTrait &other) {
                return limits_the_same(one.variable, other.variable);
            });
        const bool limits = std::any_of(own_.variables.begin(), own_.variables.end(),
                                        [&](const Variable &v) { return limits_the_same(v, one.variable); });
        if (!open_here && !limits)
            add(std::string(info(one.variable.of).name) + " limits nothing, where it is not known " +
                one.what());
    }

    void compare_ends() {
        const bool differ = own_.ends.kind != shipped_.ends.kind || own_.ends.place != shipped_.ends.place;
        if (differ && own_.ends.kind != EndComparison::Kind::absolute)
            add("ends of ranges compared " + own_.ends.text + ", not " + shipped_.ends.text);
    }

    void compare_metals() {
        if (shipped_.base_metals.empty()) return;
        if (own_.base_metals.empty()) return add("for any base metal");
        for (const auto &metal : own_.base_metals)
            if (std::find(shipped_.base_metals.begin(), shipped_.base_metals.end(), metal) ==
                shipped_.base_metals.end())
                add("for " + metal + " too");
    }

    bool is_of_an_unread(const std::string &gap) const {
        return std::any_of(shipped_.unread.begin(), shipped_.unread.end(),
                           [&](const UnreadTrait &one) { return one.what() == gap; });
    }

    void compare_standing(const RangeRule &range) {
        const bool read_here_alone =
            range.standing.kind == Standing::Kind::read &&
            std::any_of(shipped_.rules.begin(), shipped_.rules.end(), [&](const RangeRule &other) {
                return other.id == range.id && other.standing.kind != Standing::Kind::read;
            });
        if (read_here_alone) add("range '" + range.id + "' called read, which it is not there");
    }

    void compare_exam(const TestExam &exam) {
        const auto same = std::find_if(own_.exams.begin(), own_.exams.end(),
                                       [&](const TestExam &one) { return one.id == exam.id; });
        if (same == own_.exams.end()) return add("no examination '" + exam.id + "'");
        for (const auto &method : same->one_of)
            if (std::find(exam.one_of.begin(), exam.one_of.end(), method) == exam.one_of.end())
                add("examination '" + exam.id + "' by " + method + " too");
    }

    void compare_acceptance() {
        if (shipped_.accepted_by.empty()) return;
        if (own_.accepted_by.empty()) return add("accepted by any criteria");
        for (const auto &one : own_.accepted_by) {
            const bool known = std::any_of(
                shipped_.accepted_by.begin(), shipped_.accepted_by.end(), [&](const AcceptedBy &other) {
                    return other.criteria == one.criteria &&
                           (other.classes.empty() ||
                            (!one.classes.empty() &&
                             std::all_of(one.classes.begin(), one.classes.end(), [&](const auto &of) {
                                 return std::find(other.classes.begin(), other.classes.end(), of) !=
                                        other.classes.end();
                             })));
                });
            if (!known) add("accepted by " + print(one));
        }
    }

    void compare_period(const std::string &what, const std::optional<Period> &own,
                        const std::optional<Period> &shipped) {
        if (!shipped) return;
        if (!own)
            add(what + " any time, not " + shipped->text);
        else if (is_longer(*own, *shipped))
            add(what + " " + own->text + ", not " + shipped->text);
    }

    void compare_way(const ValidityWay &way) {
        const ValidityWay *other = shipped_.way(way.id);
        if (!other) other = &shipped_.validity.front();
        compare_period("used every", way.use_every, other->use_every);
        compare_period("holds for", way.lasts, other->lasts);
        if (way.kept_by_use && !other->kept_by_use && way.lasts) add("goes on beyond that by use");
        if (!way.same_employer && other->same_employer) add("holds with any employer");
        if (way.extension) compare_extension(*way.extension, other->extension);
    }

    void compare_extension(const ValidityWay::Extension &own,
                           const std::optional<ValidityWay::Extension> &shipped) {
        if (!shipped) return add("may be extended by examined welds");
        if (own.welds < shipped->welds)
            add("extended by " + counted(static_cast<std::size_t>(own.welds), "weld") + ", not " +
                std::to_string(shipped->welds));
        if (is_longer(own.within, shipped->within))
            add("extended by welds of the last " + own.within.text + ", not " + shipped->within.text);
        if (is_longer(own.adds, shipped->adds))
            add("extended by " + own.adds.text + ", not " + shipped->adds.text);
        if (shipped->as_test && !own.as_test) add("extended by welds that are not as the test");
    }

    const RangeRules &own_, &shipped_;
    std::vector<std::string> out_;
};

} // namespace

std::vector<std::string> looser_rules_words(const RangeRules &own) {
    std::vector<std::string> out;
    if (own.own_file_mark().empty()) return out;
    for (const auto &name : shipped_range_rule_names()) {
        const auto shipped = shipped_range_rules(name);
        if (!is_taken_for(own, *shipped)) continue;
        if (const auto looser = RulesBeside(own, *shipped).looser(); !looser.empty())
            out.push_back("looser than the shipped " + name + ": " + joined(looser, "; "));
        if (const auto other = otherwise(own, *shipped); !other.empty())
            out.push_back("otherwise than in the shipped " + name + ": " + joined(other, "; "));
    }
    return out;
}

} // namespace beadbook
