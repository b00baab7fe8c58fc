#pragma once

#include <string_view>

namespace beadbook {

/// Whether a text names a metal that is not ferromagnetic: aluminium, titanium, copper and the like, an
/// austenitic stainless steel by its grade ("304L stainless", "S31603", "1.4301"), a nickel alloy, or one
/// that is called non-magnetic. Of two metals one is enough. From memory, common practice, no source; a grade
/// that is not known here, plain stainless, nickel and cobalt say nothing, nor does a text that leaves open
/// what it is.
bool names_unmagnetic_metal(std::string_view text);

/// Whether a text names a metal that is ferromagnetic: carbon, mild or low alloy steel, a steel by its AISI
/// number (4130), cast iron, a ferritic or martensitic stainless steel. Of two metals one is enough. From
/// memory, common practice, no source; plain steel and plain stainless say nothing.
bool names_magnetic_metal(std::string_view text);

} // namespace beadbook
