#pragma once

#include "facts/stamp.hpp"

#include <cstdint>

namespace beadbook {

/// What a key of the shop signed: that the record, with so many entries, ended with this hash. Whoever keeps
/// it elsewhere can later prove that nothing up to there was cut off or written anew.
struct Seal {
    std::int64_t entries = 0;
    std::string head; ///< hash of the newest entry
    Stamp stamp;
    std::string public_key, signature; ///< measure/signature.hpp
};

} // namespace beadbook
