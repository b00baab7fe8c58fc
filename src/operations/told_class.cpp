#include "operations/told_class.hpp"

namespace beadbook {

std::size_t told_class(const Judged &judged) {
    if (judged.sought) return *judged.sought;
    const auto &classes = judged.judgement.classes;
    const Verdict best = judged.verdict();
    std::size_t out = classes.size();
    for (std::size_t k = 0; k < classes.size(); ++k) {
        if (classes[k].verdict != best) continue;
        if (best == Verdict::accept) return k;
        if (out == classes.size() || classes[k].findings.size() <= classes[out].findings.size()) out = k;
    }
    return out;
}

} // namespace beadbook
