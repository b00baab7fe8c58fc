#pragma once

#include "criteria/model.hpp"
#include "measure/place.hpp"

#include <optional>
#include <vector>

namespace beadbook {

/// A stretch of weld, from the datum. On a closed weld `to` may lie beyond the datum (past the length).
struct Span {
    Length from, to;
    friend constexpr bool operator==(const Span &, const Span &) = default;
};

/// How an indication's area is known. One rule, chosen by its shape: of what is longer than three times its
/// width the rectangle, of anything else the ellipse (of equal sides: the circle), to the whole nm2.
enum class AreaFrom : std::uint8_t { measured, ellipse, rectangle };

/// One indication as the judge sees it. What nobody measured is absent, never zero.
struct Indication {
    int number = 0; ///< how the record calls it
    TypeId type = 0;
    Exam exam = Exam::VT;
    std::optional<Span> place;    ///< along the weld
    std::optional<Span> across;   ///< across it, from the centre line; may be negative
    Environment::Values measures; ///< length, width, depth, height, size, angle, area
    std::array<std::uint8_t, attribute_count> words{};
    AreaFrom area_from = AreaFrom::measured;
    bool length_by_place = false; ///< of a dimension: nobody told its length but by from and to
    /// Its type is round by name, but how long it is was told and not how wide: it may be narrow.
    bool width_open = false;
    bool size_by_width = false; ///< its width is more than the way from and to, and so its size
    /// Of one read out of several: one of them is no wider than this.
    std::optional<Exact> narrowest;
    int of_exam = 0; ///< number of the exam that found it; 0: nobody said which of its method that was

    /// Fills in what follows from what was measured: size is the larger of length and width, a pore with
    /// only a size is as long as that, and the place ends one length after where it begins. The area follows
    /// from length and width (see AreaFrom); with the size alone it is the circle, unless the type is linear:
    /// then nobody knows it. Of a dimension that is checked (a fillet's size) none of that follows: its
    /// length along the weld is what was measured, or the way from where to where it is so.
    void complete(const Vocabulary &vocabulary);
    /// The area, with length times width for what nobody measured otherwise (of a size alone: its square).
    /// Nothing where the area is not known.
    std::optional<Exact> area_as_rectangle() const;
    /// The area as engines before the fourth took it: of a linear type the rectangle, of any other the
    /// ellipse.
    void area_by_type(const Vocabulary &vocabulary);
    /// The length of a dimension as engines before the fifth took it: its size.
    void length_by_size(const Vocabulary &vocabulary);
    /// The size of what lies from and to as engines before the eighteenth took it: that way.
    void size_by_way();

private:
    void complete_dimension();
};

/// An examination that was done. One that does not count (part of the weld left out, conditions not met)
/// cannot fulfil a requirement, but what it found still counts.
struct ExamDone {
    Exam method = Exam::VT;
    bool counts = true;
    std::string why_not;
    /// What it found is not all on record yet, so no class can be accepted, also where nothing asks for the
    /// method.
    bool pending = false;
    int number = 0;           ///< how the coupon's record calls it
    bool contradicts = false; ///< more is on record under it than it was finished with
    bool lacks = false;       ///< less is on record under it than it was finished with
    Missing hangs_on{};       ///< of one that does not count: what of the coupon would tell whether it does
    /// It found that entry, or may have, where nobody said which exam did.
    bool found(const Indication &entry) const {
        return method == entry.exam && (entry.of_exam == 0 || entry.of_exam == number);
    }
};
/// An exam that counts found it, so that what it measured may fulfil a requirement.
bool found_by_one_that_counts(const Indication &entry, const std::vector<ExamDone> &exams);

/// The test coupon's facts; word 0 and an absent value mean "not known".
struct Coupon {
    Environment::Values values;
    std::array<std::uint8_t, fact_count> facts{};
    /// Further words, by bits: a weld made by more than one process, a joint of two metals.
    std::uint64_t more_processes = 0, more_materials = 0;
    bool not_magnetic = false; ///< its metal is one that by its name is not (criteria/magnetic_words.hpp)
    bool has_magnetic = false; ///< one of its metals by its name is
    /// All words of a fact, word k as bit k; 0: not known.
    std::uint64_t said(Slot fact) const {
        if (facts[fact] == 0) return 0;
        const std::uint64_t first = std::uint64_t{1} << facts[fact];
        if (fact == static_cast<Slot>(Fact::process)) return first | more_processes;
        return fact == static_cast<Slot>(Fact::material) ? first | more_materials : first;
    }
    WeldLine line;
    /// The way round a closed weld, if it is one and its length is known.
    std::optional<std::int64_t> around() const {
        if (!line.closed || !line.length) return std::nullopt;
        return line.length->nm;
    }
    /// The weld closes on itself, but nobody knows after how long: what lies near over the datum is not
    /// known.
    bool turn_unknown() const { return line.closed && !line.length; }
    ExamSet called_for; ///< exams that the drawing or contract asks for beyond the standard
};
/// Its joint is said to be one.
bool is_fillet(const Coupon &coupon);

} // namespace beadbook
