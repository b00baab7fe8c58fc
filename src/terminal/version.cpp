#include "terminal/version.hpp"

namespace beadbook {

std::string_view program_version() { return BEADBOOK_VERSION; }

} // namespace beadbook
