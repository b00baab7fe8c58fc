#pragma once

#include "operations/writing.hpp"
#include "temporary.hpp"

#include <filesystem>
#include <functional>
#include <string>

namespace beadbook::test {

/// A desk to work at: a record in a folder of its own, a fixed clock, real files.
class Desk {
public:
    Desk()
        : outside_{[] { return std::string("2026-11-25T10:00:00Z"); }, [] { return parse_day("2026-11-25"); },
                   [](const std::string &path) {
                       if (!std::filesystem::is_regular_file(path))
                           throw DataError(path + ": cannot be read");
                       return read_file(path);
                   },
                   [](const std::string &path) {
                       return std::filesystem::absolute(path).lexically_normal().string();
                   }},
          catalogue_(outside_), book_(folder_.file("book.db"), Ledger::Mode::create),
          office_(book_, catalogue_) {}

    const Outside &outside() const { return outside_; }
    Catalogue &catalogue() { return catalogue_; }
    Book &book() { return book_; }
    Office &office() { return office_; }
    std::string file(const std::string &name) const { return folder_.file(name); }

    /// One transaction, committed if nothing is thrown.
    void write(const std::function<void(Writing &)> &work, const std::string &who = "tester") {
        Writing writing(office_, who);
        work(writing);
        writing.commit();
    }

private:
    TemporaryFolder folder_;
    Outside outside_;
    Catalogue catalogue_;
    Book book_;
    Office office_;
};

} // namespace beadbook::test
