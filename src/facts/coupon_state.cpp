#include "facts/coupon_state.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

template <class List>
auto *numbered(List &list, int number) {
    const auto found =
        std::lower_bound(list.begin(), list.end(), number, [](const auto &x, int n) { return x.number < n; });
    return found == list.end() || found->number != number ? nullptr : &*found;
}

} // namespace

std::string StoredVerdict::verdict_of(const std::string &class_id) const {
    for (const auto &c : classes)
        if (c.id == class_id) return c.verdict;
    return "";
}

const ExamRecord *CouponState::exam(int number) const { return numbered(exams, number); }
const IndicationRecord *CouponState::indication(int number) const { return numbered(indications, number); }

const StoredVerdict *CouponState::graded_on() const {
    const StoredVerdict *out = nullptr;
    for (const auto &v : verdicts)
        if (grade && v.seq < grade->seq) out = &v;
    return out;
}

namespace {

/// The first of them, so that a long log makes no long message.
std::string listed_few(std::vector<std::string> items) {
    constexpr std::size_t most = 12;
    if (items.size() <= most) return listed(items);
    const std::string last = items.back();
    items.resize(most);
    return joined(items, ", ") + " ... " + last;
}

} // namespace

const ExamRecord &CouponState::needed_exam(int number) const {
    if (const ExamRecord *found = exam(number)) return *found;
    std::vector<std::string> there;
    for (const auto &one : exams)
        there.push_back(std::to_string(one.number) + " (" + std::string(name_of(one.method)) + ")");
    throw DataError("coupon " + record.id + " has no exam " + std::to_string(number) +
                    (there.empty() ? ", nor any other" : "; it has " + listed_few(there)));
}

const IndicationRecord &CouponState::needed_indication(int number) const {
    if (const IndicationRecord *found = indication(number)) return *found;
    std::vector<std::string> there;
    for (const auto &one : indications) there.push_back("#" + std::to_string(one.number));
    throw DataError("coupon " + record.id + " has no indication #" + std::to_string(number) +
                    (number >= 1 && number <= last_indication ? " any more" : "") +
                    (there.empty() ? ", nor any other" : "; it has " + listed_few(there)));
}

std::vector<const ExamRecord *> CouponState::open_exams() const {
    std::vector<const ExamRecord *> out;
    for (const auto &exam : exams)
        if (!exam.finished) out.push_back(&exam);
    return out;
}

int CouponState::finds_of(int exam) const {
    const auto found = finds.find(exam);
    return found == finds.end() ? 0 : found->second;
}

std::int64_t CouponState::first_change_after(std::int64_t entry) const {
    std::int64_t first = 0;
    const auto look_at = [&](std::int64_t seq) {
        if (seq > entry && (first == 0 || seq < first)) first = seq;
    };
    look_at(record_seq);
    for (const auto &[number, seq] : exam_seq) look_at(seq);
    for (const auto &[number, seq] : indication_seq) look_at(seq);
    return first;
}

std::vector<ExamDone> CouponState::exams_done() const {
    std::vector<ExamDone> out;
    for (const auto &e : exams) out.push_back(e.done());
    return out;
}

std::vector<Indication> CouponState::found(const Vocabulary &vocabulary) const {
    const Coupon facts = record.facts();
    std::vector<Indication> out;
    for (const auto &i : indications)
        if (const ExamRecord *by = exam(i.exam)) out.push_back(i.facts(by->method, facts.line, vocabulary));
    return out;
}

std::vector<MovedAway> CouponState::moved_away() const {
    std::vector<MovedAway> out = gone;
    for (const auto &i : indications)
        if (i.moved_from && i.moved_from->coupon == record.id)
            out.push_back({i.number, i.moved_from->exam, "", i.exam, i.number, i.moved_from->why});
    return out;
}

std::vector<Assurance> CouponState::assurances() const {
    std::vector<Assurance> out;
    if (!record.sure.empty()) out.push_back({0, 0, record.sure});
    for (const auto &e : exams)
        if (!e.sure.empty()) out.push_back({e.number, 0, e.sure});
    for (const auto &i : indications)
        if (!i.sure.empty()) out.push_back({i.exam, i.number, i.sure});
    return out;
}

} // namespace beadbook
