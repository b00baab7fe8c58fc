#pragma once

#include "judge/judgement.hpp"

namespace beadbook {

/// Puts the reasons of a class in their order, each once, and takes its verdict from them: rejects first,
/// then by rule and indication, whatever the order of entry.
void settle_verdict(ClassJudgement &judged);

} // namespace beadbook
