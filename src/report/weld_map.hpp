#pragma once

#include "report/document.hpp"
#include "report/sentence.hpp"

namespace beadbook {

/// What a weld map shows of one find.
struct MappedFind {
    enum class State : std::uint8_t { noted, kept, rejects, open }; ///< noted: nobody judged it
    int number = 0;
    std::string words; ///< "#3 gas pore (RT) at 2.1 in"
    State state = State::noted;
    std::optional<Span> place, across;
    std::optional<std::int64_t> width; ///< nm
    std::uint8_t side = 0;             ///< word of Attribute::side; 0: on neither side, as far as is known
    bool round = false;                ///< not longer than three times its width
};
/// The stretch in which a reason rejects.
struct MappedReason {
    std::vector<int> numbers;
    Span place;
    std::string words; ///< "#2, #3: 0.31 in in any 1 in, limit 0.25 in"
    std::uint8_t side = 0;
};
/// A weld with what was found on it, before it is drawn. What was withdrawn is not in it.
struct WeldMap {
    WeldLine line;
    Unit unit = Unit::inch;
    bool fillet = false;               ///< has no root to look at
    std::vector<MappedFind> finds;     ///< by number
    std::vector<MappedReason> reasons; ///< that reject, and have a place; those of more than one find first
    std::size_t more_reasons = 0;      ///< that are not drawn

    /// Of the line that is drawn, in nm: the weld's, or where the last find ends if nobody knows that.
    std::int64_t shown_length() const;
};

/// As nobody has judged it.
WeldMap weld_map(const Coupon &coupon, const std::vector<Indication> &found, Unit unit,
                 const Vocabulary &vocabulary = Vocabulary::shipped());
/// With what a class's judgement says of each find.
WeldMap weld_map(const Case &c, std::size_t class_index, const ClassJudgement &judged);

/// Which sides of a weld a map draws: those that something is on, both where nothing is; or both always,
/// where the map is there to be tapped.
enum class Bands : std::uint8_t { used, to_tap };

/// The weld unrolled to scale from its datum: a band each for face, root and what was said to be on neither,
/// finds to scale under their numbers, a find without a place in a list below. For pages that are tapped:
/// kind "weld-map"; data x0 and x1, start and length (nm), unit; bands are groups with data side. `width` of
/// the picture in its units, with letters of 12 to 13: 780 for paper and screens, 340 for a hand.
Picture unrolled(const WeldMap &map, double width = 780, Bands bands = Bands::used);
/// A girth weld of known length seen along the tube from its datum at the top: face outside, root inside.
/// Nothing of any other. Of more finds than `most_labels`, so many that reject or are open have their
/// numbers.
std::optional<Picture> ring(const WeldMap &map, std::size_t most_labels = 60);

/// What a map shows, one sentence a find.
std::string told_of(const WeldMap &map);
/// "Without a place: #3, #7"; empty if all have one.
std::string unplaced_words(const WeldMap &map);

/// Both pictures as figures. `text` is what a terminal shows instead.
void add_map(Document &doc, const WeldMap &map, std::string text);

} // namespace beadbook
