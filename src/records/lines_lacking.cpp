#include "records/lines_lacking.hpp"

#include "records/walked_note.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <map>
#include <mutex>
#include <tuple>

namespace beadbook {
namespace {

/// A record in which nothing lacked: its newest entry then, and the number of its coupons.
struct Look {
    std::int64_t newest = 0, coupons = 0;
    std::string hash; ///< of that entry, by which it is known to be still the same
};

class Looks {
public:
    Look at(const std::string &path) {
        const std::lock_guard lock(mutex_);
        const auto found = looks_.find(path);
        return found == looks_.end() ? Look{} : found->second;
    }
    void keep(const std::string &path, Look look) {
        const std::lock_guard lock(mutex_);
        looks_[path] = std::move(look);
    }

private:
    std::mutex mutex_;
    std::map<std::string, Look> looks_;
};

Looks &looks() {
    static Looks all;
    return all;
}

/// What all entries say.
constexpr const char *count_all = "SELECT count(DISTINCT subject) FROM entry WHERE family = 'coupon'";
/// The same from an entry on, where that is still the one that was looked at; else what no record has. By
/// number, because few came since; an index would be gone through whole.
constexpr const char *count_newer =
    "SELECT CASE WHEN EXISTS (SELECT 1 FROM entry WHERE seq = ?1 AND hash = ?2) THEN ?3 + (SELECT count(*) "
    "FROM "
    "entry NOT INDEXED WHERE seq > ?1 AND kind = 'coupon' AND supersedes IS NULL) ELSE -1 END";

/// What lacks, and the record as it is now.
std::pair<std::int64_t, Look> counted(SQLite::Database &db, const Look &before) {
    const bool newer = before.newest > 0;
    SQLite::Statement query(db, std::string("SELECT (") + (newer ? count_newer : count_all) +
                                    "), (SELECT count(*) FROM coupon_line), (SELECT max(seq) FROM entry), "
                                    "(SELECT hash FROM entry ORDER BY seq DESC LIMIT 1)");
    if (newer) {
        query.bind(1, before.newest);
        query.bind(2, before.hash);
        query.bind(3, before.coupons);
    }
    query.executeStep();
    const std::int64_t coupons = query.getColumn(0).getInt64(), lines = query.getColumn(1).getInt64();
    return {coupons - lines, {query.getColumn(2).getInt64(), lines, query.getColumn(3).getString()}};
}

} // namespace

std::int64_t lines_lacking(SQLite::Database &db, const std::string &path, bool may_note) {
    Noted noted = may_note ? walked_note::read(path) : Noted{};
    Look before = looks().at(path);
    if (const auto &known = noted.counted; known && known->coupons >= 0) {
        // The file is as it was then: nothing came to it, and nothing went.
        SQLite::Statement newest(db, "SELECT hash FROM entry ORDER BY seq DESC LIMIT 1");
        if (newest.executeStep() && newest.getColumn(0).getString() == known->hash) return 0;
        if (before.newest == 0) before = {known->entries, known->coupons, known->hash};
    }
    auto [lacks, now] = counted(db, before);
    // Whatever does not fit is counted from the beginning, before anybody is told of it.
    if (lacks != 0 && before.newest > 0) std::tie(lacks, now) = counted(db, {});
    if (lacks != 0) return lacks;
    if (may_note && now.newest >= worth_noting) {
        noted.counted = Counted{now.newest, now.hash, now.coupons};
        walked_note::write(path, noted);
    }
    looks().keep(path, std::move(now));
    return 0;
}

} // namespace beadbook
