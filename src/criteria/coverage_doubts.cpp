// Which finds no rule, or no class, speaks of though the set names them; and what passes that never should.
#include "criteria/doubts.hpp"
#include "criteria/planar.hpp"
#include "criteria/remainder.hpp"
#include "criteria/scope_reach.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool meet(const Subject &a, const Subject &b) {
    return (a.types & b.types).any() && (a.exams & b.exams).any();
}

bool without_condition(const Rule &rule) {
    return rule.when.empty() && rule.where.empty() && rule.shape == Shape::unknown;
}

class Coverage {
public:
    Coverage(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {}

    void check() {
        for (std::size_t c = 0; c < set_.classes.size(); ++c) check_class(c);
        for (const auto &one : planar_passes(set_, vocabulary_)) tell_planar(one);
        check_no_exam();
        for (const auto &table : set_.tables)
            if (std::none_of(set_.unused.begin(), set_.unused.end(),
                             [&](const UnusedName &one) { return one.name == table->name; }))
                check_rows(*table);
        for (const auto &one : set_.relevance) {
            check_clause(one.subject, one.id, one.where_from, "relevance." + one.id);
            check_scope(one.ignore, one.id, one.where_from, "relevance." + one.id);
        }
        for (const auto &one : set_.merges)
            check_clause(one.subject, one.id, one.where_from, "merge." + one.id);
        for (const auto &gap : set_.gaps) {
            check_gap(gap);
            check_scope(asked_by(gap), gap.text, gap.where_from, "gaps");
        }
        for (const auto &exam : set_.required) {
            check_exam(exam);
            check_choice(exam);
            check_some_only(exam);
            check_scope(exam.when, exam.id, exam.where_from, "required exams." + exam.id);
        }
    }

private:
    void tell_planar(const PlanarPass &one) {
        const std::string text = one.words(set_, vocabulary_);
        if (one.relevance)
            doubts_.tell("cracks-pass", one.id(), one.relevance->where_from, "relevance." + one.id(),
                         text + "; leave them out by 'except'");
        else
            doubts_.tell("cracks-pass", one.id(), one.rule->where_from, "rules." + one.id(), text);
    }

    /// Finds that other classes have a limit for, and this one only `does not apply`.
    void check_class(std::size_t c) {
        std::vector<std::string> told;
        for (const auto &rule : set_.rules) {
            if (rule.limits[c].kind != Limit::Kind::other || rule.kind == Rule::Kind::combine ||
                rule.kind == Rule::Kind::coupon)
                continue;
            for (std::size_t t = 0; t < vocabulary_.size(); ++t)
                for (std::size_t e = 0; e < exam_count; ++e) {
                    const auto type = static_cast<TypeId>(t);
                    const Exam exam = static_cast<Exam>(e);
                    if (!rule.subject.covers(type, exam) || !rules_of(set_, type, exam, c).empty() ||
                        in_gap(set_, type, exam, c) ||
                        std::find(told.begin(), told.end(), rule.id) != told.end())
                        continue;
                    told.push_back(rule.id);
                    doubts_.tell("class-left-out", rule.id, rule.where_from, "rules." + rule.id,
                                 "it does not apply to class " + set_.classes[c].id +
                                     ", and no other rule speaks of " + vocabulary_[type].name + " by " +
                                     std::string(name_of(exam)) + " there");
                }
        }
    }

    void check_clause(const Subject &subject, const std::string &id, Where where, const std::string &path) {
        if (std::none_of(set_.rules.begin(), set_.rules.end(),
                         [&](const Rule &rule) { return meet(rule.subject, subject); }))
            doubts_.tell("clause-without-rule", id, where, path, "no rule speaks of what it speaks of");
    }

    /// Of rules that is told with what else they never reach.
    void check_scope(const std::vector<Condition> &own, const std::string &of, Where where,
                     const std::string &path) {
        if (hold_outside_scope_only(set_, own))
            doubts_.tell("outside-scope", of, where, path,
                         "'" + conditions_in_words(own) +
                             "' holds of no coupon that the set covers, by its 'scope'");
    }
    static std::string conditions_in_words(const std::vector<Condition> &conditions) {
        std::vector<std::string> out;
        for (const auto &c : conditions) out.push_back(c.text);
        return listed(out, "and");
    }

    /// Rows that no coupon meets: a unit, or a number, that was mistaken.
    void check_rows(const Table &table) {
        for (const auto &row : table.rows) {
            Condition band;
            band.left = table.by;
            for (const auto &edge : row.band)
                band.edges.push_back({edge.compare, Formula::constant(edge.value, table.by.dimension())});
            if (!band.edges.empty() && hold_outside_scope_only(set_, {band}))
                return doubts_.tell("outside-scope", table.name, table.where, "tables." + table.name,
                                    "row '" + row.text +
                                        "' holds of no coupon that the set covers, by its 'scope': are the "
                                        "number and its unit right?");
        }
    }

    /// A gap without a condition is heard only where no rule speaks.
    void check_gap(const Gap &gap) {
        if (!gap.subject || gap.beside_rules) return;
        for (std::size_t e = 0; e < exam_count; ++e)
            for (std::size_t t = 0; t < vocabulary_.size(); ++t)
                if (gap.subject->covers(static_cast<TypeId>(t), static_cast<Exam>(e)) &&
                    !covered(static_cast<TypeId>(t), static_cast<Exam>(e)))
                    return;
        doubts_.tell("gap-on-covered-type", gap.text, gap.where_from, "gaps",
                     "'" + gap.text +
                         "': rules speak of all that it names, so it keeps nothing open; with "
                         "'classes', 'where' or 'when' it does");
    }
    bool covered(TypeId type, Exam exam) const {
        const auto &rules = set_.rules_for(type, exam);
        return std::any_of(rules.begin(), rules.end(), [&](const auto index) {
            const Rule &rule = set_.rules[index];
            return without_condition(rule) &&
                   std::none_of(rule.limits.begin(), rule.limits.end(),
                                [](const Limit &l) { return l.kind == Limit::Kind::other; });
        });
    }

    void check_no_exam() {
        if (set_.required.empty() && !set_.rules.empty())
            return doubts_.tell("no-exam-required", set_.name, {1, 1}, "required exams",
                                "no exam is required, so any one that was done is enough to accept");
        // Of the loosest class first: where only a stricter one is without, that is told of the classes'
        // order.
        std::vector<std::string> classes;
        std::string where;
        for (std::size_t c = set_.classes.size(); c-- > 0;) {
            std::vector<std::vector<Condition>> asked;
            for (const auto &one : set_.required)
                if (one.classes[c]) asked.push_back(one.when);
            const auto rest = remainder_of(set_, {}, asked);
            if (!rest && set_.ordered && classes.empty()) return;
            if (!rest || (!classes.empty() && *rest != where)) continue;
            where = *rest;
            classes.insert(classes.begin(), set_.classes[c].id);
        }
        if (!classes.empty())
            doubts_.tell("no-exam-required", set_.name, {1, 1}, "required exams",
                         "no exam is required for class" + std::string(classes.size() > 1 ? "es " : " ") +
                             listed(classes, "and") + (where.empty() ? "" : " where " + where) +
                             ", so any one that was done is enough to accept");
    }
    /// One method or another, and they do not see the same.
    void check_choice(const RequiredExam &one) {
        const auto looks = [](Exam exam) {
            const Method &of = info(exam);
            return std::pair(of.volume, of.surface && sees_profile(exam));
        };
        for (const Exam exam : one.one_of) {
            if (looks(exam) == looks(one.one_of.front())) continue;
            const std::string a(name_of(one.one_of.front())), b(name_of(exam));
            return doubts_.tell("exams-not-alike", one.id, one.where_from, "required exams." + one.id,
                                "by " + a + " alone it is met, and by " + b +
                                    " alone too, though the two do not see the same");
        }
    }
    /// Of some metals, thicknesses, forms, positions or processes, or by eye of some joints, and nothing
    /// that shows the same of the others. Films are for grooves: of all else than those they are asked by a
    /// slip.
    void check_some_only(const RequiredExam &one) {
        std::vector<Condition> some, beside;
        const bool by_film =
            std::all_of(one.one_of.begin(), one.one_of.end(), [](Exam exam) { return info(exam).volume; });
        const auto groove = std::uint64_t{1} << word_index(info(Fact::joint), "groove");
        const bool by_eye = std::all_of(one.one_of.begin(), one.one_of.end(), sees_profile);
        for (const auto &c : one.when) {
            const bool of_joint = c.kind == Condition::Kind::word && c.slot == static_cast<Slot>(Fact::joint);
            const bool of_some_joints = of_joint && (by_eye || (by_film && (c.fitting & groove) == 0));
            (leaves_some_out(c) || of_some_joints ? some : beside).push_back(c);
        }
        const auto told_of_order = [&](const RequiredExam &exam) {
            return doubts_.told("exam-for-looser-class", exam.id);
        };
        if (some.empty() || doubts_.told("no-exam-required", set_.name) ||
            std::any_of(set_.required.begin(), set_.required.end(), told_of_order))
            return;
        std::vector<std::pair<std::string, std::vector<std::string>>> not_asked; // where, of which classes
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            if (!one.classes[c]) continue;
            std::vector<std::vector<Condition>> asked{some};
            for (const auto &other : set_.required)
                if (&other != &one && other.classes[c] && shows_as_much(other, one))
                    asked.push_back(other.when);
            const auto rest = remainder_of(set_, beside, asked);
            if (!rest) continue;
            const auto alike = std::find_if(not_asked.begin(), not_asked.end(),
                                            [&](const auto &at) { return at.first == *rest; });
            auto &classes =
                alike == not_asked.end() ? not_asked.emplace_back(*rest, std::vector<std::string>{}) : *alike;
            classes.second.push_back(set_.classes[c].id);
        }
        if (not_asked.empty()) return;
        std::vector<std::string> names, of;
        for (const Exam exam : one.one_of) names.emplace_back(name_of(exam));
        for (const auto &[where, classes] : not_asked)
            of.push_back((classes.size() == 1 ? "class " : "classes ") + listed(classes) + " where " + where);
        doubts_.tell("exam-of-some-only", one.id, one.where_from, "required exams." + one.id,
                     "by " + listed(names, "or") + " it asks only where '" + conditions_in_words(some) +
                         "', and nothing that shows the same is asked of " + joined(of, ", nor of ") +
                         ": add an exam for those, or answer why they need none");
    }
    /// What the coupon is, and not what it is for.
    static bool leaves_some_out(const Condition &c) {
        if (c.kind == Condition::Kind::word) {
            constexpr std::array facts{Fact::material, Fact::magnetic, Fact::form,     Fact::seam,
                                       Fact::process,  Fact::position, Fact::operation};
            return std::any_of(facts.begin(), facts.end(),
                               [&](Fact fact) { return c.slot == static_cast<Slot>(fact); });
        }
        return is_one_of(c.left.lone_quantity(),
                         {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness});
    }
    static bool sees_profile(Exam exam) {
        return info(exam).sights[static_cast<std::size_t>(Nature::profile)].grade == Sight::Grade::well;
    }
    /// Whichever of its methods is used looks at what one of the other's does, and shows cracks and shapes as
    /// well.
    static bool shows_as_much(const RequiredExam &exam, const RequiredExam &other) {
        static constexpr auto crack = static_cast<std::size_t>(Nature::crack);
        return std::all_of(exam.one_of.begin(), exam.one_of.end(), [&](Exam a) {
            return std::any_of(other.one_of.begin(), other.one_of.end(), [&](Exam b) {
                return info(a).volume == info(b).volume && info(a).surface == info(b).surface &&
                       info(a).sights[crack].grade >= info(b).sights[crack].grade &&
                       sees_profile(a) >= sees_profile(b);
            });
        });
    }
    void check_exam(const RequiredExam &one) {
        std::vector<std::string> mute;
        for (const Exam exam : one.one_of) {
            const auto e = static_cast<std::size_t>(exam);
            if (std::none_of(set_.rules.begin(), set_.rules.end(),
                             [&](const Rule &rule) { return rule.subject.exams[e]; }) &&
                std::none_of(set_.gaps.begin(), set_.gaps.end(),
                             [&](const Gap &gap) { return !gap.subject || gap.subject->exams[e]; }))
                mute.emplace_back(name_of(exam));
        }
        if (!mute.empty())
            doubts_.tell("exam-without-rule", one.id, one.where_from, "required exams." + one.id,
                         "by " + listed(mute) + " it may be met, and no rule judges what that finds");
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
};

/// Ids that two clauses share, or one that says what another says.
template <class Parts, class Same>
void check_twice(const Parts &parts, const std::string &key, Same same, Doubts &doubts) {
    for (std::size_t b = 1; b < parts.size(); ++b)
        for (std::size_t a = 0; a < b; ++a)
            if (same(parts[a], parts[b])) {
                doubts.tell("duplicate-clause", parts[b].id, parts[b].where_from, key + "." + parts[b].id,
                            "it says what '" + parts[a].id + "' says");
                break;
            }
}

std::string texts(const std::vector<Condition> &conditions) {
    std::string out;
    for (const auto &c : conditions) out += c.text + ";";
    return out;
}

} // namespace

void check_coverage(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    Coverage(set, vocabulary, doubts).check();
    const auto subject = [](const Subject &a, const Subject &b) {
        return a.types == b.types && a.exams == b.exams;
    };
    check_twice(
        set.relevance, "relevance",
        [&](const Relevance &a, const Relevance &b) {
            return subject(a.subject, b.subject) && a.text == b.text && a.classes == b.classes;
        },
        doubts);
    check_twice(
        set.merges, "merge",
        [&](const Merge &a, const Merge &b) {
            return subject(a.subject, b.subject) && a.when.text == b.when.text;
        },
        doubts);
    check_twice(
        set.required, "required exams",
        [&](const RequiredExam &a, const RequiredExam &b) {
            return a.one_of == b.one_of && a.classes == b.classes && texts(a.when) == texts(b.when);
        },
        doubts);
}

} // namespace beadbook
