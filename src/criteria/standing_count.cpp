#include "criteria/standing_count.hpp"

namespace beadbook {

void StandingCount::add(const Standing &standing) {
    switch (standing.kind) {
    case Standing::Kind::read: ++read; break;
    case Standing::Kind::second_hand: ++second_hand; break;
    case Standing::Kind::memory: ++memory; break;
    case Standing::Kind::house: ++house; break;
    case Standing::Kind::common_practice: ++common_practice; break;
    }
}

} // namespace beadbook
