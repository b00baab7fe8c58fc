#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// What stood against a coupon on the record that it was exported from, or no other record could tell: it
/// goes along with it, and is asked about here as there.
struct CarriedFact {
    enum class Kind : std::uint8_t {
        rejected,      ///< until it, an exam of it or its criteria were made to read otherwise
        graded_failed, ///< and not passed since
        bends_failed,  ///< by what was said of its mechanical tests before
        practice,      ///< it was called so when it was first examined
        welded,        ///< it was said to be welded on an earlier day
        left_behind,   ///< what was taken back or changed, and words beside it: neither goes along
        failed_beside, ///< another test of its welder, which failed and does not go along
        welder,        ///< how its welder is called there; stands against nothing
    };
    Kind kind = Kind::rejected;
    std::map<std::string, std::string> as; ///< rejected, graded_failed, failed_beside: fields as they were
    std::vector<std::string> changed;      ///< rejected: what was changed since; left_behind: of what
    std::vector<std::string> methods; ///< rejected, graded_failed, failed_beside: by which, or "mechanical"
    std::string class_id;             ///< graded_failed
    /// rejected: who changed it; graded_failed: who graded it; welded, failed_beside: the day of the weld, if
    /// it is known; left_behind: words beside it; welder: the name
    std::string by, on, why;
    std::string coupon = {}; ///< failed_beside: its mark there
    friend bool operator==(const CarriedFact &, const CarriedFact &) = default;
};

/// As it is stored: "graded failed".
inline constexpr std::string_view carried_kinds[] = {"rejected", "graded failed", "bends failed",  "practice",
                                                     "welded",   "left behind",   "failed beside", "welder"};
inline std::string_view id_of(CarriedFact::Kind kind) { return carried_kinds[static_cast<int>(kind)]; }

/// How the welder of a coupon is called where it comes from; empty if that is not told.
std::string welder_there(const std::vector<CarriedFact> &before);

/// Whether it speaks against the coupon, and does not only tell how its welder is called there.
inline bool stands_against(const CarriedFact &fact) { return fact.kind != CarriedFact::Kind::welder; }

/// "on the record that it comes from it was graded failed ...".
std::string words_of(const CarriedFact &fact);

} // namespace beadbook
