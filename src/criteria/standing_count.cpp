#include "criteria/standing_count.hpp"

namespace beadbook {

void StandingCount::add(const Standing &standing) {
    if (!standing.confirmed.empty()) {
        ++own_copy;
        return;
    }
    switch (standing.kind) {
    case Standing::Kind::read: ++read; break;
    case Standing::Kind::second_hand: ++second_hand; break;
    case Standing::Kind::memory: ++memory; break;
    case Standing::Kind::house: ++house; break;
    case Standing::Kind::common_practice: ++common_practice; break;
    case Standing::Kind::filled: ++own_copy; break;
    case Standing::Kind::blank: ++blank; break;
    }
}

} // namespace beadbook
