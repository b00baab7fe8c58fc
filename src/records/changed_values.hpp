#pragma once

#include "records/entry.hpp"

#include <span>
#include <vector>

namespace beadbook {

/// One value that an entry says, beside what was said before it. Empty: not said.
struct ChangedValue {
    std::string name, before, now;
    friend bool operator==(const ChangedValue &, const ChangedValue &) = default;
};

/// What an entry says otherwise than the one it stands for: the one it supersedes, and of a verdict or grade
/// the one before it. Of a first entry all that it says. `history` is all of its subject, oldest first.
/// Hashes, and lists of objects within a body, are left out. Throws StoreError: a body cannot be read.
std::vector<ChangedValue> changed_values(std::span<const Entry> history, const Entry &entry);

/// The same of an exam without who finished it, when, and with how many finds: what else it says otherwise.
std::vector<ChangedValue> changed_beside_finishing(std::span<const Entry> history, const Entry &entry);

/// Whether there is an entry that it stands for.
bool stands_for_another(std::span<const Entry> history, const Entry &entry);

} // namespace beadbook
