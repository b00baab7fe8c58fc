#pragma once

#include "cli/options.hpp"
#include "cli/session.hpp"
#include "operations/source.hpp"
#include "operations/writing.hpp"

#include <optional>

namespace beadbook {

/// What a command works with: the world outside, the catalogue, and the record that --book names, opened on
/// first use.
class Shop {
public:
    Shop(const Args &args, Session &session);
    Shop(const Shop &) = delete;

    const Outside &outside() const { return outside_; }
    Catalogue &catalogue() { return catalogue_; }
    /// The record for reading; `mode` where a command means to write later. The first call opens it.
    Office &office(Ledger::Mode mode = Ledger::Mode::read);
    /// Who acts: --by, else BEADBOOK_USER, else the login name.
    std::string actor() const;

    /// Runs an operation in one transaction and commits it.
    template <class Work>
    auto write(Work work, Ledger::Mode mode = Ledger::Mode::write) {
        Writing writing(office(mode), actor());
        auto out = work(writing);
        writing.commit();
        return out;
    }

private:
    const Args &args_;
    Session &session_;
    Outside outside_;
    Catalogue catalogue_{outside_};
    std::optional<Book> book_;
    std::optional<Office> office_;
};

/// --book, else BEADBOOK_BOOK, else beadbook/book.db in the user's data folder.
std::string book_path(const Args &args, const Session &session);

/// A whole file that is UTF-8 text of at most 64 MiB. Throws DataError.
std::string read_file(const std::string &path);
/// Into a file that must be new, also if another program makes one at the same moment. Throws DataError,
/// StoreError.
void write_new_file(const std::string &path, const std::string &bytes);
/// A whole file, or standard input for "-". Throws DataError as read_file does.
std::string read_input(const std::string &path, Session &session);
/// What a word names: a file, or the text of standard input for "-".
Source input_named(const std::string &word, Session &session);

} // namespace beadbook
