#include "operations/required_exams.hpp"

#include "criteria/weld_words.hpp"
#include "judge/item.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Nothing holds the particles on metal that is not magnetic, so MT is no choice where there is another.
bool is_choice(std::string_view method, bool magnetic, std::size_t choices) {
    const auto exam = exam_named(method);
    return magnetic || choices == 1 || !exam || info(*exam).needs_magnetic.empty();
}

/// The coupon as the judge sees it, as far as the plan says.
Coupon facts_of(const Weld &weld, const std::string &magnetic) {
    Coupon out;
    const auto put = [&](Fact fact, const std::string &word) {
        out.facts[static_cast<std::size_t>(fact)] = word_index(info(fact), word);
    };
    put(Fact::joint, weld.word(Trait::joint));
    put(Fact::form, weld.word(Trait::form));
    put(Fact::magnetic, magnetic);
    put(Fact::process, std::string(process_called(weld.word(Trait::process))));
    put(Fact::position, std::string(position_called(weld.word(Trait::position))));
    for (std::size_t i = word_traits; i < trait_count; ++i)
        if (const auto &size = weld.size(static_cast<Trait>(i)))
            out.values.set(*info(static_cast<Trait>(i)).size, *size);
    return out;
}

/// Whoever does what `asked` asks does what `wanted` wants.
bool fulfils(const AskedExam &asked, const std::vector<std::string> &wanted) {
    return std::all_of(asked.one_of.begin(), asked.one_of.end(), [&](const std::string &one) {
        return std::find(wanted.begin(), wanted.end(), one) != wanted.end();
    });
}

std::optional<std::size_t> strictest_class(const Work &work, const PlannedCoupon &coupon,
                                           const CriteriaSet &set) {
    std::optional<std::size_t> out;
    for (const std::size_t j : coupon.jobs)
        if (const auto index = set.class_index(work.jobs[j].class_id); index && (!out || *index < *out))
            out = index;
    return out;
}

/// The class that a test weld is accepted by: the sought one or the next stricter, else the first that the
/// rules accept; the sought one, if they know none of the set.
std::optional<std::size_t> accepted_class(const RangeRules &rules, const CriteriaSet &set,
                                          std::optional<std::size_t> sought) {
    if (rules.accepted_by.empty()) return sought;
    const auto accepts = [&](std::size_t k) { return rules.accepts(set.name, set.classes[k].id); };
    for (std::size_t k = sought ? *sought + 1 : 0; k-- > 0;)
        if (accepts(k)) return k;
    for (std::size_t k = 0; k < set.classes.size(); ++k)
        if (accepts(k)) return k;
    return sought;
}

/// What the coupon's jobs say of the metal, where they all say it and agree.
struct Metal {
    std::string magnetic; ///< yes, no, or empty
    bool mixed = false, unsaid = false;
};
Metal metal_of(const Work &work, const PlannedCoupon &coupon) {
    Metal out;
    for (const std::size_t j : coupon.jobs) {
        const std::string &said = work.jobs[j].magnetic;
        out.unsaid = out.unsaid || said.empty();
        if (said.empty()) continue;
        out.mixed = out.mixed || (!out.magnetic.empty() && out.magnetic != said);
        out.magnetic = said;
    }
    out.unsaid = out.unsaid && !out.magnetic.empty();
    if (out.mixed || out.unsaid) out.magnetic.clear();
    return out;
}

/// Whether a class cannot be accepted where the rule speaks.
bool keeps_from_accept(const Rule &rule, std::size_t class_index) {
    const Limit::Kind kind = rule.limits[class_index].kind;
    return kind == Limit::Kind::none || kind == Limit::Kind::ask || kind == Limit::Kind::not_said;
}

