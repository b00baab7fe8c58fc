#include "records/taken_back.hpp"

#include "facts/log_line.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

const Entry *superseded_by(const Entry &e, const std::vector<Entry> &history) {
    if (!e.supersedes) return nullptr;
    const auto old = std::find_if(history.begin(), history.end(),
                                  [&](const Entry &one) { return one.seq == *e.supersedes; });
    return old == history.end() || is_withdrawal(*old) ? nullptr : &*old;
}

std::string exam_words(const Entry &e) {
    const ExamRecord exam = codec::exam_from(codec::parsed(e.body));
    return std::string(name_of(exam.method)) + " on " + print(exam.date) +
           (exam.examiner.empty() ? "" : " by " + exam.examiner) +
           (exam.finished ? ", finished with " + std::to_string(exam.finished->found) +
                                (exam.finished->found == 1 ? " find" : " finds")
                          : ", not finished");
}

std::vector<int> ever_found_by(int exam, std::int64_t before, const std::vector<Entry> &history) {
    std::set<int> out;
    for (const auto &e : history)
        if (e.seq < before && e.kind == "indication" && e.exam == exam && e.number) out.insert(*e.number);
    return {out.begin(), out.end()};
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

std::vector<TakenBack> taken_back_in(const std::vector<Entry> &history, const CouponRecord &coupon) {
    const WeldLine line = coupon.facts().line;
    const auto read = [&](const Entry &e) -> std::string {
        try {
            return print_log_line(codec::indication_from(codec::parsed(e.body), line, coupon.unit()));
        } catch (const DataError &) {
            return "a find that cannot be read on the weld as it is described now";
        }
    };
    std::vector<TakenBack> out;
    for (const auto &e : history) {
        const Entry *old = e.kind == "indication" || e.kind == "exam" ? superseded_by(e, history) : nullptr;
        if (!old) continue;
        TakenBack one;
        one.why = e.reason;
        one.stamp = stamp_of(e);
        one.entry = e.seq;
        if (e.kind == "exam") {
            one.number = e.exam.value_or(0);
            one.kind = TakenBack::Kind::exam;
            if (is_withdrawal(e))
                one.was = exam_words(*old);
            else
                tell_values(changed_beside_finishing(history, e), one);
            one.finds = ever_found_by(one.number, e.seq, history);
        } else {
            one.number = e.number.value_or(0);
            one.was = read(*old);
            one.now = is_withdrawal(e) ? "" : read(e);
            one.to = moved_to(e);
        }
        if (one.was != one.now) out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
