#pragma once

#include "facts/coupon_record.hpp"
#include "judge/coupon.hpp"

namespace beadbook {

/// Where a find was filed before it was moved.
struct MovedFrom {
    std::string coupon;
    int exam = 0, number = 0;
    std::string why;
    friend bool operator==(const MovedFrom &, const MovedFrom &) = default;
};

/// One indication as a person wrote it.
struct IndicationRecord {
    int number = 0; ///< on its coupon, from 1
    int exam = 0;   ///< which exam found it
    TypeId type = 0;
    std::map<Quantity, Typed> measures;
    std::optional<Typed> at;     ///< where it begins
    std::optional<Typed> middle; ///< or where its middle is
    std::optional<Typed> end;    ///< and where it ends, if that was given
    std::optional<Typed> across; ///< its middle, from the centre line
    bool across_left = false;    ///< `across` is to the left seen in the weld's direction
    std::array<std::uint8_t, attribute_count> words{};
    std::string remark;
    std::vector<std::string>
        sure;         ///< plausibility rules that somebody set aside for it (facts/plausibility.hpp)
    std::string file; ///< SHA-256 of the lines it came with, if they came as one file
    std::optional<MovedFrom> moved_from;

    Indication facts(Exam method, const WeldLine &line,
                     const Vocabulary &vocabulary = Vocabulary::shipped()) const;

    friend bool operator==(const IndicationRecord &, const IndicationRecord &) = default;
};

/// The same indication on a weld that is described otherwise: its places are read again. Throws InputError:
/// off the weld.
IndicationRecord replaced_on(IndicationRecord indication, const WeldLine &line, Unit unit);

/// Refuses a place that is said in two ways, or by its end alone. Throws InputError. What is on record is not
/// asked: older programs took it.
void check_place_said(const IndicationRecord &indication);

/// Refuses what cannot be: wider than long (save for a cap or a root, whose width lies across the weld), past
/// the end of the weld. Throws InputError, in the coupon's unit.
void check_sense(const IndicationRecord &indication, const WeldLine &line, std::optional<Unit> unit);

/// Measures that may be written down, with their short keys (l, w, d, h, s, angle, area), and what a number
/// is called behind it (3/8 long).
struct MeasureKey {
    std::string_view word, quick;
    Quantity quantity;
    std::string_view behind = {};
};
const std::vector<MeasureKey> &measure_keys();

} // namespace beadbook
