#pragma once

#include "operations/coupon_lines.hpp"
#include "temporary.hpp"

#include <filesystem>

namespace beadbook::test {

/// The world outside with a fixed clock and real files.
inline Outside still_outside() {
    return {
        [] { return std::string("2026-11-25T10:00:00Z"); }, [] { return parse_day("2026-11-25"); },
        [](const std::string &path) {
            if (!std::filesystem::exists(path)) throw DataError(path + ": cannot be read");
            return read_file(path);
        },
        [](const std::string &path) { return std::filesystem::absolute(path).lexically_normal().string(); }};
}

/// An open record with all that operations need.
class OpenBook {
public:
    OpenBook(const std::string &path, Ledger::Mode mode) : book(path, mode) {}

    /// Runs an operation in a transaction of its own and commits it.
    template <class Work>
    auto write(Work work, const std::string &who = "tester") {
        Writing writing(office, who);
        if constexpr (std::is_void_v<decltype(work(writing))>) {
            carry_out(writing, work);
            commit(writing);
        } else {
            auto out = carry_out(writing, work);
            commit(writing);
            return out;
        }
    }

    Outside outside = still_outside();
    Catalogue catalogue{outside};
    Book book;
    Office office{book, catalogue};
};

/// The same in a folder of its own.
class Desk : private TemporaryFolder, public OpenBook {
public:
    Desk() : OpenBook(TemporaryFolder::file("book.db"), Ledger::Mode::create) {}
    using TemporaryFolder::file;
    std::string path() const { return file("book.db"); }
};

} // namespace beadbook::test
