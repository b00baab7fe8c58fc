#include "cli/shop.hpp"

#include "measure/text.hpp"
#include "operations/outside_solver.hpp"

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <pwd.h>
#include <unistd.h>

namespace beadbook {
namespace {

constexpr std::size_t largest_file = std::size_t{64} << 20;

std::string read_text(std::istream &in, const std::string &name) {
    std::string text;
    std::vector<char> block(std::size_t{1} << 16);
    while (in.read(block.data(), static_cast<std::streamsize>(block.size())) || in.gcount() > 0) {
        text.append(block.data(), static_cast<std::size_t>(in.gcount()));
        if (text.size() > largest_file) throw DataError(shown(name) + ": larger than 64 MiB");
    }
    if (!valid_utf8(text)) throw DataError(shown(name) + ": not UTF-8 text");
    return text;
}

} // namespace

Shop::Shop(const Args &args, Session &session)
    : args_(args),
      session_(session), outside_{session.now, session.today,
                                  [](const std::string &path) { return read_file(path); },
                                  [](const std::string &path) {
                                      return std::filesystem::absolute(path).lexically_normal().string();
                                  },
                                  outside_solver(session.environment("BEADBOOK_SOLVER"))} {}

Office &Shop::office(Ledger::Mode mode) {
    if (!office_) {
        book_.emplace(book_path(args_, session_), mode);
        office_.emplace(*book_, catalogue_);
    }
    return *office_;
}

std::string Shop::actor() const {
    if (const std::string by = args_.text("by"); !by.empty()) return by;
    if (const std::string user = session_.environment("BEADBOOK_USER"); !user.empty()) return user;
    const passwd *entry = getpwuid(getuid());
    return entry ? entry->pw_name : "";
}

std::string book_path(const Args &args, const Session &session) {
    if (args.has("book")) return args.text("book");
    if (const auto set = session.environment("BEADBOOK_BOOK"); !set.empty()) return set;
    std::string data = session.environment("XDG_DATA_HOME");
    if (data.empty()) {
        const std::string home = session.environment("HOME");
        if (home.empty()) throw StoreError("where is the record? give --book FILE or set BEADBOOK_BOOK");
        data = home + "/.local/share";
    }
    return data + "/beadbook/book.db";
}

std::string read_file(const std::string &path) {
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored))
        throw DataError(shown(path) + ": this is a folder, not a file");
    std::ifstream file(path, std::ios::binary);
    if (!file) throw DataError(shown(path) + ": cannot be read");
    return read_text(file, path);
}

void write_new_file(const std::string &path, const std::string &bytes) {
    std::FILE *file = std::fopen(path.c_str(), "wbx");
    if (!file && errno == EEXIST) throw DataError(shown(path) + ": is there already; nothing is overwritten");
    if (!file) throw StoreError(shown(path) + ": cannot be written");
    const bool whole = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
    if (std::fclose(file) == 0 && whole) return;
    std::error_code ignored;
    std::filesystem::remove(path, ignored);
    throw StoreError(shown(path) + ": cannot be written");
}

std::string read_input(const std::string &path, Session &session) {
    return path == "-" ? read_text(session.in, path) : read_file(path);
}

Source input_named(const std::string &word, Session &session) {
    if (word != "-") return {word};
    return {word, read_input(word, session)};
}

} // namespace beadbook
