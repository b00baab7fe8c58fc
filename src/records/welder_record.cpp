#include "records/welder_record.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

constexpr std::pair<const char *, std::string WelderRecord::*> welder_texts[] = {
    {"name", &WelderRecord::name}, {"employer", &WelderRecord::employer}, {"note", &WelderRecord::note}};

constexpr std::pair<const char *, std::string QualificationRecord::*> qualification_texts[] = {
    {"rules", &QualificationRecord::rules},
    {"rules hash", &QualificationRecord::rules_hash},
    {"way", &QualificationRecord::way},
    {"document", &QualificationRecord::document},
    {"override", &QualificationRecord::override_why}};

constexpr std::pair<const char *, std::string WelderEvent::*> event_texts[] = {
    {"process", &WelderEvent::process}, {"rules", &WelderEvent::rules}, {"text", &WelderEvent::text}};

template <class T, class Table>
void put_texts(nlohmann::json &out, const T &from, const Table &table) {
    for (const auto &[key, member] : table)
        if (!(from.*member).empty()) out[key] = from.*member;
}

template <class T, class Table>
void take_texts(const nlohmann::json &from, T &out, const Table &table) {
    for (const auto &[key, member] : table)
        if (from.contains(key)) out.*member = checked_text(from.at(key).template get<std::string>(), key);
}

} // namespace

nlohmann::json WelderRecord::to_json() const {
    nlohmann::json out = nlohmann::json::object();
    put_texts(out, *this, welder_texts);
    return out;
}

WelderRecord WelderRecord::from_json(const std::string &mark, const nlohmann::json &json) {
    WelderRecord out;
    out.mark = mark;
    take_texts(json, out, welder_texts);
    return out;
}

std::string QualificationRecord::process() const { return welds_of(test).at(part).word(Trait::process); }

nlohmann::json QualificationRecord::to_json() const {
    nlohmann::json out{{"number", number}, {"welded", print(welded)}, {"test", test.to_json()}};
    put_texts(out, *this, qualification_texts);
    if (part > 0) out["part"] = part;
    if (!overridden.empty()) out["overridden"] = overridden;
    if (!evidence.is_null()) out["evidence"] = evidence;
    if (!range.is_null()) out["range"] = range;
    return out;
}

QualificationRecord QualificationRecord::from_json(const nlohmann::json &json) {
    QualificationRecord out;
    out.number = json.at("number").get<int>();
    out.welded = parse_day(json.at("welded").get<std::string>());
    out.test = CouponRecord::from_json(json.at("test"));
    take_texts(json, out, qualification_texts);
    out.part = json.value("part", std::size_t{0});
    out.overridden = json.value("overridden", std::vector<std::string>{});
    out.evidence = json.value("evidence", nlohmann::json());
    out.range = json.value("range", nlohmann::json());
    return out;
}

nlohmann::json WelderEvent::to_json() const {
    nlohmann::json out{{"day", print(day)}};
    put_texts(out, *this, event_texts);
    if (qualification > 0) out["qualification"] = qualification;
    return out;
}

WelderEvent WelderEvent::from_entry(const Entry &e) {
    WelderEvent out;
    out.seq = e.seq;
    out.kind = e.kind;
    out.day = parse_day(e.body.at("day").get<std::string>());
    take_texts(e.body, out, event_texts);
    out.qualification = e.body.value("qualification", 0);
    out.at = e.at;
    out.who = e.who;
    return out;
}

const QualificationRecord *WelderState::qualification(int number) const {
    const auto found = std::find_if(qualifications.begin(), qualifications.end(),
                                    [&](const QualificationRecord &q) { return q.number == number; });
    return found == qualifications.end() ? nullptr : &*found;
}

