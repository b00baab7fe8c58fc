// Whether all that the record vouches for holds: the file, its tables, the chain, each body, texts and
// papers.
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "records/codecs/body_check.hpp"
#include "records/codecs/photo.hpp"
#include "records/ledger_rows.hpp"
#include "records/schema.hpp"
#include "records/walked_note.hpp"

#include <map>
#include <set>

namespace beadbook {

using namespace ledger_rows;

namespace {

class Verifying {
public:
    Verifying(SQLite::Database &db, Verification &out) : db_(db), out_(out) {}

    void run() {
        check_file();
        const int version = db_.execAndGet("PRAGMA user_version").getInt();
        for (const auto &fault : schema::faults(db_, version)) out_.faults.push_back("tables: " + fault);
        // Tables that were changed may not even have the columns that are asked for.
        try {
            check_chain();
            check_texts("criteria", "name, text", " were changed after use");
            check_texts("document", "name, bytes", " was changed");
            check_papers();
            if (version >= first_with_lines) check_lines();
            if (version >= first_with_photos) check_photos();
        } catch (const SQLite::Exception &e) {
            out_.faults.push_back(std::string("tables: ") + e.what());
        }
    }

private:
    void check_file() {
        SQLite::Statement integrity(db_, "PRAGMA integrity_check");
        while (integrity.executeStep())
            if (const auto line = integrity.getColumn(0).getString(); line != "ok")
                out_.faults.push_back("file: " + line);
        SQLite::Statement keys(db_, "PRAGMA foreign_key_check");
        if (keys.executeStep()) out_.faults.emplace_back("file: an entry refers to one that is not there");
    }

    void check_chain() {
        SQLite::Statement query(db_, std::string("SELECT ") + columns + " FROM entry ORDER BY seq");
        while (query.executeStep()) {
            const std::int64_t expected = out_.entries + 1, seq = query.getColumn(0).getInt64();
            if (seq != expected) {
                out_.faults.push_back("entry " + std::to_string(expected) + " is missing");
                return;
            }
            Entry e;
            try {
                e = entry_from(query);
            } catch (const StoreError &fault) {
                out_.faults.emplace_back(fault.what());
                return;
            }
            const std::string name = "entry " + std::to_string(seq) + " does not hold: ";
            const std::string about =
                " (" + shown(e.subject) + ", " + shown(e.kind) + ", " + shown(e.at) + ")";
            if (e.previous != out_.head || hash_of(e) != e.hash) {
                out_.faults.push_back(name + "it was changed after it was written" + about);
                return;
            }
            if (const std::string fault = codec::fault_of_body(e.body); !fault.empty()) {
                out_.faults.push_back(name + fault + about);
                return;
            }
            if (const auto paper = codec::document_of(e)) papers_.emplace_back(seq, *paper);
            if (const auto photo = codec::photo_named_by(e)) photos_.emplace(*photo, seq);
            out_.head = e.hash;
            out_.entries = expected;
            if (e.at < latest_) out_.set_back.push_back(seq);
            latest_ = std::max(latest_, e.at);
        }
        chain_holds_ = true;
    }

    void check_texts(const std::string &table, const std::string &what, const std::string &changed) {
        SQLite::Statement query(db_, "SELECT hash, " + what + " FROM " + table + " ORDER BY hash");
        while (query.executeStep())
            if (sha256(query.getColumn(2).getString()) != query.getColumn(0).getString())
                out_.faults.push_back(table + " " + shown(query.getColumn(1).getString()) + changed);
    }

    void check_papers() {
        SQLite::Statement query(db_, "SELECT 1 FROM document WHERE hash = ?");
        for (const auto &[seq, hash] : papers_) {
            query.reset();
            query.bind(1, hash);
            if (!query.executeStep())
                out_.faults.push_back("entry " + std::to_string(seq) +
                                      ": the document that it rests on is missing");
        }
    }

    /// That the bytes of each photo are there as they were kept, and no others: entry and bytes name each
    /// other.
    void check_photos() {
        check_texts("photo", "substr(hash, 1, 12), bytes", " was changed");
        std::set<std::string> kept;
        SQLite::Statement query(db_, "SELECT hash FROM photo ORDER BY hash");
        while (query.executeStep()) {
            const std::string hash = query.getColumn(0).getString();
            kept.insert(hash);
            // Behind an entry that does not hold nothing was looked at.
            if (chain_holds_ && !photos_.contains(hash))
                out_.faults.push_back("photo " + shown(hash.substr(0, 12)) + " is named by no entry");
        }
        for (const auto &[hash, seq] : photos_)
            if (!kept.contains(hash))
                out_.faults.push_back("entry " + std::to_string(seq) +
                                      ": the photo that it names is missing");
    }

    /// That lists show every coupon, and in its place; what they say of each is for operations to try.
    void check_lines() {
        // By sorting, because a join of the two would look at every pair.
        SQLite::Statement query(
            db_, "WITH began (coupon, first) AS (SELECT subject, min(seq) FROM entry WHERE family = 'coupon' "
                 "GROUP BY subject), line AS (SELECT coupon, first FROM coupon_line) "
                 "SELECT coupon FROM (SELECT * FROM began EXCEPT SELECT * FROM line) UNION "
                 "SELECT coupon FROM (SELECT * FROM line EXCEPT SELECT * FROM began)");
        while (query.executeStep())
            out_.faults.push_back("tables: coupon " + shown(query.getColumn(0).getString()) +
                                  " is not in lists as it is on record");
    }

    SQLite::Database &db_;
    Verification &out_;
    std::vector<std::pair<std::int64_t, std::string>> papers_;
    std::string latest_; ///< time of an entry
    bool chain_holds_ = false;
    std::map<std::string, std::int64_t> photos_; ///< by hash, the first entry that names it
};

} // namespace

Verification Ledger::verify() {
    return guarded(path_, [&] {
        Verification out;
        out.head = no_hash;
        end_moment();
        // As one moment had it, whoever writes meanwhile.
        SQLite::Transaction moment(*db_);
        Verifying(*db_, out).run();
        return out;
    });
}

void Ledger::check_chain() {
    guarded(path_, [&] {
        if (in_transaction_) {
            walked_ = held_to_chain(*db_, path_, walked_);
            return;
        }
        end_moment();
        SQLite::Transaction moment(*db_);
        db_->execAndGet("SELECT count(*) FROM sqlite_schema"); // from here on nobody changes the file
        Noted noted = walked_note::read(path_);
        if (noted.walked && noted.walked->seq >= walked_.seq && knows_entry(*noted.walked))
            walked_ = *noted.walked;
        const Walked to = held_to_chain(*db_, path_, walked_);
        if (!noted.walked || to.hash != noted.walked->hash) {
            noted.walked = to;
            if (to.seq >= 1) walked_note::write(path_, noted);
        }
        walked_ = to;
    });
}

bool Ledger::knows_entry(const Walked &one) { return entry_with_hash(one.hash) == one.seq; }

std::optional<std::int64_t> Ledger::entry_with_hash(const std::string &hash) {
    return guarded(path_, [&]() -> std::optional<std::int64_t> {
        SQLite::Statement query(*db_, "SELECT seq FROM entry WHERE hash = ?");
        query.bind(1, hash);
        if (!query.executeStep()) return std::nullopt;
        return query.getColumn(0).getInt64();
    });
}

} // namespace beadbook
