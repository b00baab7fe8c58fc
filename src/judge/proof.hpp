#pragma once

#include "criteria/standing_count.hpp"
#include "judge/coupon.hpp"

#include <vector>

namespace beadbook {

struct Judgement;

/// What a proof is made of.
enum class ProofPart : std::uint8_t { none, scope, exam, entry, dimension, agreement, gap };

/// An examination that was asked for, and the one on record that fulfils it.
struct ProvenExam {
    int required = -1;       ///< index of the set's clause that asks; -1: the coupon, or the rule that
                             ///< nothing is accepted unexamined
    bool called_for = false; ///< the drawing or contract asks
    Exam method = Exam::VT;
    int number = 0; ///< of the exam, on its coupon
    friend bool operator==(const ProvenExam &, const ProvenExam &) = default;
};

/// One entry before one rule. A rule over several entries (a sum, a count, a distance) has a row for each,
/// with the numbers of its worst place.
struct ProvenEntry {
    enum class How : std::uint8_t {
        within,       ///< the rule's limit is kept; without numbers: there is nothing that it could be near
        no_limit,     ///< the class permits it
        not_relevant, ///< a relevance clause leaves it out; `rule` is that clause's index
        not_of_it,    ///< the rule's shape or conditions do not speak of it
        silent,       ///< the rule is not for this class, so another one must speak
        alone,        ///< over the limit or not known, and the rule without which this one does not reject
                      ///< is kept
    };
    int entry = 0; ///< number of the indication; 0: the coupon as a whole
    How how = How::within;
    bool sure = false; ///< the rule certainly applies and speaks of it; else it is kept if it does
    bool has_numbers = false;
    int rule = -1;
    Exact measured, limit;
    friend bool operator==(const ProvenEntry &, const ProvenEntry &) = default;
};
/// Judged by that rule, so that its limit stands behind the accept.
inline bool decides(const ProvenEntry &row) {
    return row.how == ProvenEntry::How::within || row.how == ProvenEntry::How::no_limit ||
           row.how == ProvenEntry::How::alone;
}

/// The entry is a measurement of what the rule wants measured: of the right side, if the rule names one.
bool gives(const Indication &entry, const Rule &rule);

/// A dimension that the set wants on record, and the entry that gives it.
struct ProvenDimension {
    int rule = -1;
    int entry = 0;
    friend bool operator==(const ProvenDimension &, const ProvenDimension &) = default;
};

/// Why a class is accepted, part by part, as the judge evaluated it. Numbers and indices only.
struct Proof {
    std::vector<int> scope; ///< parts of the set's scope that are asked of such a coupon and hold, ascending
    std::vector<ProvenExam> exams;
    std::vector<ProvenEntry> entries; ///< by entry, then rule
    std::vector<int> not_applying;    ///< rules whose conditions on the coupon do not hold, ascending
    std::vector<ProvenDimension> measured;
    std::size_t compared = 0; ///< pairs of statements that could contradict each other, and do not
    std::size_t gaps = 0;     ///< known gaps of the set that were looked at, and none bears on it
    friend bool operator==(const Proof &, const Proof &) = default;
};

/// Whose habits a proof is held against, if nothing else is said: the newest.
constexpr int proof_engine = 18;

/// The part that a proof lacks.
struct ProofLack {
    ProofPart part = ProofPart::none;
    int rule = -1;
    int clause = -1; ///< index of the part of the scope or of the required exam
    int entry = 0;
    std::optional<Exam> method;
};

/// Holds a proof against the coupon and the set anew, without the evaluation that made it: the scope covers
/// the coupon, every exam asked
/// has one that counts, every entry stands before every rule that could speak of it and is decided by one
/// of them within its limit, every dimension wanted has its entry, nothing contradicts, every gap was looked
/// at. Nothing if the proof is whole, else the first part that it lacks.
std::optional<ProofLack> lack_in(const Proof &proof, const CriteriaSet &set, std::size_t class_index,
                                 const Coupon &coupon, const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications,
                                 const Vocabulary &vocabulary = Vocabulary::shipped(),
                                 int engine = proof_engine);

/// How sure the clauses are that a proof rests on: scope, rules, relevance, required exams, each once.
StandingCount standings_behind(const Proof &proof, const CriteriaSet &set, std::size_t class_index);

/// Facts of the coupon that the proof rests on: those in the conditions and limits of its clauses. A fact is
/// told by what its absence would be called.
Missing facts_behind(const Proof &proof, const CriteriaSet &set, std::size_t class_index);

} // namespace beadbook
