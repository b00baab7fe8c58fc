#pragma once

#include "criteria/model.hpp"
#include "language/issue.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace beadbook {

/// A size that the trade calls by a number, as a measure. It is the nominal one: no mill tolerance is taken
/// off.
struct NominalSize {
    std::string size;   ///< "2.375 in"
    std::string called; ///< "NPS 2", "NPS 2 sch 40", "16 ga steel": each says by itself what is meant
    std::string source; ///< "ASME B36.10M and, with an S, ASME B36.19M, memory"

    /// "2.375 in (NPS 2)": so it is kept.
    std::string text() const { return size + " (" + called + ")"; }
};

/// What is known beside a wall thickness, to tell which one is meant.
struct BesideWall {
    std::optional<Exact> outside; ///< diameter, in nanometres
    std::string metal;            ///< as written of the coupon
    bool tube = false;
};

/// The tables of criteria/nominal-sizes.yaml, which is built into the program: pipes by NPS and schedule,
/// sheet and tubes by gauge.
class NominalSizes {
public:
    static const NominalSizes &shipped();
    /// Reads the file's format; mistakes go to `issues`.
    static NominalSizes read(const std::string &text, Issues &issues);

    /// "NPS 2", or "2.375 in (NPS 2)"; nothing if the text is no such size. Throws InputError: the table does
    /// not have it, or what stands before the bracket is another size.
    std::optional<NominalSize> outside(std::string_view text) const;
    /// "sch 40", "NPS 2 sch 40", "XS", "16 ga", "16 ga stainless", "BWG 16". Throws InputError, with all that
    /// it can mean, where the pipe or the table of the gauge is not known.
    std::optional<NominalSize> wall(std::string_view text, const BesideWall &beside) const;

private:
    using Walls = std::vector<std::pair<std::string, std::string>>; ///< number or schedule, and size

    struct Pipe {
        std::string nps;
        Exact number;        ///< the NPS, to compare 1.5 with 1-1/2
        std::string outside; ///< "2.375 in"
        Walls walls;
    };
    struct Gauge {
        std::string name;
        std::vector<std::string> also, metals;
        bool tube = false;
        Standing standing;
        Walls thickness;

        bool is_called(std::string_view word) const;
        std::optional<NominalSize> of(std::string_view number) const;
    };

    const Pipe &pipe_of(std::string_view number, std::string_view text) const;
    std::optional<NominalSize> by_schedule(std::string_view text, const BesideWall &beside) const;
    std::optional<NominalSize> by_gauge(std::string_view text, const BesideWall &beside) const;

    std::vector<Pipe> pipes_;
    Standing of_pipes_;
    std::vector<Gauge> gauges_;
};

/// "2.375 in (NPS 2)" in its two parts; the second is empty if nothing stands in brackets.
std::pair<std::string_view, std::string_view> size_and_name(std::string_view text);

} // namespace beadbook
