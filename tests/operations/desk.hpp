#pragma once

#include "operations/writing.hpp"
#include "temporary.hpp"

#include <filesystem>

namespace beadbook::test {

/// A record in a folder of its own with a fixed clock, for operations under test.
class Desk {
public:
    Desk()
        : outside{[] { return std::string("2026-11-25T10:00:00Z"); }, [] { return parse_day("2026-11-25"); },
                  [](const std::string &path) {
                      if (!std::filesystem::exists(path)) throw DataError(path + ": cannot be read");
                      return read_file(path);
                  },
                  [](const std::string &path) {
                      return std::filesystem::absolute(path).lexically_normal().string();
                  }} {}

    /// Runs an operation in a transaction of its own and commits it.
    template <class Work>
    auto write(Work work, const std::string &who = "tester") {
        Writing writing(office, who);
        if constexpr (std::is_void_v<decltype(work(writing))>) {
            work(writing);
            writing.commit();
        } else {
            auto out = work(writing);
            writing.commit();
            return out;
        }
    }

    std::string path() const { return folder_.file("book.db"); }
    std::string file(const std::string &name) const { return folder_.file(name); }

private:
    TemporaryFolder folder_;

public:
    Outside outside;
    Catalogue catalogue{outside};
    Book book{folder_.file("book.db"), Ledger::Mode::create};
    Office office{book, catalogue};
};

} // namespace beadbook::test
