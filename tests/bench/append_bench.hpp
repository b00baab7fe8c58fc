#pragma once

#include "figures.hpp"

namespace beadbook::bench {

/// Entries that are appended to a record beside the same rows in a bare table of SQLite, as durably: one by
/// one, and many in one transaction. The record hashes each into its chain, keeps its indexes and takes back
/// what lists say.
void appends(Figures &figures);

} // namespace beadbook::bench
