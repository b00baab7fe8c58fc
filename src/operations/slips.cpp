#include "operations/slips.hpp"

#include "measure/day.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

std::chrono::sys_seconds time_of(const std::string &at) { // 2026-11-25T09:30:00Z
    const auto number = [&](std::size_t from) { return std::stoi(at.substr(from, 2)); };
    return parse_day(at.substr(0, 10)) + std::chrono::hours(number(11)) + std::chrono::minutes(number(14)) +
           std::chrono::seconds(number(17));
}

} // namespace

std::set<std::int64_t> slips_in(const std::vector<Entry> &history, const std::vector<TakenBack> &taken_back) {
    struct First {
        std::string who, at;
    };
    std::set<std::int64_t> planar, out;
    for (const auto &one : taken_back)
        if (one.planar) planar.insert(one.entry);
    std::map<std::optional<int>, First> exams, finds; // by number
    std::map<std::optional<int>, int> lies_in;        // the exam of a find, by the number of the find
    std::set<int> known;                              // exams
    std::set<std::optional<int>> known_finds;         // for good, wherever they are moved to
    const auto make_known = [&](int exam) {
        if (!known.insert(exam).second) return;
        for (const auto &[find, in] : lies_in)
            if (in == exam) known_finds.insert(find);
    };
    std::string latest; // no entry is earlier than one before it, whatever its clock said
    for (const auto &entry : history) {
        latest = std::max(latest, entry.at);
        const bool of_exam = entry.kind == "exam";
        if (entry.kind == "verdict")
            for (const auto &[exam, first] : exams) make_known(*exam);
        if ((!of_exam && entry.kind != "indication") || !entry.exam) continue;
        const First &first = (of_exam ? exams : finds)
                                 .try_emplace(of_exam ? entry.exam : entry.number, First{entry.who, latest})
                                 .first->second;
        const auto most = std::chrono::minutes(planar.contains(entry.seq) ? 10 : 8 * 60);
        const bool was_known =
            known.contains(*entry.exam) || (!of_exam && known_finds.contains(entry.number));
        if (entry.supersedes && !was_known && first.who == entry.who &&
            time_of(latest) - time_of(first.at) <= most)
            out.insert(entry.seq);
        if (!of_exam) lies_in[entry.number] = *entry.exam;
        if (was_known && !of_exam) known_finds.insert(entry.number);
        if (of_exam && !is_withdrawal(entry) && codec::exam_from(codec::parsed(entry.body)).finished)
            make_known(*entry.exam);
    }
    return out;
}

} // namespace beadbook
