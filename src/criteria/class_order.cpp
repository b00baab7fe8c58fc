#include "criteria/class_order.hpp"

#include "criteria/limit_order.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace beadbook {
namespace {

bool open(const Limit &l) {
    return l.kind == Limit::Kind::ask || l.kind == Limit::Kind::not_said || l.kind == Limit::Kind::other;
}

/// Whether the limit that should be stricter lets more through: none < value < no limit. Not where nobody
/// knows.
bool more_through(const Limit &strict, const Limit &loose, bool upper, const Environment::Values &values) {
    const auto fixed = [](const Limit &l) {
        return l.kind == Limit::Kind::none ? 0 : l.kind == Limit::Kind::free ? 2 : 1;
    };
    if (fixed(strict) != fixed(loose)) return fixed(strict) > fixed(loose);
    if (strict.kind != Limit::Kind::value) return false;
    const Environment env{values, &values};
    const Evaluated a = strict.formula.evaluate(env);
    const Evaluated b = loose.formula.evaluate(env);
    return a.known() && b.known() && (upper ? a.value > b.value : a.value < b.value);
}

/// For limits that multiply quantities, which are tried on samples. Values of one quantity: a spread of
/// plausible ones, and both sides of every number that it is held
/// against.
class Spread {
public:
    Spread(const CriteriaSet &set, const Rule &rule) {
        for (const auto &part : set.scope)
            if (part.only_if.empty()) take(part.when);
        take(rule.when);
        take(rule.where);
    }

    std::vector<Exact> of(Quantity q) const {
        std::vector<Exact> out;
        if (info(q).dimension == Dimension::angle) {
            out = {Exact(30'000'000), Exact(90'000'000), Exact(150'000'000)};
        } else if (info(q).dimension == Dimension::temperature) {
            out = {Exact(20'000'000), Exact(100'000'000), Exact(400'000'000)};
        } else if (info(q).dimension == Dimension::number) {
            out = {Exact(1), Exact(2), Exact(5)};
        } else {
            for (const std::int64_t thousandth : {10, 62, 125, 200, 375, 750, 1500, 4000, 16000}) {
                const Exact length = Exact(thousandth) * Exact(nm_per_inch / 1000);
                out.push_back(info(q).dimension == Dimension::area ? length * length : length);
            }
        }
        if (const auto found = edges_.find(q); found != edges_.end())
            for (const Exact &edge : found->second)
                for (const Exact &value : {edge - Exact(1), edge, edge + Exact(1)})
                    if (value > Exact(0)) out.push_back(value);
        return out;
    }

    bool allows(const Environment::Values &values) const {
        if (values.has(Quantity::thinner) && values.has(Quantity::thicker) &&
            values[Quantity::thinner] > values[Quantity::thicker])
            return false;
        const Environment env{values, &values};
        return std::none_of(conditions_.begin(), conditions_.end(), [&](const Condition *c) {
            Missing missing;
            return c->compare(env, missing) == Truth::no;
        });
    }

private:
    void take(const std::vector<Condition> &conditions) {
        for (const auto &c : conditions) {
            if (c.kind != Condition::Kind::comparison) continue;
            conditions_.push_back(&c);
            const auto slot = c.left.lone_quantity();
            for (const auto &edge : c.edges)
                if (slot && edge.right.is_constant() && edge.right.constant_value().is_whole())
                    edges_[static_cast<Quantity>(*slot)].push_back(edge.right.constant_value());
        }
    }

    std::vector<const Condition *> conditions_;
    std::map<Quantity, std::vector<Exact>> edges_;
};

/// Where a stricter limit lets more through than a looser one.
enum class Wrong { nowhere, only_where_sizes_differ, with_all_alike };

class Comparison {
public:
    Comparison(Spread spread, const Limit &strict, const Limit &loose, bool upper)
        : spread_(std::move(spread)), strict_(strict), loose_(loose), upper_(upper) {
        for (const auto *limit : {&strict, &loose})
            for (const Quantity q : quantities_of(limit->formula))
                if (std::find(all_.begin(), all_.end(), q) == all_.end()) all_.push_back(q);
    }

