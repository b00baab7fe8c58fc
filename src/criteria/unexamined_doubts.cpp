// What a set judges, or lets in, and by its own word nobody need look at, or no rule speaks of.
#include "criteria/doubts.hpp"
#include "criteria/remainder.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool looks_inside(Exam exam) { return info(exam).volume; }
bool looks_at_surface(Exam exam) { return info(exam).surface; }
bool sees_shapes(Exam exam) {
    return info(exam).sights[static_cast<std::size_t>(Nature::profile)].grade == Sight::Grade::well;
}
bool looks_by_eye(Exam exam) { return looks_at_surface(exam) && sees_shapes(exam); }
bool looks_by_flux_or_dye(Exam exam) { return looks_at_surface(exam) && !sees_shapes(exam); }

class Unexamined {
public:
    Unexamined(const CriteriaSet &set, Doubts &doubts) : set_(set), doubts_(doubts) {}

    void check() {
        if (doubts_.told("no-exam-required", set_.name)) return;
        check_asked(looks_inside);
        if (!check_asked(looks_at_surface)) {
            check_asked(looks_by_eye);
            check_asked(looks_by_flux_or_dye);
        }
        check_joints();
    }

private:
    /// Limits of what only such methods find, and none of them is asked of any class.
    bool check_asked(bool (*looks)(Exam)) {
        if (std::any_of(set_.required.begin(), set_.required.end(),
                        [&](const RequiredExam &one) {
                            return std::any_of(one.one_of.begin(), one.one_of.end(), looks);
                        }) ||
            told_of_mute_exam())
            return false;
        std::vector<std::string> rules, by;
        for (const auto &rule : set_.rules) {
            const auto exams = exams_of(rule);
            if (!can_reject(rule) || exams.empty() || !std::all_of(exams.begin(), exams.end(), looks))
                continue;
            rules.push_back("'" + rule.id + "'");
            for (const Exam exam : exams)
                if (std::find(by.begin(), by.end(), name_of(exam)) == by.end())
                    by.emplace_back(name_of(exam));
        }
        if (rules.empty()) return false;
        const std::string first =
            rules.size() == 1 ? "rule " + rules[0] + " judges"
                              : std::to_string(rules.size()) + " rules, " + rules[0] + " the first, judge";
        doubts_.tell("exam-not-asked", by.front(), {1, 1}, "required exams." + by.front(),
                     first + " what is found by " + listed(by, "or") +
                         " alone, and no class asks for such an exam: a coupon that nobody examined so is "
                         "accepted; add one, or answer who asks for it");
        return true;
    }
    /// Then the exam that is asked for is the mistake.
    bool told_of_mute_exam() const {
        return std::any_of(set_.required.begin(), set_.required.end(), [&](const RequiredExam &one) {
            return doubts_.told("exam-without-rule", one.id) || doubts_.told("exams-not-alike", one.id);
        });
    }
    static std::vector<Exam> exams_of(const Rule &rule) {
        std::vector<Exam> out;
        for (const Exam exam : all_exams())
            if (rule.subject.exams[static_cast<std::size_t>(exam)]) out.push_back(exam);
        return out;
    }
    static bool is_of_finds(const Rule &rule) {
        return rule.kind != Rule::Kind::combine && rule.kind != Rule::Kind::coupon;
    }
    static bool can_reject(const Rule &rule) {
        return is_of_finds(rule) && std::any_of(rule.limits.begin(), rule.limits.end(), [](const Limit &one) {
                   return one.kind == Limit::Kind::value || one.kind == Limit::Kind::none;
               });
    }

    /// Joints that the set covers, and of which no rule speaks whatever is found: a clean one is accepted.
    /// Bands of thickness are told elsewhere, so all of them count as spoken of.
    void check_joints() {
        const auto never = [&](const Rule &rule) { return doubts_.told("never-together", rule.id); };
        if (std::any_of(set_.rules.begin(), set_.rules.end(), never)) return;
        for (std::size_t c = set_.classes.size(); c-- > 0;) {
            std::vector<std::vector<Condition>> spoken;
            for (const auto &rule : set_.rules)
                if (is_of_finds(rule) && rule.limits[c].kind != Limit::Kind::other)
                    spoken.push_back(of_joint(rule.when));
            for (const auto &gap : set_.gaps)
                if (gap.beside_rules && gap.classes[c]) spoken.push_back(of_joint(gap.when));
            const auto rest = remainder_of(set_, {}, spoken);
            if (rest && !rest->empty())
                return doubts_.tell(
                    "joint-without-rule", set_.name, {1, 1}, "rules",
                    "where " + *rest + ", no rule speaks of anything for class " + set_.classes[c].id +
                        ", so a clean one is accepted and nothing was judged of it; say what is "
                        "allowed there, or leave it out by 'scope'");
        }
    }
    static std::vector<Condition> of_joint(std::vector<Condition> all) {
        std::erase_if(all, [](const Condition &c) {
            return c.kind != Condition::Kind::word || c.slot != static_cast<Slot>(Fact::joint);
        });
        return all;
    }

    const CriteriaSet &set_;
    Doubts &doubts_;
};

} // namespace

void check_unexamined(const CriteriaSet &set, Doubts &doubts) { Unexamined(set, doubts).check(); }

} // namespace beadbook
