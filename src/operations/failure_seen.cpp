#include "operations/failure_seen.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <map>

namespace beadbook {

std::optional<FailureSeen> failure_seen(const std::vector<Entry> &history, const std::set<int> &exams,
                                        const std::vector<std::string> &methods) {
    std::map<int, FailureSeen> seen; // an entry of 0: nobody said yet what it found
    for (const auto &entry : history) {
        if (entry.kind == "indication" && !is_withdrawal(entry)) {
            const auto at = seen.find(entry.exam.value_or(0));
            if (at != seen.end() && at->second.entry == 0) at->second.entry = entry.seq;
        }
        if (entry.kind != "exam" || is_withdrawal(entry)) continue;
        const ExamRecord exam = codec::exam_from(codec::parsed(entry.body));
        const bool meant =
            exams.empty() ? std::find(methods.begin(), methods.end(), name_of(exam.method)) != methods.end()
                          : exams.contains(exam.number);
        if (!meant) continue;
        FailureSeen &one = seen.emplace(exam.number, FailureSeen{exam.date, 0}).first->second;
        one.day = std::max(one.day, exam.date);
        if (one.entry == 0 && exam.finished) one.entry = entry.seq;
    }
    std::optional<FailureSeen> out;
    for (const auto &[number, one] : seen)
        if (one.entry > 0 && (!out || one.entry < out->entry)) out = one;
    return out;
}

std::int64_t weld_day_told(const std::vector<Entry> &history) {
    const auto found = std::find_if(history.begin(), history.end(), [](const Entry &entry) {
        return entry.kind == "coupon" && !is_withdrawal(entry) &&
               !codec::coupon_from(codec::parsed(entry.body)).get("welded").empty();
    });
    return found == history.end() ? 0 : found->seq;
}

} // namespace beadbook
