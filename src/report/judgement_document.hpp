#pragma once

#include "operations/judging.hpp"
#include "report/document.hpp"
#include "report/sentence.hpp"

namespace beadbook {

/// What sentences speak about.
inline Case case_of(const Judged &judged) {
    return {*judged.set, judged.coupon, judged.exams, judged.indications, judged.unit};
}

/// A judgement whose proof is to be shown part by part.
template <class Result>
struct InFull {
    const Result &of;
};

/// All classes with every reason and what it rests on: for the technician and the instructor.
Document document_of(const Judged &judged);
Document document_of(const InFull<Judged> &judged);

/// One page for the welder: accepted or not against the class sought, where on the weld, why in plain words,
/// what usually causes it, what to change, and which classes it does make.
Document document_of(const Explained &explained);
Document document_of(const InFull<Explained> &explained);

/// Where on the weld its finds lie, by the judgement of a class, under that heading; nothing without any
/// find.
void add_where(Document &doc, const Judged &judged, std::size_t class_index, const std::string &heading);

/// "#3 is as it was said, in spite of ...".
std::string words_of(const Assurance &one);
/// What nobody would believe at first sight and somebody said is meant so, a line each.
void add_assurances(Document &doc, const std::vector<Assurance> &sure);

/// The same as a part of a longer document: without the coupon's name, and without the caution.
void add_explained(Document &doc, const Explained &explained);

Document document_of(const Graded &graded);

/// One coupon in a line: every class with its verdict.
Document document_of(const JudgedOrNot &one);

/// What the rule of a finding says to the welder, with its numbers filled in; empty if it says nothing.
std::string plain_words(const Case &c, const Finding &finding);

/// "A: accept  B: reject", and behind it that mechanical tests failed, that its exams have cautions, that the
/// set is none of those shipped, that the coupon is withdrawn.
Words verdicts_in_a_line(const Judged &judged, const std::string &between = "  ");

} // namespace beadbook
