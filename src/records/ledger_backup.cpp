// A verified copy of the record, which is there whole or not at all.
#include "measure/text.hpp"
#include "records/ledger_rows.hpp"
#include "records/record_file.hpp"

#include <SQLiteCpp/Backup.h>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <unistd.h>

namespace beadbook {

using namespace ledger_rows;

namespace {

namespace fs = std::filesystem;

/// A new file beside the one that is to come, which goes unless it was given its name.
class Unfinished {
public:
    explicit Unfinished(std::string to) : to_(std::move(to)), path_(to_ + ".unfinished-XXXXXX") {
        const int file = mkstemp(path_.data());
        if (file < 0)
            throw StoreError(visible(to_) + ": cannot be written: " +
                             std::error_code(errno, std::generic_category()).message());
        close(file);
    }
    ~Unfinished() {
        std::error_code ignored;
        if (!path_.empty()) fs::remove(path_, ignored);
    }
    Unfinished(const Unfinished &) = delete;
    Unfinished &operator=(const Unfinished &) = delete;

    const std::string &path() const { return path_; }

    /// Gives it its name, never that of a file that is there: also of one that came meanwhile.
    void finish() {
        bool named = link(path_.c_str(), to_.c_str()) == 0;
        const int why = errno;
        if (!named && why != EEXIST && access(to_.c_str(), F_OK) != 0) // a stick's file system has no links
            named = std::rename(path_.c_str(), to_.c_str()) == 0;
        if (!named)
            throw StoreError(visible(to_) +
                             (why == EEXIST ? ": is there already; a backup never overwrites"
                                            : ": cannot be written: " +
                                                  std::error_code(why, std::generic_category()).message()));
        std::error_code ignored;
        fs::remove(path_, ignored);
        path_.clear();
        const fs::path folder = fs::path(to_).parent_path();
        if (const int at = open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY); at >= 0) {
            fsync(at); // the name too
            close(at);
        }
    }

private:
    std::string to_, path_;
};

} // namespace

Verification Ledger::backup(const std::string &to) {
    std::error_code ignored;
    if (fs::is_regular_file(to, ignored))
        throw DataError(visible(to) + ": is there already; a backup never overwrites");
    if (record_file::there(to)) // a folder, a device: it says which
        throw StoreError(visible(to) + ": is there already; a backup never overwrites");
    if (const fs::path folder = fs::path(to).parent_path(); !folder.empty() && !fs::exists(folder, ignored))
        throw DataError(visible(to) + ": cannot be written, there is no folder " + visible(folder.string()));
    record_file::refuse_leftovers(to);
    return guarded(to, [&] {
        Unfinished copy(to);
        {
            SQLite::Database db(copy.path(), SQLite::OPEN_READWRITE, busy_milliseconds);
            db.exec("PRAGMA synchronous = EXTRA");
            SQLite::Backup run(db, *db_);
            run.executeStep(-1);
        }
        Verification there;
        {
            Ledger written(copy.path(), Mode::inspect);
            there = written.verify();
        }
        if (!there.faults.empty())
            throw StoreError(visible(to) + ": the copy does not verify: " + there.faults.front());
        // Who may read the record may read its copy, and nobody else.
        std::error_code ignored;
        if (const auto as = fs::status(path_, ignored); !ignored)
            fs::permissions(copy.path(), as.permissions(), ignored);
        copy.finish();
        return there;
    });
}

} // namespace beadbook
