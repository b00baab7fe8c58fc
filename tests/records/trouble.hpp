#pragma once

#include "records/ledger.hpp"

#include <string>

namespace beadbook::test {

/// What opening a record and walking it says: "holds", or the first fault, or why it cannot be opened.
inline std::string trouble(const std::string &path, Ledger::Mode mode = Ledger::Mode::inspect) {
    try {
        Ledger ledger(path, mode);
        const auto v = ledger.verify();
        return v.faults.empty() ? "holds" : v.faults.front();
    } catch (const Refusal &e) {
        return e.what();
    }
}

} // namespace beadbook::test
