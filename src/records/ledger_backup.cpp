// A verified copy of the record, which is there whole or not at all.
#include "measure/text.hpp"
#include "records/ledger_rows.hpp"
#include "records/record_file.hpp"
#include "records/unfinished_file.hpp"

#include <SQLiteCpp/Backup.h>
#include <filesystem>

namespace beadbook {

using namespace ledger_rows;

namespace {

namespace fs = std::filesystem;

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
        UnfinishedFile copy(to, Readers::owner);
        {
            SQLite::Database db(copy.path(), SQLite::OPEN_READWRITE, busy_milliseconds);
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
        if (!copy.finish()) throw StoreError(visible(to) + ": is there already; a backup never overwrites");
        return there;
    });
}

} // namespace beadbook
