#pragma once

#include "operations/judging.hpp"
#include "report/document.hpp"
#include "report/sentence.hpp"

#include <map>

namespace beadbook {

/// Adds the proof of an accepted class in a few lines: for what coupon, who examined, what judged the
/// entries, what was wanted and measured, what was compared, and how sure the clauses behind it are.
void add_proof(Document &doc, const Case &c, const Judged &judged, std::size_t class_index);
/// The same with every part: each exam, each entry before each rule, each dimension, each gap.
void add_whole_proof(Document &doc, const Case &c, const Judged &judged, std::size_t class_index);

/// The class whose proof is shown: the one sought if it is accepted; if none is sought, the first that is
/// accepted. Nothing: there is no accept to prove.
std::optional<std::size_t> class_to_prove(const Judged &judged);

/// What logging nothing proves nothing of: parts that the set lacks of what these exams look at, and methods
/// by which nobody examined it, though the set has rules for what they show. Empty if there are none.
std::string not_covered_words(const Judged &judged);
/// The first of these: what the set lacks and an exam that counts could show, each part in its words.
std::vector<std::string> not_in_set(const Judged &judged);
/// Rules that could judge nothing, as they are for exams that nobody made: how many, by the names of these.
std::map<std::string, std::size_t> rules_of_no_exam(const Judged &judged);

/// Exams that count though nothing asked for them: what they found, or that it was nothing, stands behind the
/// accept too.
std::vector<ProvenExam> exams_beside(const Judged &judged, const Proof &proof);
/// Exams on record that prove nothing, each with the reason: nobody may take their silence for a clean weld.
std::vector<std::string> not_counted_words(const Judged &judged);

/// A fact of the coupon that a proof rests on, with its value: "joint", "groove".
std::vector<std::pair<std::string, std::string>> facts_told(const Case &c, Missing facts);

/// "2026-11-20 by A. Field, level II, with 2 finds": who finished an exam, when, entitled how, and which
/// practice its conditions were held against.
std::string exam_told(const ExamRecord &exam);

/// "within", "no limit", "not relevant", "not of it", "silent", "alone".
std::string_view name_of(ProvenEntry::How how);

} // namespace beadbook
