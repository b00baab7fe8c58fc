#pragma once

#include "facts/owners_copy_record.hpp"
#include "records/entry.hpp"

#include <optional>

namespace beadbook::codec {

/// As a new entry about the set.
Entry entry_of(const ConfirmationRecord &confirmation);
Entry entry_of(const FillingRecord &filling);
/// Throws StoreError: stored by a newer program, or a part is not there.
ConfirmationRecord confirmation_from(const Entry &entry);
FillingRecord filling_from(const Entry &entry);

} // namespace beadbook::codec
