#include "judge/coupon.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Exact ellipse(const Exact &length, const Exact &width) {
    const Exact quarter_pi = Exact::fraction(785'398'163'397'448, 1'000'000'000'000'000);
    return Exact::whole((length * width * quarter_pi).rounded());
}

} // namespace

void Indication::complete(const Vocabulary &vocabulary) {
    length_by_place = size_by_width = false;
    if (vocabulary[type].measured) return complete_dimension();
    width_open = vocabulary[type].shape == Shape::rounded && !measures.has(Quantity::width) &&
                 (measures.has(Quantity::length) || !measures.has(Quantity::size));
    const auto value = [&](Quantity q) { return Exact(measures[q]); };
    const bool has_length = measures.has(Quantity::length);
    const bool has_width = measures.has(Quantity::width);
    if (!measures.has(Quantity::size) && has_length)
        measures.set(Quantity::size, has_width ? std::max(value(Quantity::length), value(Quantity::width))
                                               : value(Quantity::length));
    if (!has_length && measures.has(Quantity::size)) measures.set(Quantity::length, value(Quantity::size));
    if (!measures.has(Quantity::area) && measures.has(Quantity::length)) {
        const Exact length = value(Quantity::length);
        const bool only_size = !has_length && !has_width;
        if (has_width && length > Exact(3) * value(Quantity::width)) {
            area_from = AreaFrom::rectangle;
            measures.set(Quantity::area, length * value(Quantity::width));
        } else if (has_width || (only_size && vocabulary[type].shape != Shape::linear)) {
            area_from = AreaFrom::ellipse;
            measures.set(Quantity::area, ellipse(length, has_width ? value(Quantity::width) : length));
        }
    }
    if (place && place->to == place->from && measures.has(Quantity::length))
        place->to = {place->from.nm + measures[Quantity::length]};
    if (place && !measures.has(Quantity::length)) {
        // Both ends were given, so the length was measured.
        if (place->to > place->from) measures.set(Quantity::length, Exact(place->to.nm - place->from.nm));
        if (place->to > place->from && !measures.has(Quantity::size)) {
            size_by_width = vocabulary[type].is_wide_across() && has_width &&
                            measures[Quantity::width] > measures[Quantity::length];
            measures.set(Quantity::size, value(size_by_width ? Quantity::width : Quantity::length));
        }
    }
}

void Indication::size_by_way() {
    if (size_by_width) measures.set(Quantity::size, Exact(measures[Quantity::length]));
}

/// Its size is the dimension itself; how long it is so along the weld is another matter.
void Indication::complete_dimension() {
    if (!place) return;
    if (measures.has(Quantity::length)) {
        if (place->to == place->from) place->to = {place->from.nm + measures[Quantity::length]};
    } else if (place->to > place->from) {
        length_by_place = true;
        measures.set(Quantity::length, Exact(place->to.nm - place->from.nm));
    }
}

void Indication::length_by_size(const Vocabulary &vocabulary) {
    if (!vocabulary[type].measured) return;
    const bool has_length = measures.has(Quantity::length) && !length_by_place;
    const bool has_size = measures.has(Quantity::size);
    const std::int64_t size = has_size ? measures[Quantity::size] : 0;
    if (has_size && !has_length) {
        measures.set(Quantity::length, Exact(size));
        if (place && place->to == place->from) place->to = {place->from.nm + size};
    }
    if (!has_size && measures.has(Quantity::length)) {
        std::int64_t largest = measures[Quantity::length];
        if (measures.has(Quantity::width) && has_length)
            largest = std::max(largest, measures[Quantity::width]);
        measures.set(Quantity::size, Exact(largest));
    }
}

std::optional<Exact> Indication::area_as_rectangle() const {
    if (!measures.has(Quantity::area)) return std::nullopt;
    if (area_from == AreaFrom::measured) return measures[Quantity::area];
    const Exact length = measures[Quantity::length];
    return length * (measures.has(Quantity::width) ? Exact(measures[Quantity::width]) : length);
}

void Indication::area_by_type(const Vocabulary &vocabulary) {
    if (area_from == AreaFrom::measured || !measures.has(Quantity::width)) return;
    const Exact length = measures[Quantity::length], width = measures[Quantity::width];
    const bool linear = vocabulary[type].shape == Shape::linear;
    measures.set(Quantity::area, linear ? length * width : ellipse(length, width));
}

bool found_by_one_that_counts(const Indication &entry, const std::vector<ExamDone> &exams) {
    return std::any_of(exams.begin(), exams.end(),
                       [&](const ExamDone &exam) { return exam.counts && exam.found(entry); });
}

bool is_fillet(const Coupon &coupon) {
    return coupon.facts[static_cast<std::size_t>(Fact::joint)] == word_index(info(Fact::joint), "fillet");
}

} // namespace beadbook
