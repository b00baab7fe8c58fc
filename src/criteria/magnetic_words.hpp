#pragma once

#include <string_view>

namespace beadbook {

/// Whether a text names a metal that is not ferromagnetic: aluminium, titanium, copper and the like, an
/// austenitic stainless steel by its grade ("304L stainless", "S31603", "1.4301"), a nickel alloy, or one
/// that is called non-magnetic. Of two metals one is enough. From memory, common practice, no source; a grade
/// that is not known here, plain stainless, nickel and cobalt say nothing, nor does a text that leaves open
/// what it is.
bool names_unmagnetic_metal(std::string_view text);

} // namespace beadbook
