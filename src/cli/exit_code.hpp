#pragma once

namespace beadbook {

/// What the program ends with; the same meaning for every command, and no option changes one.
enum class ExitCode : int {
    done = 0,       ///< done; a judged coupon is accepted
    rejected = 1,   ///< done; a judged coupon is rejected, or a plan leaves work uncovered
    usage = 2,      ///< wrong words on the command line
    bad_data = 3,   ///< an input or criteria file, a value or a name cannot be taken; nothing was stored
    store = 4,      ///< the record is busy, damaged, foreign, read-only, or does not verify
    cannot_say = 5, ///< done; a judged coupon can be neither accepted nor rejected
    interrupted = 130,
};

} // namespace beadbook
