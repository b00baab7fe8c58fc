#pragma once

#include "criteria/remainder.hpp"

#include <set>
#include <vector>

namespace beadbook {

/// Finds of which the same rules and gaps of a class speak.
struct AlikeFinds {
    TypeId type; ///< one of them
    Exam exam;
    std::size_t of_class;
    std::vector<const Gap *> gaps;
};

/// Takes those of a subject, each once, until `take` is true of one; whether it was of any.
template <class Take>
bool any_alike(const CriteriaSet &set, const Vocabulary &vocabulary, const Subject &subject,
               std::size_t of_class, Take take) {
    std::set<std::pair<std::vector<std::uint16_t>, std::vector<const Gap *>>> tried;
    for (std::size_t t = 0; t < vocabulary.size(); ++t)
        for (const Exam exam : all_exams()) {
            AlikeFinds finds{static_cast<TypeId>(t), exam, of_class, {}};
            if (!subject.covers(finds.type, exam)) continue;
            for (const Gap &gap : set.gaps)
                if (gap.subject && gap.classes[of_class] && gap.subject->covers(finds.type, exam))
                    finds.gaps.push_back(&gap);
            if (tried.emplace(set.rules_for(finds.type, exam), finds.gaps).second && take(finds)) return true;
        }
    return false;
}

/// What gaps beside the rules ask for is taken out. True: another gap says why no rule speaks, which is heard
/// only where none does.
inline bool take_out_gaps(const AlikeFinds &finds, std::vector<std::vector<Condition>> &taken_out) {
    bool told_why = false;
    for (const Gap *gap : finds.gaps)
        if (gap->beside_rules)
            taken_out.push_back(asked_by(*gap));
        else
            told_why = true;
    return told_why;
}

/// All that holds where another rule speaks as well.
inline std::vector<Condition> asked_beside(std::vector<Condition> holding, const Rule &other) {
    for (auto &asked : asked_by(other)) holding.push_back(std::move(asked));
    return holding;
}

} // namespace beadbook