/// In the class that is sought, or in all. What the plan does not tell of the coupon speaks against nothing;
/// of a tube the seam goes round.
std::vector<NeverAccepted> never_accepted(const CriteriaSet &set, std::optional<std::size_t> sought,
                                          Coupon coupon) {
    const auto put = [&](Fact fact, const char *word) {
        auto &now = coupon.facts[static_cast<std::size_t>(fact)];
        if (now == 0) now = word_index(info(fact), word);
    };
    put(Fact::mechanical, "failed");
    if (coupon.facts[static_cast<std::size_t>(Fact::form)] == word_index(info(Fact::form), "tube") &&
        coupon.values.has(Quantity::outside_diameter) && !coupon.values.has(Quantity::weld_length))
        coupon.values.set(Quantity::weld_length,
                          Exact(circumference({coupon.values[Quantity::outside_diameter]}).nm));
    std::vector<NeverAccepted> out;
    for (const auto &rule : set.rules) {
        if (rule.kind != Rule::Kind::coupon) continue;
        bool everywhere = true;
        for (std::size_t k = 0; k < set.classes.size(); ++k)
            if (!sought || *sought == k) everywhere = everywhere && keeps_from_accept(rule, k);
        Missing ignored;
        if (!everywhere || holds_for(rule.when, coupon, {}, {}, ignored) != Truth::yes) continue;
        out.push_back({rule.title, rule.says, {}, {rule.clause, rule.standings[sought.value_or(0)]}});
        for (const auto &condition : rule.when) out.back().because.push_back(condition.text);
    }
    return out;
}

} // namespace

std::vector<AskedExam> required_exams(const CriteriaSet &set, std::size_t class_index, const Coupon &coupon) {
    std::vector<AskedExam> out;
    const bool magnetic =
        coupon.facts[static_cast<std::size_t>(Fact::magnetic)] != word_index(info(Fact::magnetic), "no");
    for (const auto &required : set.required) {
        Missing lacks;
        const Truth asked = holds_for(required.when, coupon, {}, {}, lacks);
        if (!required.classes[class_index] || asked == Truth::no) continue;
        AskedExam exam{{}, {required.clause, required.standing}, {}, {}, false};
        for (const Exam one : required.one_of)
            if (is_choice(name_of(one), magnetic, required.one_of.size()))
                exam.one_of.emplace_back(name_of(one));
        for (const auto &condition : required.when) exam.because.push_back(condition.text);
        if (asked == Truth::unknown) exam.lacks = names_of(lacks);
        out.push_back(std::move(exam));
    }
    return out;
}

AskedExam called_for(Exam method) {
    AskedExam out;
    out.one_of.emplace_back(name_of(method));
    out.called_for = true;
    return out;
}

PlannedTest examinations_for(const Work &work, const PlannedCoupon &coupon, const CriteriaSet *set) {
    PlannedTest out{coupon};
    const Metal metal = metal_of(work, coupon);
    if (metal.mixed) out.cautions.push_back(ExamCaution::partly_magnetic);
    if (metal.unsaid) out.cautions.push_back(ExamCaution::partly_unsaid);
    const auto asked = set ? strictest_class(work, coupon, *set) : std::nullopt;
    const auto strictest = set ? accepted_class(*work.rules, *set, asked) : std::nullopt;
    if (asked && asked != strictest) out.asked_class = set->classes[*asked].id;
    if (set) out.never_accepted = never_accepted(*set, strictest, facts_of(coupon.test, metal.magnetic));
    if (strictest) {
        out.class_id = set->classes[*strictest].id;
        out.exams = required_exams(*set, *strictest, facts_of(coupon.test, metal.magnetic));
        if (!set->ordered) out.cautions.push_back(ExamCaution::classes_not_ordered);
    }
    const bool magnetic = metal.magnetic != "no";
    for (const auto &exam : work.rules->exams) {
        if (passes(exam.test, coupon.test) == Truth::no) continue;
        std::vector<std::string> one_of = exam.one_of;
        std::erase_if(one_of, [&](const std::string &method) {
            return !is_choice(method, magnetic, exam.one_of.size());
        });
        const bool there = std::any_of(out.exams.begin(), out.exams.end(),
                                       [&](const AskedExam &asked) { return fulfils(asked, one_of); });
        if (!there) out.exams.push_back({std::move(one_of), {exam.clause, exam.standing}, {}, {}, false});
    }
    for (const std::size_t j : coupon.jobs)
        for (const Exam method : work.jobs[j].also) {
            AskedExam one = called_for(method);
            const bool there = std::any_of(out.exams.begin(), out.exams.end(), [&](const AskedExam &asked) {
                return asked.one_of == one.one_of;
            });
            if (!there) out.exams.push_back(std::move(one));
        }
    if (!magnetic) out.cautions.push_back(ExamCaution::not_magnetic);
    if (coupon.test.word(Trait::joint) == "fillet") out.cautions.push_back(ExamCaution::fillet);
    return out;
}

} // namespace beadbook
