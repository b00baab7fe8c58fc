#include "judge/contradiction.hpp"

#include "judge/judgement.hpp"

namespace beadbook {
namespace {

class Comparing {
public:
    explicit Comparing(Contradictions &out) : out_(out) {}

    void less_or_equal(std::int64_t small, std::int64_t large, int number, Missing between) {
        ++out_.compared;
        if (small > large) say(number, between);
    }

private:
    void say(int number, Missing between) {
        Contradiction c;
        if (number != 0) c.indications.push_back(number);
        c.between = between;
        out_.found.push_back(std::move(c));
    }

    Contradictions &out_;
};

void compare_sizes(Comparing &all, const BoundSet &bound, const Indication &i, bool dimension) {
    const auto pair = [&](Quantity small, Quantity large) {
        if (i.measures.has(small) && i.measures.has(large))
            all.less_or_equal(i.measures[small], i.measures[large], i.number,
                              lack_of(small) | lack_of(large));
    };
    if (bound.engine < first_to_lay_widths_across || !bound.vocabulary[i.type].is_wide_across())
        pair(Quantity::width, Quantity::length);
    // The size of a dimension is not how long it is so along the weld.
    if (dimension) return;
    pair(Quantity::length, Quantity::size);
    pair(Quantity::width, Quantity::size);
}

/// Of what was measured: length times width holds it, or the square of the size. The area of a group is that
/// of all its pores, and its size perhaps that of one.
void compare_area(Comparing &all, const BoundSet &bound, const Indication &i) {
    const ImperfectionType &type = bound.vocabulary[i.type];
    if (bound.engine < first_to_doubt_widths || type.measured || type.is_group() ||
        i.area_from != AreaFrom::measured || !i.measures.has(Quantity::area) ||
        !i.measures.has(Quantity::length))
        return;
    const Quantity side = i.measures.has(Quantity::width) ? Quantity::width : Quantity::length;
    const Exact most = Exact(i.measures[Quantity::length]) * Exact(i.measures[side]);
    const bool holds = Exact(i.measures[Quantity::area]) <= most;
    all.less_or_equal(holds ? 0 : 1, 0, i.number, lack_of(Quantity::area) | lack_of(Quantity::size));
}

/// What lies at the root by its type was not found on the face: as something of the face it might be judged
/// by a stricter rule.
void compare_side(Comparing &all, const BoundSet &bound, const Indication &i) {
    const std::uint8_t side = i.words[static_cast<std::size_t>(Attribute::side)];
    if (bound.engine < first_to_hold_sides || side == 0 || !bound.vocabulary[i.type].is_of_root()) return;
    all.less_or_equal(side == word_index(info(Attribute::side), "face") ? 1 : 0, 0, i.number,
                      lack_of(Attribute::side));
}

void compare_places(Comparing &all, const Indication &i, const Coupon &coupon, bool stretch_of_its_own) {
    if (!i.place) return;
    const Span &place = *i.place;
    const Missing length = Missing::place() | lack_of(Quantity::weld_length);
    all.less_or_equal(place.from.nm, place.to.nm, i.number, Missing::place());
    all.less_or_equal(0, place.from.nm, i.number, Missing::place());
    const std::int64_t extent = place.to.nm - place.from.nm;
    if (coupon.line.length) {
        const std::int64_t weld = coupon.line.length->nm;
        all.less_or_equal(coupon.line.closed ? extent : place.to.nm, weld, i.number, length);
    }
    // A dimension may be so over a stretch: there the two are apart.
    if (!stretch_of_its_own && i.measures.has(Quantity::size))
        all.less_or_equal(extent, i.measures[Quantity::size], i.number,
                          Missing::place() | lack_of(Quantity::size));
}

/// A fillet is no larger than its longest leg.
void compare_leg(Comparing &all, const BoundSet &bound, const std::vector<Indication> &indications) {
    if (!bound.fillet_size) return;
    for (const auto &i : indications)
        if (i.type == bound.fillet_size && i.measures.has(Quantity::size))
            all.less_or_equal(i.measures[Quantity::size], bound.coupon.values[Quantity::longest_leg],
                              i.number, lack_of(Quantity::size) | lack_of(Quantity::longest_leg));
}

void compare_metal(Comparing &all, const BoundSet &bound) {
    if (bound.engine < first_to_mind_magnetism || !bound.metal_agrees) return;
    all.less_or_equal(*bound.metal_agrees ? 0 : 1, 0, 0, lack_of(Fact::magnetic) | lack_of(Fact::material));
}

} // namespace

Contradictions contradictions_in(const BoundSet &bound, const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications) {
    const Coupon &coupon = bound.coupon;
    Contradictions out;
    Comparing all(out);
    if (coupon.values.has(Quantity::thinner) && coupon.values.has(Quantity::thicker))
        all.less_or_equal(coupon.values[Quantity::thinner], coupon.values[Quantity::thicker], 0,
                          lack_of(Quantity::thinner) | lack_of(Quantity::thicker));
    compare_leg(all, bound, indications);
    compare_metal(all, bound);
    for (const auto &i : indications) {
        const bool dimension = bound.vocabulary[i.type].measured;
        compare_sizes(all, bound, i, dimension);
        compare_area(all, bound, i);
        compare_side(all, bound, i);
        compare_places(all, i, coupon, dimension);
    }
    for (std::size_t x = 0; x < exam_count; ++x) {
        // Once a method: which of its exams it was, the exams themselves tell.
        bool contradicts = false;
        for (const auto &exam : exams) {
            if (static_cast<std::size_t>(exam.method) != x) continue;
            ++out.compared;
            contradicts = contradicts || exam.contradicts;
        }
        if (!contradicts) continue;
        Contradiction c;
        c.method = static_cast<Exam>(x);
        out.found.push_back(std::move(c));
    }
    return out;
}

} // namespace beadbook
