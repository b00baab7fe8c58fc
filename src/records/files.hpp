#pragma once

#include <cstdint>
#include <cstdio>
#include <iosfwd>
#include <string>
#include <string_view>

namespace beadbook {

/// The rest of a stream, UTF-8 text of at most 64 MiB. Throws DataError with the name.
std::string read_text(std::istream &in, const std::string &name);
/// A whole file, as read_text. Throws DataError.
std::string read_file(const std::string &path);
/// At most so many bytes of a file, of any kind. Throws DataError.
std::string read_bytes(const std::string &path, std::size_t most);
/// Who may read a new file: as the user's files usually are, or its owner alone.
enum class Readers : std::uint8_t { as_usual, owner };
/// A file that must be new, also if another program makes one at the same moment; it is gone again if it is
/// not finished.
class NewFile {
public:
    /// Throws DataError, StoreError.
    explicit NewFile(std::string path, Readers readers = Readers::as_usual);
    ~NewFile();
    NewFile(const NewFile &) = delete;
    NewFile &operator=(const NewFile &) = delete;
    void write(std::string_view bytes);
    /// Throws StoreError: not all of it could be written.
    void finish();

private:
    std::string path_;
    std::FILE *file_;
    bool whole_ = true;
};
/// Whether all of a file, or of the list of a folder, is on the disk now.
bool brought_to_disk(const std::string &path);
/// The same of the name of a file or folder, where it can be.
void bring_name_to_disk(const std::string &path);
/// A whole file at once. Throws as NewFile does.
void write_new_file(const std::string &path, const std::string &bytes, Readers readers = Readers::as_usual);

} // namespace beadbook
