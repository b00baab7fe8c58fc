#pragma once

#include "report/bench_document.hpp"
#include "web/bench.hpp"

namespace beadbook {

/// Writes what nginx needs to let tablets in, into a folder that its owner alone may read: the
/// configuration, a certificate, and the word by which the bench knows this proxy. An authority that is
/// there is kept. `asked.proxy` is made here. Throws Refusal: no name of a host, files that cannot be
/// written.
WayIn write_door(const std::string &folder, const TabletDoor &asked);
/// What write_door wrote. Throws Refusal: it is not there, or others may read it.
TabletDoor read_door(const std::string &folder);

} // namespace beadbook
