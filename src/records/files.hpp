#pragma once

#include <iosfwd>
#include <string>

namespace beadbook {

/// The rest of a stream, UTF-8 text of at most 64 MiB. Throws DataError with the name.
std::string read_text(std::istream &in, const std::string &name);
/// A whole file, as read_text. Throws DataError.
std::string read_file(const std::string &path);
/// At most so many bytes of a file, of any kind. Throws DataError.
std::string read_bytes(const std::string &path, std::size_t most);
/// Into a file that must be new, also if another program makes one at the same moment. Throws DataError,
/// StoreError.
void write_new_file(const std::string &path, const std::string &bytes);

} // namespace beadbook
