#include "operations/office.hpp"

#include "criteria/owners_copy.hpp"
#include "facts/exam_standing.hpp"
#include "operations/exam_means.hpp"
#include "operations/on_record.hpp"
#include "operations/owners_copy.hpp"

namespace beadbook {

CouponState Office::coupon(const std::string &id, std::optional<std::int64_t> before) {
    return coupons_.of(ledger(), {id, before}, [&] {
        CouponState out = book_.coupon(id, before);
        for (auto &exam : out.exams) {
            check_exam_of(out, exam);
            check_means_of(out.record, exam, before);
        }
        return out;
    });
}

std::shared_ptr<const CriteriaSet> Office::criteria_or_none(const std::string &name) {
    try {
        return criteria(name);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return nullptr;
    }
}

std::shared_ptr<const CriteriaSet> Office::with_copy(std::shared_ptr<const CriteriaSet> set) {
    if (!set) return set;
    return with_copy_.of(ledger(), set->hash, [&] {
        if (ledger().last_entry_of(Family::criteria, set->name) == 0) return set;
        return with_owners_copy(set, copy_that_bears(book_.owners_copy(set->name), *set));
    });
}

const std::vector<WelderText> &Office::welders_by_no_mark() {
    return welders_by_no_mark_.of(ledger(), true, [&] {
        std::vector<WelderText> out;
        for (const auto &text : ledger().welders_named())
            if (!book_.knows_welder(text)) out.emplace_back(text);
        return out;
    });
}

void Office::check_exam_of(const CouponState &coupon, ExamRecord &exam) {
    check_practice_of(coupon, exam);
    exam.level_as_typed = !exam.level.empty() && !level_on_record(*this, exam);
    exam.vision_later = vision_entered_later(*this, exam);
    settle_exam(exam, coupon.record, coupon.finds_of(exam.number));
}

void Office::check_means_of(const CouponRecord &coupon, ExamRecord &exam,
                            std::optional<std::int64_t> before) {
    read_equipment_anew(*this, exam, before);
    exam.hangs_on = {};
    if (!exam.open.empty()) return;
    Objection found = objection_to(*this, coupon, exam, before);
    exam.open = std::move(found.why);
    exam.hangs_on = found.hangs_on;
}

void Office::check_practice_of(const CouponState &coupon, ExamRecord &exam, Gaps gaps) {
    exam.invalid.clear();
    if (exam.practice.empty()) return;
    const auto practice = catalogue_.kept_practice(ledger(), exam.practice_hash);
    exam.invalid =
        practice
            ? check_exam(*practice, exam.conditions_told(), exam.date, coupon.record.facts(), gaps).why_not()
            : "the text of practice " + exam.practice + " is not in this record";
}

} // namespace beadbook
