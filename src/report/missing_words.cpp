#include "report/missing_words.hpp"

#include "judge/item.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What a pair or a group lacks is what one of its finds lacks.
Missing of_single_finds(Missing missing) {
    for (const auto &[of_several, own] : {std::pair{Quantity::smaller_size, Quantity::size},
                                          {Quantity::larger_size, Quantity::size},
                                          {Quantity::shorter_length, Quantity::length},
                                          {Quantity::longer_length, Quantity::length},
                                          {Quantity::longest, Quantity::length}})
        if (missing.has(lack_of(of_several))) missing = missing.without(lack_of(of_several)) | lack_of(own);
    return missing;
}

template <class Lacks>
std::vector<std::string> numbers_of(const std::vector<const Indication *> &finds, Lacks lacks) {
    std::vector<std::string> out;
    for (const Indication *one : finds)
        if (lacks(*one)) out.push_back("#" + std::to_string(one->number));
    return out;
}

/// The way to the next one hangs on all that the exams of these found, or on those of their types alone.
std::vector<const Indication *> found_beside(const Case &c, const std::vector<const Indication *> &finds,
                                             bool alike) {
    std::vector<const Indication *> beside;
    for (const auto &one : c.indications)
        if (std::any_of(finds.begin(), finds.end(), [&](const Indication *own) {
                return own->exam == one.exam &&
                       (!alike || c.vocabulary.widest(own->type) == c.vocabulary.widest(one.type));
            }))
            beside.push_back(&one);
    return beside;
}

} // namespace

std::string missing_words(const Case &c, const Finding &f) {
    if (!f.missing.any()) return "something";
    std::vector<const Indication *> finds;
    for (const int number : f.indications)
        if (const Indication *one = c.find(number)) finds.push_back(one);
    Missing left = of_single_finds(f.missing);
    std::vector<std::string> out;
    const auto tell = [&](Missing what, const std::vector<std::string> &numbers) {
        for (const auto &name : names_of(what)) out.push_back(name + " of " + listed(numbers));
        left = left.without(what);
    };
    for (const Quantity way : {Quantity::nearest_gap, Quantity::nearest_like_gap}) {
        if (!left.has(lack_of(way))) continue;
        const auto beside = found_beside(c, finds, way == Quantity::nearest_like_gap);
        const auto unplaced = numbers_of(beside, [](const Indication &one) { return !one.place; });
        const auto no_end =
            numbers_of(beside, [&](const Indication &one) { return has_open_end(one, c.vocabulary); });
        if (!unplaced.empty() || !no_end.empty()) left = left.without(lack_of(way));
        if (!unplaced.empty()) tell(Missing::place(), unplaced);
        if (!no_end.empty()) {
            out.push_back("the length (or from .. to) of " + listed(no_end));
            // Of one without a place the length is asked for below.
            if (std::all_of(finds.begin(), finds.end(), [](const Indication *one) { return one->place; }))
                left = left.without(lack_of(Quantity::length));
        }
    }
    const auto tell_if_some = [&](Missing what, const std::vector<std::string> &numbers) {
        if (!numbers.empty() && numbers.size() < finds.size()) tell(what, numbers);
    };
    if (left.has(Missing::place()))
        tell_if_some(Missing::place(), numbers_of(finds, [](const Indication &one) { return !one.place; }));
    for (std::size_t q = coupon_quantities; q < quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        if (info(quantity).scope == Scope::indication && left.has(lack_of(quantity)))
            tell_if_some(lack_of(quantity), numbers_of(finds, [&](const Indication &one) {
                             return !one.measures.has(quantity);
                         }));
    }
    for (auto &name : names_of(left)) out.push_back(std::move(name));
    return listed(out);
}

const Gap &nearest_gap(const Case &c, const Finding &f) {
    const Gap *out = &c.set.gaps[static_cast<std::size_t>(f.clause)];
    for (const Gap &gap : c.set.gaps) {
        const bool speaks = gap.subject && !gap.beside_rules && !f.indications.empty() &&
                            std::all_of(f.indications.begin(), f.indications.end(), [&](int number) {
                                const Indication *one = c.find(number);
                                return one && gap.subject->covers(one->type, one->exam);
                            });
        if (speaks && out->subject && gap.subject->types.count() < out->subject->types.count()) out = &gap;
    }
    return *out;
}

} // namespace beadbook
