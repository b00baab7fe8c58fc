#pragma once

#include "operations/writing.hpp"

namespace beadbook {

/// A find that was filed under the wrong exam or coupon.
struct MoveRequest {
    std::string coupon;
    int number = 0;
    int exam = 0;   ///< where it belongs; 0: the one open exam of the other coupon
    std::string to; ///< that coupon; empty: the same
    std::string why;
    bool sure = false; ///< what nobody would believe at first sight is meant so
};
struct Moved {
    std::string from;
    int from_number = 0, from_exam = 0;
    std::string coupon;
    IndicationRecord now;
};
/// Files a find under another exam, of the same coupon or of another one, where its places are read anew and
/// it gets the next number. Both keep it in their history. A finished exam may lose or get one: it counts no
/// more until it is opened again and finished with what is on record. The notes tell another method, and each
/// class whose verdict the move changes. Throws Unsure; Refusal: it lies there
/// already, it does not fit on that weld.
Done<Moved> move_indication(Writing &writing, const MoveRequest &request);

} // namespace beadbook