    Wrong wrong() const {
        std::vector<std::vector<Exact>> values;
        for (const Quantity q : all_) values.push_back(spread_.of(q));
        if (alike(values)) return Wrong::with_all_alike;
        if (all_.size() < 2) return Wrong::nowhere;
        // A limit of many quantities is tried on fewer values of each.
        std::size_t cases = 1;
        for (auto &of : values) {
            while (cases * of.size() > 4000 && of.size() > 2)
                of.erase(of.begin() + static_cast<std::ptrdiff_t>(of.size() / 2));
            cases *= of.size();
        }
        for (std::size_t n = 0; n < cases; ++n) {
            Environment::Values here;
            std::size_t rest = n;
            for (std::size_t k = 0; k < all_.size(); ++k) {
                here.set(all_[k], values[k][rest % values[k].size()]);
                rest /= values[k].size();
            }
            if (more_through_at(here)) return Wrong::only_where_sizes_differ;
        }
        return Wrong::nowhere;
    }

private:
    /// The same value for all quantities of one dimension.
    bool alike(const std::vector<std::vector<Exact>> &values) const {
        if (all_.empty()) return more_through_at({});
        std::size_t most = 0;
        for (const auto &of : values) most = std::max(most, of.size());
        for (std::size_t n = 0; n < most; ++n) {
            std::map<Dimension, Exact> chosen;
            Environment::Values here;
            for (std::size_t k = 0; k < all_.size(); ++k) {
                const auto value =
                    chosen.emplace(info(all_[k]).dimension, values[k][std::min(n, values[k].size() - 1)])
                        .first;
                here.set(all_[k], value->second);
            }
            if (more_through_at(here)) return true;
        }
        return false;
    }
    bool more_through_at(const Environment::Values &here) const {
        return spread_.allows(here) && more_through(strict_, loose_, upper_, here);
    }

    Spread spread_;
    const Limit &strict_, &loose_;
    bool upper_;
    std::vector<Quantity> all_;
};

/// Exactly, over all that the scope and the rule's conditions leave; by samples where that cannot be done.
Wrong order_of(const CriteriaSet &set, const Rule &rule, const Limit &strict, const Limit &loose) {
    if (strict.kind == Limit::Kind::value && loose.kind == Limit::Kind::value) {
        const auto where = conditions_of(set, rule);
        const auto units = units_to_try(set, rule);
        const auto more = lets_more_through(strict, loose, rule.compare, where, units);
        if (more && !*more) return Wrong::nowhere;
        const auto alike = lets_more_through(strict, loose, rule.compare, where, units, true);
        if (alike && *alike) return Wrong::with_all_alike;
        if (more && alike) return Wrong::only_where_sizes_differ;
    }
    return Comparison(Spread(set, rule), strict, loose, is_maximum(rule.compare)).wrong();
}

void check_exams(const CriteriaSet &set, Doubts &doubts) {
    const auto within = [](const RequiredExam &one, const RequiredExam &other) {
        return std::all_of(one.one_of.begin(), one.one_of.end(), [&](Exam exam) {
            return std::find(other.one_of.begin(), other.one_of.end(), exam) != other.one_of.end();
        });
    };
    const auto asked_as_often = [](const RequiredExam &one, const RequiredExam &other) {
        return std::all_of(one.when.begin(), one.when.end(), [&](const Condition &c) {
            return std::any_of(other.when.begin(), other.when.end(),
                               [&](const Condition &own) { return own.text == c.text; });
        });
    };
    for (const auto &exam : set.required)
        for (std::size_t c = 0; c + 1 < set.classes.size(); ++c) {
            if (exam.classes[c] || !exam.classes[c + 1]) continue;
            if (std::any_of(set.required.begin(), set.required.end(), [&](const RequiredExam &other) {
                    return other.classes[c] && within(other, exam) && asked_as_often(other, exam);
                }))
                continue;
            doubts.tell("exam-for-looser-class", exam.id, exam.where_from, "required exams." + exam.id,
                        "class " + set.classes[c + 1].id + " asks for it, and class " + set.classes[c].id +
                            ", which should be stricter, does not, or not as often");
        }
}

/// For each rule that tells classes apart, which lets more through than which other.
using MoreByRule = std::vector<std::vector<std::vector<bool>>>;

MoreByRule more_by_rule(const CriteriaSet &set) {
    MoreByRule out;
    const std::size_t classes = set.classes.size();
    for (const auto &rule : set.rules) {
        std::vector<std::vector<bool>> more(classes, std::vector<bool>(classes));
        bool apart = false;
        for (std::size_t a = 0; a < classes; ++a)
            for (std::size_t b = 0; b < classes; ++b) {
                if (a == b || open(rule.limits[a]) || open(rule.limits[b])) continue;
                more[a][b] = order_of(set, rule, rule.limits[a], rule.limits[b]) == Wrong::with_all_alike;
                apart = apart || more[a][b];
            }
        if (apart) out.push_back(std::move(more));
    }
    return out;
}

/// How many of the rules do not fit an order of the classes.
std::size_t unfit(const MoreByRule &rules, const std::vector<std::size_t> &order) {
    return static_cast<std::size_t>(std::count_if(rules.begin(), rules.end(), [&](const auto &more) {
        for (std::size_t i = 0; i < order.size(); ++i)
            for (std::size_t j = i + 1; j < order.size(); ++j)
                if (more[order[i]][order[j]]) return true;
        return false;
    }));
}

/// What to look at: which of the two would fit beside its neighbours by a decimal point.
std::string slip_by_ten(const Rule &rule, std::size_t strict, std::size_t loose) {
    const bool upper = is_maximum(rule.compare);
    const Limit *before = strict > 0 ? &rule.limits[strict - 1] : nullptr;
    const Limit *after = loose + 1 < rule.limits.size() ? &rule.limits[loose + 1] : nullptr;
    std::vector<std::string> slips;
    for (const auto &[limit, stricter, looser] :
         {std::tuple{strict, before, &rule.limits[loose]}, std::tuple{loose, &rule.limits[strict], after}})
        if (fits_by_ten(rule.limits[limit], stricter, looser, upper))
            slips.push_back("'" + rule.limits[limit].text + "'");
    return slips.empty() ? "; write 'ordered: no' if the standard means it"
                         : "; is the decimal point of " + listed(slips, "or") +
                               " a slip? If the standard means it, write 'ordered: no'";
}

} // namespace

