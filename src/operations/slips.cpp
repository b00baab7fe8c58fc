#include "operations/slips.hpp"

#include "measure/day.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"
#include "records/taken_back.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::chrono::sys_seconds time_of(const std::string &at) { // 2026-11-25T09:30:00Z
    const auto number = [&](std::size_t from) { return std::stoi(at.substr(from, 2)); };
    return parse_day(at.substr(0, 10)) + std::chrono::hours(number(11)) + std::chrono::minutes(number(14)) +
           std::chrono::seconds(number(17));
}

/// Not earlier than any entry before it, whatever its clock said.
std::chrono::sys_seconds time_of(const std::vector<Entry> &history, const Entry &entry) {
    std::string latest = entry.at;
    for (const auto &one : history)
        if (one.seq < entry.seq) latest = std::max(latest, one.at);
    return time_of(latest);
}

bool undone_in_time(const std::vector<Entry> &history, const Entry &entry, bool planar) {
    const auto first = std::find_if(history.begin(), history.end(), [&](const Entry &one) {
        return one.kind == entry.kind &&
               (entry.kind == "exam" ? one.exam == entry.exam : one.number == entry.number);
    });
    return first->who == entry.who &&
           time_of(history, entry) - time_of(history, *first) <= std::chrono::minutes(planar ? 10 : 8 * 60);
}

} // namespace

std::set<std::int64_t> slips_in(const std::vector<Entry> &history, const CouponRecord &coupon) {
    std::set<std::int64_t> planar, out;
    for (const auto &one : taken_back_in(history, coupon))
        if (one.planar) planar.insert(one.entry);
    std::set<int> begun, known; // exams
    for (const auto &entry : history) {
        const bool of_exam = entry.kind == "exam";
        if (entry.kind == "verdict") known = begun;
        if ((!of_exam && entry.kind != "indication") || !entry.exam) continue;
        begun.insert(*entry.exam);
        if (entry.supersedes && !known.contains(*entry.exam) &&
            undone_in_time(history, entry, planar.contains(entry.seq)))
            out.insert(entry.seq);
        if (of_exam && !is_withdrawal(entry) && codec::exam_from(codec::parsed(entry.body)).finished)
            known.insert(*entry.exam);
    }
    return out;
}

} // namespace beadbook