std::vector<QualificationEvent> WelderState::events_of(const QualificationRecord &q) const {
    using Kind = QualificationEvent::Kind;
    const std::string process = q.process();
    std::vector<QualificationEvent> out;
    for (const auto &e : events) {
        if (e.kind == "use" && e.process == process) out.push_back({Kind::use, e.day});
        if (e.kind == "renewal" && e.process == process && e.rules == q.rules)
            out.push_back({Kind::renewal, e.day});
        if (e.qualification != q.number) continue;
        if (e.kind == "extension") out.push_back({Kind::extension, e.day});
        if (e.kind == "revocation") out.push_back({Kind::revocation, e.day});
    }
    // Welding another accepted test with the process is using it.
    for (const auto &other : qualifications)
        if (other.number != q.number && !other.carried() && other.process() == process)
            out.push_back({Kind::use, other.welded});
    return out;
}

void Welders::require(const std::string &mark) {
    if (!ledger_.knows(Family::welder, mark))
        throw DataError("there is no welder '" + shown(mark) + "'" + did_you_mean(mark, marks()) +
                        "; 'enrol' registers one");
}

std::vector<Entry> Welders::history(const std::string &mark) {
    require(mark);
    return ledger_.entries_of(Family::welder, mark);
}

WelderState Welders::welder(const std::string &mark) {
    const auto all = history(mark);
    std::set<std::int64_t> superseded;
    for (const auto &e : all)
        if (e.supersedes) superseded.insert(*e.supersedes);
    WelderState out;
    try {
        for (const auto &e : all) {
            if (e.number) out.last_number = std::max(out.last_number, *e.number);
            if (superseded.contains(e.seq) || e.body.contains("withdrawn")) continue;
            if (e.kind == "welder") {
                out.record = WelderRecord::from_json(mark, e.body);
                out.record_seq = e.seq;
            } else if (e.kind == "qualification") {
                out.qualifications.push_back(QualificationRecord::from_json(e.body));
                out.granted[out.qualifications.back().number] = {e.at, e.who};
                out.hashes[out.qualifications.back().number] = e.hash;
            } else {
                out.events.push_back(WelderEvent::from_entry(e));
            }
        }
    } catch (const std::exception &e) {
        throw StoreError("welder " + mark + ": an entry cannot be read: " + e.what());
    }
    return out;
}

void Welders::enrol(const WelderRecord &record, const Stamp &stamp) {
    check_coupon_id(record.mark);
    if (ledger_.knows(Family::welder, record.mark))
        throw DataError("welder " + record.mark + " is registered already; give --why to change the entry");
    ledger_.append(new_entry("welder", record.mark, stamp, record.to_json()));
}

void Welders::change(const WelderRecord &record, const Stamp &stamp, const std::string &reason) {
    const WelderState old = welder(record.mark);
    if (old.record == record) throw DataError("this changes nothing");
    Entry e = new_entry("welder", record.mark, stamp, record.to_json());
    e.supersedes = old.record_seq;
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

int Welders::add(const std::string &mark, QualificationRecord q, const Stamp &stamp) {
    q.number = welder(mark).last_number + 1;
    Entry e = new_entry("qualification", mark, stamp, q.to_json());
    e.number = q.number;
    ledger_.append(std::move(e));
    return q.number;
}

void Welders::add(const std::string &mark, const WelderEvent &event, const Stamp &stamp) {
    require(mark);
    ledger_.append(new_entry(event.kind, mark, stamp, event.to_json()));
}

void Welders::retract(const std::string &mark, std::int64_t seq, const Stamp &stamp,
                      const std::string &reason) {
    const auto all = history(mark);
    const auto found = std::find_if(all.begin(), all.end(), [&](const Entry &e) { return e.seq == seq; });
    const bool taken =
        std::any_of(all.begin(), all.end(), [&](const Entry &e) { return e.supersedes == seq; });
    if (found == all.end() || found->kind == "welder" || taken || found->body.contains("withdrawn"))
        throw DataError("entry " + std::to_string(seq) + " is none of welder " + mark +
                        "'s that could be retracted; see 'history --welder " + mark + "'");
    Entry e = new_entry(found->kind, mark, stamp, {{"withdrawn", true}});
    e.number = found->number;
    e.supersedes = seq;
    e.reason = needed_reason(reason);
    ledger_.append(std::move(e));
}

} // namespace beadbook
