#pragma once

#include "criteria/model.hpp"
#include "operations/judging.hpp"
#include "report/document.hpp"

namespace beadbook {

/// That a set is not one of those shipped, and what a shipped one that it could be taken for has and it
/// lacks: a line each. Nothing of a shipped set.
void add_own_file(Document &doc, const CriteriaSet &set);
/// The same of one by which a coupon is judged, with what is looser than shipped: of the class sought, else
/// of each.
void add_own_file(Document &doc, const Judged &judged);

/// "it looks like (or extends) the shipped iso-23277, which says more: of crack (PT: 3 rules, 1 here);
/// without its rules crack and overlap". One sentence a set.
std::vector<std::string> lacking_words(const CriteriaSet &set);

/// What a set that is not shipped lets through of cracks and what is like them, for a class or for any, and
/// no shipped set that it extends answers for: one sentence each.
std::vector<std::string> own_planar_passes(const CriteriaSet &set, std::optional<std::size_t> of_class);

/// What `criteria check` doubts of a set that is not shipped, but for that cracks pass: "depth-not-limited of
/// 'undercut'".
std::vector<std::string> own_doubts(const CriteriaSet &set);
/// Checks that a set which is not shipped hushes by itself, and no shipped set that it extends does:
/// "fillet-under-size of 'fs' (the drawing tells it)". None of a shipped one.
std::vector<std::string> own_answers(const CriteriaSet &set);
/// "class B: 1 limit looser than in the shipped iso-5817: ...", of each class, at any thickness; none of a
/// shipped set.
std::vector<std::string> own_looser(const CriteriaSet &set);
/// The same on a coupon: of the class sought, else of each.
std::vector<std::string> own_looser(const Judged &judged);

/// The practice that an exam was held against, marked where it is not the shipped one: "shop-vt (own file
/// 3f2a9c1b)". Empty if none is named.
std::string practice_told(const ExamRecord &exam);

/// " (own file 3f2a9c1b)", to stand behind a verdict; empty of a shipped one.
Words own_file_behind(const std::string &mark);

} // namespace beadbook
