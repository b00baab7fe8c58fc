#include "operations/owners_copy.hpp"

#include "criteria/shipped.hpp"

#include <algorithm>
#include <tuple>

namespace beadbook {
namespace {

bool is_declared_so(const FillingRecord &filling, const Blank &blank) {
    return blank.clause == filling.clause && name_of(blank.kind) == filling.kind &&
           (filling.limits.empty() || filling.limits == declared_words(blank));
}

bool bears(const ConfirmationRecord &confirmation, const CriteriaSet &set) {
    return confirmation.hash == set.hash;
}

} // namespace

std::string declared_words(const Blank &blank) {
    return blank.limits + (blank.plausible_text.empty() ? "" : ", " + blank.plausible_text);
}

std::string why_it_fell(const FillingRecord &filling, const CriteriaSet &set) {
    const Blank *blank = set.blank(filling.blank);
    const auto index = set.class_index(filling.class_id);
    if (filling.edition != set.edition) return "the set is of another edition than " + filling.edition;
    if (!blank || !index || !blank->classes[*index]) return "no limit hangs on it any more";
    if (!is_declared_so(filling, *blank)) return "the blank is declared otherwise now";
    if (filling.use.empty()) return "an older program did not keep for which rule it was read";
    if (filling.use != blank->use)
        return "a rule that speaks of it, or the units, formulas or tables of the set, were changed since";
    return "";
}

OwnersCopy copy_that_bears(const OwnersCopyState &state, const CriteriaSet &set) {
    OwnersCopy out;
    for (const auto &one : state.fillings) {
        const FillingRecord &record = one.record;
        if (const std::string why = why_it_fell(record, set); !why.empty())
            out.fallen.push_back(
                {record.blank, record.class_id,
                 record.typed + ", by " + readers_words(record.read) + ", fills it no more: " + why});
        else
            out.fillings.push_back(
                {record.blank, record.class_id, record.value, one.hash, readers_words(record.read)});
    }
    for (const auto &one : state.confirmations)
        if (bears(one.record, set))
            out.confirmed.push_back({one.record.part, one.record.class_id, confirmed_words(one.record.read)});
    // In one order, however they were entered: the verdict that is kept with them must not hang on it.
    std::sort(out.fillings.begin(), out.fillings.end(), [](const Filling &a, const Filling &b) {
        return std::tie(a.blank, a.class_id) < std::tie(b.blank, b.class_id);
    });
    return out;
}

std::size_t CopySheet::open() const {
    std::size_t out = 0;
    for (const auto &blank : set->blanks)
        out += static_cast<std::size_t>(std::count(blank.classes.begin(), blank.classes.end(), true));
    return out - set->fillings.size();
}

CopySheet copy_sheet(Office &office, const std::string &criteria) {
    CopySheet out;
    out.set = office.criteria(criteria);
    out.entered = office.book().owners_copy(out.set->name);
    for (const auto &one : out.entered.confirmations)
        if (!bears(one.record, *out.set)) out.of_other_text.push_back(one.record);
    for (const auto &one : out.entered.fillings)
        if (const std::string why = why_it_fell(one.record, *out.set); !why.empty())
            out.fallen.push_back({one.record, why});
    return out;
}

std::vector<CopySheet> copy_sheets(Office &office) {
    const auto entered = office.book().sets_with_copy();
    std::vector<CopySheet> out;
    for (const auto &name : shipped_sets()) {
        const bool spoken_of = std::find(entered.begin(), entered.end(), name) != entered.end();
        if (spoken_of || !office.catalogue().criteria(name)->blanks.empty())
            out.push_back(copy_sheet(office, name));
    }
    return out;
}

bool older_than_filled(Office &office, const StoredVerdict &verdict) {
    const auto set = office.with_copy(office.catalogue().kept_criteria(office.ledger(), verdict.hash));
    return set && set->fillings != verdict.filled;
}

} // namespace beadbook
