#include "records/book.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

template <class List>
auto *numbered(List &list, int number) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const auto &x) { return x.number == number; });
    return found == list.end() ? nullptr : &*found;
}

nlohmann::json withdrawn(int number) { return {{"number", number}, {"withdrawn", true}}; }

/// Takes one standing entry into the coupon's state.
void take(CouponState &state, const Entry &e, const Vocabulary &vocabulary) {
    if (e.kind == "coupon") {
        state.record = CouponRecord::from_json(e.body);
        state.record_seq = e.seq;
    } else if (e.kind == "exam") {
        state.exams.push_back(ExamRecord::from_json(e.body));
        state.exam_seq[state.exams.back().number] = e.seq;
    } else if (e.kind == "indication") {
        const Coupon facts = state.record.facts();
        state.indications.push_back(
            IndicationRecord::from_json(e.body, facts.line, state.record.unit(), vocabulary));
        state.indication_seq[state.indications.back().number] = e.seq;
    } else if (e.kind == "remark") {
        state.remarks.push_back({e.body.at("text").get<std::string>(), e.at, e.who});
    } else if (e.kind == "verdict") {
        state.verdicts.push_back({e.seq, e.at, e.who, e.body});
    } else if (e.kind == "grade") {
        state.grade = Grade{e.body.at("decision").get<std::string>(),
                            e.body.at("class").get<std::string>(),
                            e.body.value("remark", ""),
                            e.at,
                            e.who,
                            e.body.value("against verdict", false)};
    }
}

} // namespace

std::string needed_reason(const std::string &reason) {
    const std::string text = checked_text(reason, "reason");
    if (text.empty()) throw DataError("a correction needs a reason: --why \"...\"");
    return text;
}

Entry new_entry(const std::string &kind, const std::string &subject, const Stamp &stamp,
                nlohmann::json body) {
    Entry e;
    e.at = stamp.at;
    e.who = checked_text(stamp.who, "name");
    if (e.who.empty()) throw DataError("who does this? give --by NAME or set BEADBOOK_USER");
    e.kind = kind;
    e.subject = subject;
    e.body = std::move(body);
    return e;
}

const ExamRecord *CouponState::exam(int number) const { return numbered(exams, number); }
const IndicationRecord *CouponState::indication(int number) const { return numbered(indications, number); }

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

void Book::require(const std::string &id) {
    if (!ledger_.knows(Family::coupon, id))
        throw DataError("there is no coupon '" + shown(id) + "'" + did_you_mean(id, coupons()));
}

std::vector<Entry> Book::history(const std::string &id) {
    require(id);
    return ledger_.entries_of(Family::coupon, id);
}

CouponState Book::coupon(const std::string &id, std::optional<std::int64_t> before) {
    auto all = history(id);
    if (before) std::erase_if(all, [&](const Entry &e) { return e.seq >= *before; });
    std::set<std::int64_t> superseded;
    for (const auto &e : all)
        if (e.supersedes) superseded.insert(*e.supersedes);
    CouponState state;
    const auto stands = [&](const Entry &e) {
        return !superseded.contains(e.seq) && !e.body.contains("withdrawn");
    };
    try {
        // The coupon first: places on it are read with its length.
        for (const auto &e : all)
            if (e.kind == "coupon" && stands(e)) take(state, e, Vocabulary::shipped());
        for (const auto &e : all) {
            if (e.kind == "exam") state.last_exam = std::max(state.last_exam, e.exam.value_or(0));
            if (e.kind == "indication")
                state.last_indication = std::max(state.last_indication, e.number.value_or(0));
            if (e.kind != "coupon" && stands(e)) take(state, e, Vocabulary::shipped());
        }
    } catch (const std::exception &e) {
        throw StoreError("coupon " + id + ": an entry cannot be read: " + e.what());
    }
    for (auto &exam : state.exams) exam.invalid = why_invalid(exam, state.record);
    const auto by_number = [](const auto &a, const auto &b) { return a.number < b.number; };
    std::sort(state.exams.begin(), state.exams.end(), by_number);
    std::sort(state.indications.begin(), state.indications.end(), by_number);
    return state;
}

std::shared_ptr<const Practice> Book::practice_of(const ExamRecord &exam) {
    const auto [at, fresh] = practices_.emplace(exam.practice_hash, nullptr);
    if (fresh)
        if (const auto text = ledger_.criteria_text(exam.practice_hash))
            at->second = load_practice(*text).practice;
    return at->second;
}

std::string Book::why_invalid(const ExamRecord &exam, const CouponRecord &coupon) {
    if (exam.practice.empty()) return "";
    const auto practice = practice_of(exam);
    if (!practice) return "the text of practice " + exam.practice + " is not in this record";
    return check_exam(*practice, exam.conditions_told(), parse_day(exam.date), coupon.facts()).why_not();
}

void Book::register_coupon(const CouponRecord &record, const Stamp &stamp) {
    check_coupon_id(record.id);
    if (ledger_.knows(Family::coupon, record.id))
        throw DataError("coupon " + record.id + " is registered already; 'change' corrects it");
    ledger_.append(new_entry("coupon", record.id, stamp, record.to_json()));
}

