#pragma once

#include "figures.hpp"

namespace beadbook::bench {

/// Twenty browsers at once at a bench over a large record, each carrying exams through and looking at pages
/// in between: with a breath between requests as people take it, many times as quick, and without any. Every
/// write is durable. Also what the server takes of memory, and the first page of bytes.
void under_load(Figures &figures);

} // namespace beadbook::bench
