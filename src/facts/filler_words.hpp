#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

// What a coupon says of its filler that cannot hold beside what else it says, as "filler none, filler-group
// F6"; empty if nothing speaks against it, or nobody can say. Groups and designations are those of ASME BPVC
// Section IX, the AWS A5 specifications and ISO 9606-1, from memory.

/// That none was used (filler none, filler type nm, process 142), beside a filler, its group or its type.
std::string filler_beside_none(const CouponRecord &coupon);
/// That none was used by a process whose electrode is the filler: SMAW, GMAW, FCAW, SAW, EGW, ESW.
std::string electrode_beside_none(const CouponRecord &coupon);
/// That none was used by any process, beside a size of a fillet.
std::string fillet_beside_none(const CouponRecord &coupon);
/// A filler or group of filler of aluminium, titanium or magnesium on another metal, or of another metal on
/// one of these.
std::string filler_of_another_metal(const CouponRecord &coupon);
/// A covered electrode where none is burnt, a bare wire by SMAW, a cored wire by SMAW ...
std::string filler_of_another_process(const CouponRecord &coupon);

} // namespace beadbook
