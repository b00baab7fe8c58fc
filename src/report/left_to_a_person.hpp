#pragma once

#include "criteria/model.hpp"
#include "judge/judgement.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Behind "the standard": that it leaves this to a person, and what the set says of how it is to be read.
std::string left_to_a_person(const Rule &rule);

/// How a person decides what keeps a class open: no entry and no exam settles it. Nothing where nothing is
/// left to one.
void add_who_decides(Document &doc, const std::string &mark, const std::vector<ClassJudgement> &of);

} // namespace beadbook
