#pragma once

#include "facts/exam_record.hpp"
#include "facts/indication_record.hpp"
#include "records/ledger.hpp"
#include "technique/exam_check.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// Who acts, and when; given by the program, never asked from a clock here.
struct Stamp {
    std::string at; ///< UTC, 2026-11-25T09:30:00Z
    std::string who;
};

/// A new entry, not yet written. Throws DataError if nobody is named.
Entry new_entry(const std::string &kind, const std::string &subject, const Stamp &stamp, nlohmann::json body);

/// The reason that a correction needs. Throws DataError if there is none.
std::string needed_reason(const std::string &reason);

/// An instructor's decision on a coupon.
struct Grade {
    std::string decision; ///< passed or failed
    std::string class_id;
    std::string remark;
    std::string at, who;
    bool against_verdict = false; ///< the decision differs from the tool's verdict
};

struct Remark {
    std::string text, at, who;
};

/// A verdict as it was stored.
struct StoredVerdict {
    std::int64_t seq = 0;
    std::string at, who;
    nlohmann::json body;
};

/// A coupon as it stands today: everything superseded or withdrawn is left out.
struct CouponState {
    CouponRecord record;
    std::vector<ExamRecord> exams;
    std::vector<IndicationRecord> indications;
    std::vector<Remark> remarks;
    std::vector<StoredVerdict> verdicts; ///< oldest first
    std::optional<Grade> grade;

    const ExamRecord *exam(int number) const;
    const IndicationRecord *indication(int number) const;

    /// For the judge.
    std::vector<ExamDone> exams_done() const;
    std::vector<Indication> found(const Vocabulary &vocabulary = Vocabulary::shipped()) const;

    // Where each standing thing was written, for correcting it.
    std::int64_t record_seq = 0;
    std::map<int, std::int64_t> exam_seq, indication_seq;
    int last_exam = 0, last_indication = 0; ///< numbers used so far, withdrawn ones too
};

/// The record in the trade's words, on top of the ledger. Every writing call must run inside
/// `ledger().transact`; it throws DataError for what cannot be taken.
class Book {
public:
    Book(const std::string &path, Ledger::Mode mode) : ledger_(path, mode) {}

    Ledger &ledger() { return ledger_; }

    /// As it stands, or as it stood before entry `before`.
    CouponState coupon(const std::string &id, std::optional<std::int64_t> before = {});
    std::vector<std::string> coupons() { return ledger_.subjects(Family::coupon); }
    std::vector<Entry> history(const std::string &id);
    /// The practice that an exam names, by its text on record; null if that is missing.
    std::shared_ptr<const Practice> practice_of(const ExamRecord &exam);

    void register_coupon(const CouponRecord &coupon, const Stamp &stamp);
    void change_coupon(const CouponRecord &coupon, const Stamp &stamp, const std::string &reason);
    /// Returns its number: the next free one, or the exam's own if that is higher (imports keep theirs).
    int add_exam(const std::string &coupon, ExamRecord exam, const Stamp &stamp);
    std::vector<int> add_indications(const std::string &coupon, int exam,
                                     std::vector<IndicationRecord> indications, const Stamp &stamp);
    void correct_indication(const std::string &coupon, IndicationRecord indication, const Stamp &stamp,
                            const std::string &reason);
    void correct_exam(const std::string &coupon, ExamRecord exam, const Stamp &stamp,
                      const std::string &reason);
    void withdraw_indication(const std::string &coupon, int number, const Stamp &stamp,
                             const std::string &reason);
    void withdraw_exam(const std::string &coupon, int number, const Stamp &stamp, const std::string &reason);
    void add_remark(const std::string &coupon, const std::string &text, const Stamp &stamp);
    void add_verdict(const std::string &coupon, const CriteriaSet &set, nlohmann::json body,
                     const Stamp &stamp);
    void add_grade(const std::string &coupon, const Grade &grade, const Stamp &stamp);

private:
    /// Holds an exam against its practice, by the text that was kept with it.
    std::string why_invalid(const ExamRecord &exam, const CouponRecord &coupon);
    /// Throws DataError if there is no such coupon.
    void require(const std::string &coupon);

    Ledger ledger_;
    std::map<std::string, std::shared_ptr<const Practice>> practices_; ///< by hash, each read once
};

} // namespace beadbook
