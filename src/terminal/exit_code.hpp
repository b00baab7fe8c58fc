#pragma once

#include "judge/judgement.hpp"
#include "measure/refusal.hpp"

namespace beadbook {

/// What the program ends with; the same meaning for every command, and no option changes one.
enum class ExitCode : int {
    done = 0,     ///< done; a judged coupon is accepted
    rejected = 1, ///< done; a judged coupon is rejected, a plan leaves work uncovered, or one of many coupons
                  ///< does not qualify
    usage = 2,    ///< wrong words on the command line
    bad_data = 3, ///< an input or criteria file, a value or a name cannot be taken; nothing was stored
    store = 4,    ///< the record is busy, damaged, foreign, read-only, or does not verify
    cannot_say = 5,  ///< done; a judged coupon can be neither accepted nor rejected, or there was none
    not_allowed = 6, ///< done; the welder may not do some of the work
    untold = 7,      ///< stored, but what was done could not be printed; it must not be done again
    interrupted = 130,
};

constexpr ExitCode code_of(Verdict verdict) {
    return verdict == Verdict::accept   ? ExitCode::done
           : verdict == Verdict::reject ? ExitCode::rejected
                                        : ExitCode::cannot_say;
}
constexpr ExitCode code_of(Truth truth) {
    return truth == Truth::yes  ? ExitCode::done
           : truth == Truth::no ? ExitCode::rejected
                                : ExitCode::cannot_say;
}
constexpr ExitCode code_of(Refusal::Kind kind) {
    switch (kind) {
    case Refusal::Kind::request: return ExitCode::usage;
    case Refusal::Kind::data: return ExitCode::bad_data;
    case Refusal::Kind::record: break;
    }
    return ExitCode::store;
}

} // namespace beadbook