void Book::change_coupon(const CouponRecord &record, const Stamp &stamp, const std::string &reason) {
    const CouponState old = coupon(record.id);
    const Coupon facts = record.facts();
    // What was logged must still lie on the weld as it is now described.
    for (const auto &i : old.indications) {
        try {
            IndicationRecord::from_json(i.to_json(), facts.line, record.unit());
        } catch (const InputError &e) {
            throw DataError("with this change indication #" + std::to_string(i.number) +
                            " would not fit: " + e.what());
        }
    }
    Entry e = new_entry("coupon", record.id, stamp, record.to_json());
    e.supersedes = old.record_seq;
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

namespace {

/// An exam by a shipped practice, from an import say, has its text kept.
void keep_shipped_practice(Ledger &ledger, ExamRecord &exam) {
    if (exam.practice.empty() || (!exam.practice_hash.empty() && ledger.criteria_text(exam.practice_hash)))
        return;
    const auto names = shipped_practice_names();
    if (std::find(names.begin(), names.end(), exam.practice) == names.end()) return;
    const auto practice = shipped_practice(exam.practice);
    if (exam.practice_hash.empty()) exam.practice_hash = practice->hash;
    if (exam.practice_hash == practice->hash)
        ledger.keep_criteria(practice->hash, practice->name, practice->text);
}

} // namespace

int Book::add_exam(const std::string &id, ExamRecord exam, const Stamp &stamp) {
    const CouponState state = coupon(id);
    keep_shipped_practice(ledger_, exam);
    exam.number = std::max(exam.number, state.last_exam + 1);
    Entry e = new_entry("exam", id, stamp, exam.to_json());
    e.exam = exam.number;
    ledger_.append(std::move(e));
    return exam.number;
}

std::vector<int> Book::add_indications(const std::string &id, int exam,
                                       std::vector<IndicationRecord> indications, const Stamp &stamp) {
    const CouponState state = coupon(id);
    if (!state.exam(exam)) throw DataError("coupon " + id + " has no exam " + std::to_string(exam));
    std::vector<int> numbers;
    int next = state.last_indication;
    for (auto &i : indications) {
        i.number = next = std::max(i.number, next + 1);
        i.exam = exam;
        Entry e = new_entry("indication", id, stamp, i.to_json());
        e.exam = exam;
        e.number = i.number;
        ledger_.append(std::move(e));
        numbers.push_back(i.number);
    }
    return numbers;
}

void Book::correct_indication(const std::string &id, IndicationRecord indication, const Stamp &stamp,
                              const std::string &reason) {
    const CouponState state = coupon(id);
    const IndicationRecord *old = state.indication(indication.number);
    if (!old) throw DataError("coupon " + id + " has no indication #" + std::to_string(indication.number));
    indication.exam = old->exam;
    Entry e = new_entry("indication", id, stamp, indication.to_json());
    e.exam = indication.exam;
    e.number = indication.number;
    e.supersedes = state.indication_seq.at(indication.number);
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

void Book::correct_exam(const std::string &id, ExamRecord exam, const Stamp &stamp,
                        const std::string &reason) {
    const CouponState state = coupon(id);
    if (!state.exam(exam.number))
        throw DataError("coupon " + id + " has no exam " + std::to_string(exam.number));
    Entry e = new_entry("exam", id, stamp, exam.to_json());
    e.exam = exam.number;
    e.supersedes = state.exam_seq.at(exam.number);
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

void Book::withdraw_indication(const std::string &id, int number, const Stamp &stamp,
                               const std::string &reason) {
    const CouponState state = coupon(id);
    const IndicationRecord *old = state.indication(number);
    if (!old) throw DataError("coupon " + id + " has no indication #" + std::to_string(number));
    Entry e = new_entry("indication", id, stamp, withdrawn(number));
    e.exam = old->exam;
    e.number = number;
    e.supersedes = state.indication_seq.at(number);
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

void Book::withdraw_exam(const std::string &id, int number, const Stamp &stamp, const std::string &reason) {
    const CouponState state = coupon(id);
    if (!state.exam(number)) throw DataError("coupon " + id + " has no exam " + std::to_string(number));
    for (const auto &i : state.indications)
        if (i.exam == number)
            throw DataError("exam " + std::to_string(number) + " found indication #" +
                            std::to_string(i.number) + "; withdraw its indications first");
    Entry e = new_entry("exam", id, stamp, withdrawn(number));
    e.exam = number;
    e.supersedes = state.exam_seq.at(number);
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

void Book::add_remark(const std::string &id, const std::string &text, const Stamp &stamp) {
    require(id);
    const std::string remark = checked_text(text, "remark");
    if (remark.empty()) throw DataError("the remark is empty");
    ledger_.append(new_entry("remark", id, stamp, {{"text", remark}}));
}

void Book::add_verdict(const std::string &id, const CriteriaSet &set, nlohmann::json body,
                       const Stamp &stamp) {
    require(id);
    ledger_.keep_criteria(set.hash, set.name, set.text);
    ledger_.append(new_entry("verdict", id, stamp, std::move(body)));
}

void Book::add_grade(const std::string &id, const Grade &grade, const Stamp &stamp) {
    require(id);
    nlohmann::json body{{"decision", grade.decision}, {"class", grade.class_id}};
    if (!grade.remark.empty()) body["remark"] = checked_text(grade.remark, "remark");
    if (grade.against_verdict) body["against verdict"] = true;
    ledger_.append(new_entry("grade", id, stamp, std::move(body)));
}

} // namespace beadbook
