#include "measure/share.hpp"

#include <boost/math/special_functions/beta.hpp>

namespace beadbook {

Share share_of(std::size_t count, std::size_t of) {
    Share out{count, of};
    const auto taken = static_cast<double>(count), left = static_cast<double>(of - count);
    constexpr double tail = 0.025;
    if (count > 0) out.low = boost::math::ibeta_inv(taken, left + 1, tail);
    if (count < of) out.high = boost::math::ibeta_inv(taken + 1, left, 1 - tail);
    return out;
}

} // namespace beadbook
