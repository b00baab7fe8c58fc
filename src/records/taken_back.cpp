#include "records/taken_back.hpp"

#include "criteria/planar.hpp"
#include "facts/log_line.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// What a linear indication is nobody has said: it may be a crack.
bool may_be_planar(TypeId id) {
    const ImperfectionType &type = Vocabulary::shipped()[id];
    return is_planar(id) || (type.is_shape_alone() && type.shape == Shape::linear);
}

std::string finished_with(const ExamRecord &exam) {
    if (!exam.finished) return "not finished";
    return "finished with " + std::to_string(exam.finished->found) +
           (exam.finished->found == 1 ? " find" : " finds");
}

std::string exam_words(const ExamRecord &exam) {
    return std::string(name_of(exam.method)) + " on " + print(exam.date) +
           (exam.examiner.empty() ? "" : " by " + exam.examiner) + ", " + finished_with(exam);
}

std::vector<int> ever_found_by(int exam, const std::vector<Entry> &history,
                               std::optional<std::int64_t> before = {}) {
    std::set<int> out;
    for (const auto &e : history)
        if ((!before || e.seq < *before) && e.kind == "indication" && e.exam == exam && e.number)
            out.insert(*e.number);
    return {out.begin(), out.end()};
}

/// An exam that was withdrawn, described otherwise, or opened again.
void tell_exam(const std::vector<Entry> &history, const Entry &old, const Entry &e, TakenBack &one) {
    one.number = e.exam.value_or(0);
    one.kind = TakenBack::Kind::exam;
    one.finds = ever_found_by(one.number, history, e.seq);
    const ExamRecord was = codec::exam_from(codec::parsed(old.body));
    if (was.finished)
        one.never_logged =
            std::max(0, was.finished->found - static_cast<int>(ever_found_by(one.number, history).size()));
    if (is_withdrawal(e)) {
        one.was = exam_words(was);
        return;
    }
    const ExamRecord now = codec::exam_from(codec::parsed(e.body));
    auto values = changed_beside_finishing(history, e);
    // What was set aside when it was finished is told with the exam as it stands.
    if (!was.finished && now.finished)
        std::erase_if(values, [](const ChangedValue &value) { return value.name == "sure"; });
    tell_values(values, one);
    one.opened_again = one.was == one.now && was.finished && !now.finished;
    if (one.opened_again) {
        one.was = finished_with(was);
        one.now = "not finished";
    }
}

} // namespace

void tell_values(const std::vector<ChangedValue> &values, TakenBack &out) {
    const auto add = [](std::string &to, const std::string &name, const std::string &value) {
        to += (to.empty() ? "" : ", ") + name + " " + (value.empty() ? "not said" : value);
    };
    for (const auto &value : values) {
        add(out.was, value.name, value.before);
        add(out.now, value.name, value.now);
    }
}

std::string said_of_weld(const std::string &field, const std::string &said) {
    return (field == "welded" ? "" : "of ") + said;
}

std::vector<TakenBack> taken_back_in(const std::vector<Entry> &history, const CouponRecord &coupon) {
    const WeldLine line = coupon.facts().line;
    const auto read = [&](const Entry &e, bool *planar = nullptr) -> std::string {
        try {
            const IndicationRecord find = codec::indication_from(codec::parsed(e.body), line, coupon.unit());
            if (planar) *planar = may_be_planar(find.type);
            return print_log_line(find);
        } catch (const DataError &) {
            if (planar) *planar = true; // nobody can say that it was not
            return "a find that cannot be read on the weld as it is described now";
        }
    };
    std::vector<TakenBack> out;
    for (const auto &e : history) {
        const Entry *old = e.kind == "indication" || e.kind == "exam" ? superseded_by(e, history) : nullptr;
        if (!old || is_withdrawal(*old)) continue;
        TakenBack one;
        one.why = e.reason;
        one.stamp = stamp_of(e);
        one.entry = e.seq;
        if (e.kind == "exam") {
            tell_exam(history, *old, e, one);
        } else {
            one.number = e.number.value_or(0);
            one.was = read(*old, &one.planar);
            one.now = is_withdrawal(e) ? "" : read(e);
            one.to = moved_to(e);
            if (!one.now.empty() && e.exam != old->exam) {
                one.was = "exam " + std::to_string(old->exam.value_or(0)) + ": " + one.was;
                one.now = "exam " + std::to_string(e.exam.value_or(0)) + ": " + one.now;
            }
        }
        if (one.was != one.now) out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
