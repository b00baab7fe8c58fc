#include "facts/coupon_weld.hpp"

#include "measure/text.hpp"
#include "qualify/contradicting_words.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

/// Traits that each process of a coupon may have for itself.
bool split(Trait trait) {
    switch (trait) {
    case Trait::transfer:
    case Trait::filler_group:
    case Trait::filler_type:
    case Trait::backing:
    case Trait::runs: return true;
    default: return false;
    }
}

} // namespace

bool goes_round(const std::string &position) {
    constexpr std::array<std::string_view, 8> all{"5G", "6G", "6GR", "H-L045", "J-L045", "PH", "PJ", "PK"};
    for (const auto &part : parts_of_several(position))
        if (std::find(all.begin(), all.end(), part) != all.end()) return true;
    return false;
}

bool is_of_a_fillet(const std::string &position) {
    const auto parts = parts_of_several(position);
    return std::all_of(parts.begin(), parts.end(), [](const std::string &part) {
        return part.size() >= 2 && part[0] >= '1' && part[0] <= '6' &&
               (part.substr(1) == "F" || part.substr(1) == "FR");
    });
}

std::vector<Weld> welds_of(const CouponRecord &coupon) {
    const auto processes = parts_of_several(coupon.get("process"));
    const Coupon facts = coupon.facts();
    // A bare size has always been inches unless `units` said otherwise; what is on record must mean the same.
    const Unit unit = coupon.get("units") == "mm" ? Unit::millimetre : Unit::inch;
    std::vector<Weld> out;
    for (std::size_t p = 0; p < processes.size(); ++p) {
        Weld weld;
        for (std::size_t i = 0; i < trait_count; ++i) {
            const auto trait = static_cast<Trait>(i);
            if (is_size(trait)) {
                const Quantity q = *info(trait).size;
                // Layers that are told in one number are those of all processes together.
                if (facts.values.has(q) && (trait != Trait::layers || processes.size() == 1))
                    weld.size(trait) = Exact(facts.values[q]);
                continue;
            }
            const std::string text = coupon.get(field_of(trait));
            const auto parts = parts_of_several(text);
            const bool own = split(trait) && parts.size() == processes.size();
            weld.word(trait) = own ? parts[p] : text;
            // What the first process welded backs the next, so that "without" is not true of that.
            if (trait == Trait::backing && p > 0 && (!own || contradict(trait, parts[p], "with")))
                weld.word(trait).clear();
        }
        if (const auto layers = parts_of_several(coupon.get("layers"));
            processes.size() > 1 && layers.size() == processes.size())
            weld.size(Trait::layers) = parse_amount(layers[p], Dimension::number);
        const std::string &part = processes[p];
        const std::size_t blank = std::min(part.find(' '), part.size());
        weld.word(Trait::process) = part.substr(0, blank);
        if (part.empty() && processes.size() > 1)
            throw DataError("process '" + shown(coupon.get("process")) + "': a part is empty");
        if (blank < part.size()) {
            try {
                weld.size(Trait::weld_thickness) = Exact(parse_length(part.substr(blank), unit).nm);
            } catch (const InputError &e) {
                throw DataError("process '" + shown(part) + "': " + e.what());
            }
        } else if (processes.size() > 1) {
            weld.size(Trait::weld_thickness).reset();
        }
        out.push_back(std::move(weld));
    }
    return out;
}

} // namespace beadbook
