#include "report/reasons_once.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Reasons shown of one class; the rest is counted.
constexpr std::size_t most_reasons = 40;

std::string said_above(std::size_t reasons) {
    return counted(reasons, "reason that was said above", "reasons that were said above");
}

} // namespace

std::string tags_of(const std::set<int> &numbers) {
    std::vector<std::string> out;
    for (const int n : numbers) out.push_back("#" + std::to_string(n));
    return listed(out);
}

ReasonsOnce::ReasonsOnce(const Case &c, const Judged &judged) {
    const auto &classes = judged.judgement.classes;
    of_class_.resize(classes.size());
    for (std::size_t k = 0; k < classes.size(); ++k)
        for (std::size_t f = 0; f < std::min(classes[k].findings.size(), most_reasons); ++f) {
            const Finding &one = classes[k].findings[f];
            Said said{sentence(c, k, one), authority(c, k, one)};
            of_class_[k].push_back({said, one.effect == Verdict::reject, one.indications});
            auto &by = classes_[std::move(said)];
            if (by.empty() || by.back() != c.set.classes[k].id) by.push_back(c.set.classes[k].id);
        }
}

void ReasonsOnce::add(Document &doc, std::size_t k, std::size_t all) {
    std::size_t rejecting = 0, others = 0;
    std::set<int> rejected;
    std::vector<const Said *> fresh;
    for (const auto &[said, rejects, numbers] : of_class_[k]) {
        if (told_.insert(said).second) {
            fresh.push_back(&said);
            continue;
        }
        ++(rejects ? rejecting : others);
        if (rejects) rejected.insert(numbers.begin(), numbers.end());
    }
    if (rejecting > 0)
        doc.item("rejected by " + said_above(rejecting) +
                 (rejected.empty() ? "" : ": of " + tags_of(rejected)));
    for (const Said *said : fresh) {
        const auto &classes = classes_.at(*said);
        doc.item(said->first + (classes.size() > 1 ? " So for the classes " + listed(classes) + "." : ""),
                 said->second);
    }
    if (others > 0) doc.item("and " + said_above(others));
    if (all > most_reasons) doc.item("and " + counted(all - most_reasons, "more reason"));
}

} // namespace beadbook
