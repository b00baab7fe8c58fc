#pragma once

#include "facts/exam_record.hpp"
#include "facts/grade.hpp"
#include "facts/indication_record.hpp"
#include "facts/photo.hpp"
#include "judge/judgement.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// A verdict as it was stored.
struct StoredVerdict {
    std::int64_t seq = 0;
    Stamp stamp;
    int form = 0; ///< 1: with sentences, as older programs stored it; 2: numbers, ids and kinds
    std::string set, edition, hash; ///< of the criteria
    std::string vocabulary;         ///< hash of the vocabulary it was judged by; form 2
    int engine = 0;                 ///< of the evaluator; form 2
    struct Class {
        std::string id, verdict;
    };
    std::vector<Class> classes;
    std::vector<Filling> filled; ///< blanks of the set as they were filled then
    bool own = false;            ///< by the coupon's own criteria, a file of one's own
    /// Whether that is said: older programs did not, nor is it of a shipped set.
    bool own_said = false;
    std::string body; ///< the whole, canonical

    /// The verdict of a class; empty if it was not judged.
    std::string verdict_of(const std::string &class_id) const;
};

/// A find that was filed under an exam and lies elsewhere now.
struct MovedAway {
    int number = 0, exam = 0; ///< as it was
    std::string coupon;       ///< where it is now; empty: on the same coupon
    int to_exam = 0, to_number = 0;
    std::string why;
};

/// Plausibility rules that somebody set aside: for the coupon, an exam or a find.
struct Assurance {
    int exam = 0, number = 0; ///< 0: of the coupon; an exam's has no number
    std::vector<std::string> rules;
};

/// Why something was changed, taken back or said anew, in whoever's words.
struct WhySaid {
    std::string kind;         ///< of the entry: coupon, exam, indication, photo
    int exam = 0, number = 0; ///< 0: of none
    std::string text;
};

/// A coupon as it stands: everything superseded or withdrawn is left out.
struct CouponState {
    CouponRecord record;
    std::vector<ExamRecord> exams;             ///< by number
    std::vector<IndicationRecord> indications; ///< by number
    std::vector<Remark> remarks;
    std::vector<PhotoRecord> photos;     ///< by number; those that were withdrawn too, and say so
    std::vector<StoredVerdict> verdicts; ///< oldest first
    std::optional<Grade> grade;

    const ExamRecord *exam(int number) const;
    const IndicationRecord *indication(int number) const;
    /// Throws DataError if the coupon has none of that number.
    const ExamRecord &needed_exam(int number) const;
    const IndicationRecord &needed_indication(int number) const;

    /// The verdict that its grade was given on: the newest before it. Null: there is none, or no grade.
    const StoredVerdict *graded_on() const;

    /// Its mechanical tests were said to have failed after that entry, and are not said so any more.
    bool bends_failed_once(std::int64_t after = 0) const {
        return mechanical_failed > after && !record.bends_failed();
    }

    /// Exams that nobody has finished, by number.
    std::vector<const ExamRecord *> open_exams() const;
    int finds_of(int exam) const;
    /// The first entry after that one by which the coupon, an exam or a find stands as it does; 0: none.
    std::int64_t first_change_after(std::int64_t entry) const;
    bool changed_after(std::int64_t entry) const { return first_change_after(entry) > 0; }
    /// What was moved away from its exams, to other exams and coupons.
    std::vector<MovedAway> moved_away() const;
    std::vector<Assurance> assurances() const;

    /// For the judge.
    std::vector<ExamDone> exams_done() const;
    std::vector<Indication> found(const Vocabulary &vocabulary = Vocabulary::shipped()) const;

    std::vector<MovedAway> gone; ///< to other coupons
    std::vector<WhySaid> whys;   ///< of all its entries, oldest first
    std::int64_t last_seq = 0;   ///< its newest entry
    Stamp mechanical_said;       ///< who said, and when, what its mechanical tests came to, if they are told
    // Where each standing thing was written, for correcting it.
    std::int64_t record_seq = 0;
    // The newest entry that said so, whatever stands now; 0: none.
    std::int64_t mechanical_failed = 0; ///< that its mechanical tests failed
    std::int64_t sought_changed = 0;    ///< other criteria or another class than before
    std::map<int, std::int64_t> exam_seq, indication_seq, photo_seq;
    std::map<int, int> finds;               ///< by exam: how many indications stand under it
    int last_exam = 0, last_indication = 0; ///< numbers used so far, withdrawn ones too
};

} // namespace beadbook
