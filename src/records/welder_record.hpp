#pragma once

#include "facts/coupon_record.hpp"
#include "measure/day.hpp"
#include "qualify/validity.hpp"
#include "records/book.hpp"

namespace beadbook {

/// A welder: the mark (stencil) is the name in the record.
struct WelderRecord {
    std::string mark, name, employer, note;

    nlohmann::json to_json() const;
    static WelderRecord from_json(const std::string &mark, const nlohmann::json &json);
    friend bool operator==(const WelderRecord &, const WelderRecord &) = default;
};

/// What a test qualified: from a graded coupon, or carried in with a document.
struct QualificationRecord {
    int number = 0; ///< among the welder's, from 1
    std::string rules, rules_hash, way;
    CouponRecord test;    ///< as welded; its id is the coupon's, or "carried-in"
    std::size_t part = 0; ///< which of the test's processes
    Day welded;
    std::string document;                ///< SHA-256 of the paper that it was carried in with
    std::string override_why;            ///< why a rule was set aside
    std::vector<std::string> overridden; ///< which rules
    nlohmann::json evidence; ///< grade, verdict, criteria and exams of the coupon when it was qualified
    nlohmann::json range;    ///< as it was worked out

    bool carried() const { return !document.empty(); }
    std::string process() const;
    nlohmann::json to_json() const;
    static QualificationRecord from_json(const nlohmann::json &json);
};

/// Anything else that was written about a welder.
struct WelderEvent {
    std::int64_t seq = 0;
    std::string kind; ///< use, training, renewal, extension, revocation
    Day day;
    std::string process;   ///< use, training, renewal
    std::string rules;     ///< renewal: the rule set
    int qualification = 0; ///< extension, revocation: its number
    std::string text;      ///< the work, the training, the evidence or the reason
    std::string at, who;

    nlohmann::json to_json() const;
    static WelderEvent from_entry(const Entry &entry);
};

/// A welder as the record stands today.
struct WelderState {
    WelderRecord record;
    std::int64_t record_seq = 0;
    std::vector<QualificationRecord> qualifications;
    std::map<int, Stamp> granted;      ///< by number: who and when
    std::map<int, std::string> hashes; ///< by number: the entry's hash in the chain
    std::vector<WelderEvent> events;
    int last_number = 0; ///< retracted ones too

    const QualificationRecord *qualification(int number) const;
    /// What bears on one qualification's validity.
    std::vector<QualificationEvent> events_of(const QualificationRecord &qualification) const;
};

/// The welders' part of the record. Writing calls run inside `ledger.transact`.
class Welders {
public:
    explicit Welders(Ledger &ledger) : ledger_(ledger) {}

    std::vector<std::string> marks() { return ledger_.subjects(Family::welder); }
    WelderState welder(const std::string &mark);
    std::vector<Entry> history(const std::string &mark);

    void enrol(const WelderRecord &welder, const Stamp &stamp);
    void change(const WelderRecord &welder, const Stamp &stamp, const std::string &reason);
    int add(const std::string &mark, QualificationRecord qualification, const Stamp &stamp);
    void add(const std::string &mark, const WelderEvent &event, const Stamp &stamp);
    /// Takes one entry of the welder back.
    void retract(const std::string &mark, std::int64_t seq, const Stamp &stamp, const std::string &reason);

private:
    void require(const std::string &mark);
    Ledger &ledger_;
};

} // namespace beadbook
