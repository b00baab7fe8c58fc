#pragma once

#include "records/ledger_checks.hpp"

#include <string>

/// A note beside a record, FILE-walked: up to which entry all were held to the chain, up to which they were
/// counted, and how the file stood then. Whatever changes the file since, by any program, makes the note
/// worth nothing; so does whatever is wrong with the note. It saves a walk, and vouches for nothing: `verify`
/// does not look at it, and who can write it can write the record.
namespace beadbook::walked_note {

/// Nothing where the file is another than it was.
Noted read(const std::string &path);
/// What cannot be written is walked or counted again.
void write(const std::string &path, const Noted &noted);

} // namespace beadbook::walked_note
