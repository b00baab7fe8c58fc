#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// What ends of a person or a piece of equipment: a certificate, a vision test, a calibration.
struct Ending {
    enum class What : std::uint8_t { certificate, vision, calibration };
    What what = What::certificate;
    std::string subject;        ///< the person's name, the serial number
    std::string of;             ///< "MT II 4711", the kind of equipment; empty for vision
    Day by{};                   ///< the last day
    std::int64_t days_left = 0; ///< negative: over for so many
};

/// All that ends through a day, and what is over; what ends first comes first. Of each method the certificate
/// that lasts longest counts, of vision and of equipment the newest test. A vision test lasts a year: common
/// practice, no source; a practice may say otherwise. Withdrawn equipment has no end.
std::vector<Ending> endings(Office &office, Day on, Day through);

} // namespace beadbook
