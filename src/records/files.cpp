#include "records/files.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>
#include <vector>

namespace beadbook {
namespace {

constexpr std::size_t largest_file = std::size_t{64} << 20;

/// Streams of this process, by the names that a shell gives them: <(command) and /dev/stdin.
bool is_own_stream(const std::string &path) {
    return path.starts_with("/dev/fd/") || path.starts_with("/proc/self/fd/") || path == "/dev/stdin";
}

/// Not a pipe that nobody writes into, nor a device: reading would wait for ever.
std::ifstream opened(const std::string &path) {
    std::error_code ignored;
    const auto status = std::filesystem::status(path, ignored);
    if (std::filesystem::is_directory(status))
        throw DataError(shown(path) + ": this is a folder, not a file");
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status) && !is_own_stream(path))
        throw DataError(shown(path) +
                        ": this is a pipe or device, not a file; give its text on standard input");
    if (!std::filesystem::exists(status) && status.type() == std::filesystem::file_type::not_found)
        throw DataError(shown(path) + ": cannot be read, there is no such file");
    std::ifstream file(path, std::ios::binary);
    if (!file)
        throw DataError(shown(path) + ": cannot be read" +
                        (errno == EACCES ? ", this user has no right to" : ""));
    return file;
}

/// The first line that is no UTF-8.
std::string bad_line(const std::string &text) {
    int number = 1;
    for (std::size_t at = 0; at < text.size(); ++number) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view line = std::string_view(text).substr(at, end - at);
        if (!valid_utf8(line)) return "line " + std::to_string(number) + ", '" + shown(line) + "'";
        at = end + 1;
    }
    return "its line ends";
}

} // namespace

std::string read_text(std::istream &in, const std::string &name) {
    std::string text;
    std::vector<char> block(std::size_t{1} << 16);
    while (in.read(block.data(), static_cast<std::streamsize>(block.size())) || in.gcount() > 0) {
        text.append(block.data(), static_cast<std::size_t>(in.gcount()));
        if (text.size() > largest_file)
            throw DataError(shown(name) + ": larger than 64 MiB, the most that is read at once");
    }
    if (!valid_utf8(text))
        throw DataError(shown(name) + ": not UTF-8 text: " + bad_line(text) + "; save it as UTF-8");
    return text;
}

std::string read_file(const std::string &path) {
    std::ifstream file = opened(path);
    return read_text(file, path);
}

std::string read_bytes(const std::string &path, std::size_t most) {
    std::ifstream file = opened(path);
    std::string bytes;
    // In pieces: `most` is what is taken at the most, and mostly far more than there is.
    for (std::array<char, 65'536> piece; file && bytes.size() < most;) {
        file.read(piece.data(), static_cast<std::streamsize>(std::min(piece.size(), most - bytes.size())));
        bytes.append(piece.data(), static_cast<std::size_t>(file.gcount()));
    }
    if (file.bad()) throw DataError(shown(path) + ": cannot be read");
    return bytes;
}

NewFile::NewFile(std::string path, Readers readers)
    : path_(std::move(path)), file_(std::fopen(path_.c_str(), "wbx")) {
    if (file_ && (readers == Readers::as_usual || fchmod(fileno(file_), S_IRUSR | S_IWUSR) == 0)) return;
    if (errno == EEXIST) throw DataError(shown(path_) + ": is there already; nothing is overwritten");
    if (errno == ENOENT) throw DataError(shown(path_) + ": cannot be written, there is no such folder");
    throw StoreError(shown(path_) + ": cannot be written");
}

NewFile::~NewFile() {
    if (!file_) return;
    std::fclose(file_);
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
}

void NewFile::write(std::string_view bytes) {
    whole_ = whole_ && std::fwrite(bytes.data(), 1, bytes.size(), file_) == bytes.size();
}

void NewFile::finish() {
    const bool closed = std::fclose(std::exchange(file_, nullptr)) == 0;
    if (closed && whole_) return;
    std::error_code ignored;
    std::filesystem::remove(path_, ignored);
    throw StoreError(shown(path_) + ": cannot be written");
}

bool brought_to_disk(const std::string &path) {
    const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0) return false;
    const bool done = fsync(file) == 0;
    close(file);
    return done;
}

void bring_name_to_disk(const std::string &path) {
    const auto folder = std::filesystem::path(path).parent_path();
    brought_to_disk(folder.empty() ? "." : folder.string());
}

void write_new_file(const std::string &path, const std::string &bytes, Readers readers) {
    NewFile file(path, readers);
    file.write(bytes);
    file.finish();
}

} // namespace beadbook
