#pragma once

#include <string>

/// The file that a record stands in, before SQLite looks at it.
namespace beadbook::record_file {

/// Whether there is something by this name. Throws StoreError where no record can be: a name that SQLite
/// takes for something else (none at all, :memory:, file:...), a folder, a pipe or device, a file of another
/// kind, a folder that may not be searched.
bool there(const std::string &path);

/// Throws StoreError if a journal lies beside it that another file left: SQLite would write that file's pages
/// into this one. So it is where a backup is copied into the place of a record in which a write was broken
/// off.
void refuse_foreign_journal(const std::string &path);

/// Whether a journal lies beside it: somebody is writing, or a write was broken off.
bool has_journal(const std::string &path);

/// Throws StoreError if what was left of another file lies in the way of a new one by this name.
void refuse_leftovers(const std::string &path);

/// Whether the file says of itself that it is written through a WAL, which this program never asks for.
bool in_wal(const std::string &path);

/// Whether the file says of itself that it is a copy that is only read.
bool is_reading_copy(const std::string &path);

} // namespace beadbook::record_file
