#pragma once

#include "facts/coupon_state.hpp"

#include <optional>
#include <ostream>
#include <set>
#include <string>
#include <vector>

namespace beadbook {

/// Whether a line is a comment, of which it is told that it is kept nowhere. Throws InputError: it tells a
/// find.
bool told_of_comment(const std::string &line, std::ostream &out);

/// What was typed at the prompt and refused: it may be a find, or say where finds belong, so that nothing is
/// finished without it unasked.
class LinesNotTaken {
public:
    /// A line that is about to be done. `by`: the method of the find that it may be; nothing: any. Lines that
    /// can hide no find are none of these.
    void begin(const std::string &coupon, const std::string &line, std::optional<Exam> by);
    /// The line that was begun last is done.
    void done();

    /// The lines that bear on these exams of the coupon.
    std::vector<std::string> about(const CouponState &coupon, const std::vector<int> &exams) const;
    /// They are meant to be left out.
    void leave_out(const CouponState &coupon, const std::vector<int> &exams);
    /// A find that was logged is what one refused line meant, at most: of its type, at its place.
    void logged(const CouponState &coupon, const IndicationRecord &find);
    void moved(const std::string &coupon, int find);
    /// Another coupon or exam was gone to.
    void gone_on();

    /// "'crak 0.2 3:00' of coupon T-1 was not logged" of each that nobody was asked about.
    std::vector<std::string> left();
    /// "was not logged" of a find, "was not taken" of an order.
    static std::string fate(const std::string &line);

private:
    enum class Kind : std::uint8_t { find, move, way };
    struct Line {
        Kind kind = Kind::find;
        std::string coupon, line;
        std::optional<Exam> by;
        std::string of;                 ///< the coupon that an order names
        std::set<std::string> left_out; ///< of an order: coupons that were finished without it
        bool followed = false;          ///< a find was logged where the order would have led away from
    };
    static bool bears(const Line &one, const CouponState &coupon, const std::vector<int> &exams);
    static std::optional<Line> read(const std::string &coupon, const std::string &line,
                                    std::optional<Exam> by);

    /// What was begun and never done joins the others.
    void keep_begun();

    std::vector<Line> lines_;
    std::optional<Line> begun_;
};

} // namespace beadbook
