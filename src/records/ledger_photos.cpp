// The bytes of photographs, by their content.
#include "measure/sha256.hpp"
#include "records/ledger_rows.hpp"
#include "records/ledger_statements.hpp"

namespace beadbook {

using namespace ledger_rows;

std::string Ledger::keep_photo(const std::string &bytes) {
    const std::string hash = sha256(bytes);
    guarded(path_, [&] {
        auto add = statement("INSERT OR IGNORE INTO photo (hash, bytes) VALUES (?, ?)");
        add->bind(1, hash);
        add->bind(2, bytes.data(), static_cast<int>(bytes.size()));
        add->exec();
    });
    // What a trigger of somebody else's ignores is no error to SQLite.
    if (photo(hash) != bytes) throw StoreError(path_ + ": the photo was not taken; nothing was stored");
    return hash;
}

bool Ledger::has_photo(const std::string &hash) {
    return guarded(path_, [&] {
        if (version() < first_with_photos) return false;
        auto query = statement("SELECT 1 FROM photo WHERE hash = ?");
        query->bind(1, hash);
        return query->executeStep();
    });
}

std::optional<std::string> Ledger::photo(const std::string &hash) {
    if (!has_photo(hash)) return std::nullopt;
    std::string bytes = guarded(path_, [&] {
        auto query = statement("SELECT bytes FROM photo WHERE hash = ?");
        query->bind(1, hash);
        query->executeStep();
        return query->getColumn(0).getString();
    });
    if (sha256(bytes) != hash)
        throw StoreError(path_ + ": photo " + hash.substr(0, 12) + " was changed after it was kept");
    return bytes;
}

} // namespace beadbook