bool tell_turned_order(const CriteriaSet &set, Issues &issues) {
    const auto rules = more_by_rule(set);
    std::vector<std::size_t> written(set.classes.size()), loose(set.classes.size());
    for (const auto &more : rules)
        for (std::size_t c = 0; c < loose.size(); ++c)
            loose[c] += static_cast<std::size_t>(std::count(more[c].begin(), more[c].end(), true));
    for (std::size_t c = 0; c < written.size(); ++c) written[c] = c;
    auto fitting = written;
    std::stable_sort(fitting.begin(), fitting.end(),
                     [&](std::size_t a, std::size_t b) { return loose[a] < loose[b]; });
    const std::size_t against = unfit(rules, written), still = unfit(rules, fitting);
    if (against < 2 || against * 2 <= rules.size() || still * 2 >= against) return false;
    std::vector<std::string> names, moved;
    for (std::size_t c = 0; c < written.size(); ++c) {
        names.push_back(set.classes[fitting[c]].id);
        if (fitting[c] != c) moved.push_back(set.classes[c].id);
    }
    const bool reversed = std::equal(fitting.begin(), fitting.end(), written.rbegin());
    issues.error(set.classes_where, "classes",
                 (reversed            ? "the classes are written from the loosest to the strictest"
                  : moved.size() == 2 ? "classes " + listed(moved) + " are swapped"
                                      : "the classes are not written from the strictest to the loosest") +
                     ", by " + std::to_string(against) + " of the " + counted(rules.size(), "rule") +
                     " that tell them apart; expected the strictest first: [" + joined(names, ", ") + "] " +
                     (still == 0 ? "fits all" : "fits all but " + std::to_string(still)) +
                     "; write 'ordered: no' if the standard means no order");
    return true;
}

void check_order(const CriteriaSet &set, Issues &issues, Doubts &doubts) {
    for (const auto &rule : set.rules)
        for (std::size_t c = 0; c < rule.limits.size(); ++c) {
            if (open(rule.limits[c])) continue;
            for (std::size_t next = c + 1; next < rule.limits.size(); ++next) {
                if (open(rule.limits[next])) continue;
                const Wrong wrong = order_of(set, rule, rule.limits[c], rule.limits[next]);
                const std::string text = "class " + set.classes[c].id + " should be stricter than class " +
                                         set.classes[next].id + ", but its limit lets more through";
                const std::string apart = times_apart(rule.limits[c], rule.limits[next]);
                if (wrong == Wrong::with_all_alike)
                    issues.error(rule.where_from, "rules." + rule.id,
                                 text + (apart.empty() ? slip_by_ten(rule, c, next) : "; the two " + apart));
                if (wrong == Wrong::only_where_sizes_differ && !doubts.told("limit-by-another", rule.id))
                    doubts.tell("class-order", rule.id, rule.where_from, "rules." + rule.id,
                                text + " where its quantities lie far apart");
                // Beyond one that is blank yet the next is asked, which that one says nothing of.
                if (wrong != Wrong::nowhere || !rule.limits[next].formula.has_blanks()) break;
            }
        }
    check_exams(set, doubts);
}

} // namespace beadbook
