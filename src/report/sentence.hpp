#pragma once

#include "judge/judgement.hpp"
#include "measure/print.hpp"

#include <string>

namespace beadbook {

/// Everything a report speaks about; all of it outlives the report.
struct Case {
    const CriteriaSet &set;
    const Coupon &coupon;
    const std::vector<ExamDone> &exams;
    const std::vector<Indication> &indications;
    Unit unit = Unit::inch; ///< the one that people typed
    const Vocabulary &vocabulary = Vocabulary::shipped();

    const Indication *find(int number) const;
};

/// One reason as one sentence: which indication, measured what, against which limit, by how much.
std::string sentence(const Case &c, std::size_t class_index, const Finding &finding);

/// Measured and limit as they are printed beside each other: of a lone find, which has no neighbour, the gap
/// to the nearest is "none".
PrintedPair print_against(const Rule &rule, const Exact &measured, const Exact &limit, Unit unit);

/// Clause, edition and standing of what a finding rests on: "Table III (MIL-HDBK-1890), read".
std::string authority(const Case &c, std::size_t class_index, const Finding &finding);

/// "at 2.1 in", "from 2 in to 3.1 in"; on a tube "from 6.2 in over the datum to 0.1 in", too.
std::string print_stretch(const Span &place, const WeldLine &line, Unit unit);
/// The same, and on a tube the clock position of where it begins.
std::string print_place(const Span &place, const WeldLine &line, Unit unit);

/// "#3 gas pore at 2.1 in", "#1 and #2, gas pores".
std::string print_indications(const Case &c, const std::vector<int> &numbers);

} // namespace beadbook
