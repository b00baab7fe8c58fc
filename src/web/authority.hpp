#pragma once

#include <string>

namespace beadbook {

/// A certificate and its key, as PEM.
struct Certified {
    std::string certificate, key;
};

/// An authority of the shop's own, good for ten years: it signs servers and no further authorities.
Certified new_authority();
/// A certificate of a server of that name, signed by an authority; good for 397 days, because browsers take
/// no longer ones. Throws Refusal: the authority cannot be read.
Certified certified_by(const Certified &authority, const std::string &host);

} // namespace beadbook
