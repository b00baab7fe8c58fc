#include "criteria/doubts.hpp"

#include <algorithm>

namespace beadbook {

const std::vector<std::string> &check_names() {
    static const std::vector<std::string> names{"hole-in-table",
                                                "merge-hides-spacing",
                                                "no-class-has-a-limit",
                                                "empty-band",
                                                "never-together",
                                                "overlapping-bands",
                                                "hole-between-bands",
                                                "duplicate-rule",
                                                "unused-quantity",
                                                "not-said-beside-no-limit",
                                                "exam-for-looser-class",
                                                "class-order",
                                                "shadowed-rule",
                                                "two-limits",
                                                "never-decisive",
                                                "always-rejects",
                                                "outside-scope",
                                                "division-by-zero",
                                                "negative-limit",
                                                "table-short-of-scope",
                                                "bands-short-of-scope",
                                                "cracks-pass",
                                                "class-left-out",
                                                "clause-without-rule",
                                                "gap-on-covered-type",
                                                "exam-without-rule",
                                                "relevance-over-limit",
                                                "duplicate-clause",
                                                "shadowed-measure",
                                                "unused-formula",
                                                "unused-blank",
                                                "idle-part",
                                                "broken-count",
                                                "rejects-only-together",
                                                "group-counts-as-one",
                                                "relevance-without-size",
                                                "relevance-beside-sum",
                                                "depth-not-limited",
                                                "limit-over-wall",
                                                "limit-over-window",
                                                "group-never-met",
                                                "table-falls",
                                                "no-exam-required",
                                                "limit-turned-round",
                                                "size-not-limited",
                                                "linear-beyond-belief",
                                                "height-not-limited",
                                                "need-not-be-measured",
                                                "exams-not-alike",
                                                "bands-fall",
                                                "bands-short-of-finds",
                                                "exam-of-some-only",
                                                "fillet-under-size",
                                                "limit-beyond-belief",
                                                "limits-far-apart",
                                                "unit-of-one-alone",
                                                "greater-beside-lesser",
                                                "exam-not-asked",
                                                "joint-without-rule",
                                                "measure-of-another",
                                                "limit-by-another",
                                                "symbol-of-another",
                                                "window-too-short",
                                                "groups-alone",
                                                "nothing-rejected",
                                                "always-holds",
                                                "table-jumps"};
    return names;
}

Doubts::Doubts(const CriteriaSet &set, Issues &issues)
    : set_(set), issues_(issues), used_(set.silences.size()) {}

void Doubts::tell(std::string_view check, const std::string &of, Where where, const std::string &path,
                  const std::string &text) {
    told_.emplace(check, of);
    bool silent = false;
    for (std::size_t i = 0; i < used_.size(); ++i)
        if (set_.silences[i].check == check && set_.silences[i].of == of) silent = used_[i] = true;
    if (silent) return;
    issues_.warning(where, path, text + " [" + std::string(check) + "]");
    unanswered_.push_back({std::string(check), of});
}

bool Doubts::told(std::string_view check, const std::string &of) const {
    return told_.contains({std::string(check), of});
}

void Doubts::tell_needless() {
    // What the extended set answers for itself is that set's: with other classes it may call for nothing.
    const auto inherited = [&](const Silence &one) {
        return !set_.extends.empty() && one.where.line == set_.extends_where.line;
    };
    for (std::size_t i = 0; i < used_.size(); ++i)
        if (!used_[i] && !inherited(set_.silences[i]))
            issues_.warning(set_.silences[i].where, "silence",
                            "nothing here calls for silence on " + set_.silences[i].check + " of '" +
                                set_.silences[i].of + "'");
}

bool is_one_of(const std::optional<Slot> &slot, std::initializer_list<Quantity> quantities) {
    return std::any_of(quantities.begin(), quantities.end(),
                       [&](Quantity one) { return slot == slot_of(one); });
}

} // namespace beadbook
