#include "records/record_file.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "records/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sqlite3.h>
#include <thread>

namespace beadbook::record_file {
namespace {

namespace fs = std::filesystem;

std::string journal_of(const std::string &path) { return path + "-journal"; }

std::string bytes_at(const std::string &path, std::uint64_t at, std::size_t size) {
    std::ifstream in(path, std::ios::binary);
    std::string out(size, '\0');
    in.seekg(static_cast<std::streamoff>(at));
    in.read(out.data(), static_cast<std::streamsize>(size));
    out.resize(static_cast<std::size_t>(in.gcount()));
    return out;
}

/// Of a record: through SQLite, not by a stream. Whoever closes a file takes away all locks (POSIX) that his
/// process holds on it, and another thread may be writing to this one; SQLite closes it when no lock is left.
std::string record_bytes(const std::string &path, std::uint64_t at, std::size_t size) {
    try {
        SQLite::Database db(path, SQLite::OPEN_READONLY | SQLite::OPEN_NOMUTEX);
        sqlite3_file *file = nullptr;
        sqlite3_int64 all = 0;
        if (sqlite3_file_control(db.getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &file) != SQLITE_OK ||
            !file || !file->pMethods || file->pMethods->xFileSize(file, &all) != SQLITE_OK)
            return "";
        const auto from = static_cast<sqlite3_int64>(at);
        std::string out(
            static_cast<std::size_t>(std::clamp<sqlite3_int64>(all - from, 0, static_cast<int>(size))), '\0');
        if (file->pMethods->xRead(file, out.data(), static_cast<int>(out.size()), from) != SQLITE_OK)
            return "";
        return out;
    } catch (const SQLite::Exception &) {
        return ""; // whoever opens it as a record is told why
    }
}

std::uint32_t number_at(const std::string &bytes, std::size_t at) {
    std::uint32_t out = 0;
    for (std::size_t i = 0; i < 4; ++i) out = out << 8 | static_cast<unsigned char>(bytes[at + i]);
    return out;
}

constexpr std::size_t header_size = 28; ///< of a journal: magic, records, nonce, pages, sector, page size
constexpr std::size_t change_counter_at = 24; ///< in page 1; every write transaction counts it up by one
constexpr std::size_t application_id_at = 68;

/// A journal's first header, if it is one that SQLite would play back.
std::optional<std::string> header_of(const std::string &journal) {
    static const std::string magic("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8);
    const std::string header = bytes_at(journal, 0, header_size);
    if (header.size() < header_size || !header.starts_with(magic)) return std::nullopt;
    return header;
}

/// The change counter that page 1 had before the write that the journal is of.
std::optional<std::uint32_t> counter_before(const std::string &journal, const std::string &header) {
    const std::uint64_t sector = number_at(header, 20), page = number_at(header, 24);
    constexpr std::uint64_t most = 65'536;
    if (sector < header_size || sector > most || page < 512 || page > most) return std::nullopt;
    std::uint64_t at = sector;
    for (std::uint32_t n = number_at(header, 8); n > 0; --n, at += 4 + page + 4) {
        const std::string record = bytes_at(journal, at, 4 + change_counter_at + 4);
        if (record.size() < 4 + change_counter_at + 4) return std::nullopt;
        if (number_at(record, 0) == 1) return number_at(record, 4 + change_counter_at);
    }
    return std::nullopt;
}

bool of_another_file(const std::string &path) {
    using namespace std::chrono_literals;
    // Somebody may be writing at this moment: only what stays as it is was left over.
    constexpr int looks = 5, most_looks = 50;
    for (int look = 0, all = 0; look < looks && all < most_looks; ++look, ++all) {
        const auto header = header_of(journal_of(path));
        if (!header) return false;
        const auto before = counter_before(journal_of(path), *header);
        const std::string page = record_bytes(path, 0, change_counter_at + 4);
        if (!before || page.size() < change_counter_at + 4) return false;
        const std::uint32_t now = number_at(page, change_counter_at);
        if (now == *before || now == *before + 1) return false;
        if (look + 1 < looks) std::this_thread::sleep_for(20ms);
        if (header_of(journal_of(path)) != header) look = -1;
    }
    return true;
}

} // namespace

bool there(const std::string &path) {
    if (path.empty()) throw StoreError("the record has no name; give the path of its file");
    if (path.starts_with(":") || path.starts_with("file:"))
        throw StoreError(visible(path) +
                         ": SQLite keeps no such thing in a file of that name; give the path of " +
                         "a file, ./" + visible(path) + " if it is really called so");
    if (path.find('\0') != std::string::npos) throw StoreError(visible(path) + ": no file is called so");
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (status.type() == fs::file_type::not_found) return false;
    if (status.type() == fs::file_type::none)
        throw StoreError(visible(path) + ": cannot be looked at: " + error.message());
    if (fs::is_directory(status)) throw StoreError(visible(path) + ": this is a folder, not a record file");
    if (!fs::is_regular_file(status))
        throw StoreError(visible(path) + ": this is a pipe or device, not a record file");
    const std::string head = record_bytes(path, 0, 16);
    if (!head.empty() && head != std::string("SQLite format 3\0", 16))
        throw StoreError(visible(path) + ": this file is no record of ours");
    return true;
}

bool has_journal(const std::string &path) {
    std::error_code error;
    const auto size = fs::file_size(journal_of(path), error);
    return !error && size > 0;
}

void refuse_foreign_journal(const std::string &path) {
    if (has_journal(path) && of_another_file(path))
        throw StoreError(
            visible(path) + ": beside it lies " + visible(journal_of(path)) +
            ", left by a write to another file that was broken off; it would be written into this " +
            "one and damage it. If this is a backup in the place of a record, move the journal " +
            "away first");
}

void refuse_leftovers(const std::string &path) {
    for (const char *ending : {"-journal", "-wal", "-shm"}) {
        std::error_code error;
        if (fs::exists(fs::symlink_status(path + ending, error)))
            throw StoreError(visible(path) + ": beside it lies " + visible(path + ending) +
                             ", left by another file of that name; move it away, or take another name");
    }
}

bool is_reading_copy(const std::string &path) {
    const std::string id = record_bytes(path, application_id_at, 4);
    return id.size() == 4 && number_at(id, 0) == schema::reading_copy_id;
}

bool in_wal(const std::string &path) {
    const std::string version = record_bytes(path, 18, 2);
    return version.size() == 2 && (version[0] == 2 || version[1] == 2);
}

} // namespace beadbook::record_file
