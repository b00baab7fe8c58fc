#pragma once

#include "measure/refusal.hpp"
#include "records/entry.hpp"
#include "records/ledger_checks.hpp"

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace SQLite {
class Database;
class Exception;
class Savepoint;
class Transaction;
} // namespace SQLite

namespace beadbook {

class InUse;

/// What `verify` found. `entries` and `head` can be noted elsewhere, which also proves that nothing was cut
/// off at the end.
struct Verification {
    std::int64_t entries = 0;
    std::string head;
    std::vector<std::string>
        faults; ///< of the file, of its tables, the first entry that does not hold, texts
    std::vector<std::int64_t> set_back = {}; ///< entries whose clock was behind one before them
};

/// The record file: append-only, hash-chained, one SQLite database.
///
/// Rollback journal and synchronous=EXTRA, not WAL: SQLite up to 3.51.2 can corrupt a WAL file when two
/// connections checkpoint at once, Debian 12 ships 3.40.1, and a thousand durable commands a second are
/// plenty.
class Ledger {
    struct Appended {
        std::int64_t first = 0, count = 0;
        std::string hash;         ///< of the last
        std::int64_t coupons = 0; ///< that begin with one of them
    };

public:
    /// `inspect` is for `verify` alone: it reads also where the tables were changed, to name what is wrong.
    enum class Mode { read, write, create, inspect };
    /// Throws StoreError: not there, not ours, newer than this program, read-only, damaged, changed behind
    /// the program (its tables; before writing also the newest entries), busy. Reading never changes the
    /// file, but where a write was broken off it is cleaned up, as SQLite does it.
    Ledger(const std::string &path, Mode mode);
    ~Ledger();
    Ledger(Ledger &&) noexcept;

    /// One transaction that begins IMMEDIATE: all that is appended in it is stored by commit(), or nothing.
    /// Within another one it is a part of that: what it commits is stored once the other commits, and what it
    /// does not is rolled back alone.
    class Transaction {
    public:
        explicit Transaction(Ledger &ledger);
        ~Transaction(); ///< rolls back what was not committed
        void commit();

    private:
        void begin_part();
        void commit_whole();

        Ledger &ledger_;
        std::unique_ptr<SQLite::Transaction> whole_;
        std::unique_ptr<SQLite::Savepoint> part_; ///< within another one
        std::optional<Appended> before_part_;
    };

    /// While it stands all is read as one moment had it, and the file is not asked before each look whether
    /// somebody wrote: that takes longer than most looks. Nobody can commit meanwhile, so it is for one
    /// coupon, and never for what waits for a reader. One within another or within a Transaction is a part of
    /// that; a Transaction that begins ends it.
    class Moment {
    public:
        explicit Moment(Ledger &ledger);
        ~Moment();
        Moment(const Moment &) = delete;

    private:
        Ledger &ledger_;
        bool outermost_;
    };

    /// What an entry may be about.
    enum class About : std::uint8_t { anything, no_coupon };
    /// A number that becomes another one with each entry, by whomever: with any, or with those that are about
    /// no coupon but about people, welders, equipment and criteria.
    std::uint64_t state(About about = About::anything);

    /// Whether opening it began a new record.
    bool began() const { return began_; }

    /// Adds a line; fills in seq, previous and hash. Only inside a Transaction.
    Entry append(Entry entry);
    /// Only inside a Transaction.
    void keep_criteria(const std::string &hash, const std::string &name, const std::string &text);

    /// What was sent under a key, and how it was answered. Only inside a Transaction, so that it is kept with
    /// what it entered or not at all.
    struct Sent {
        std::string hash, answer;
    };
    std::optional<Sent> sent(const std::string &key);
    void keep_sent(const std::string &key, const Sent &sent);

    /// The subjects of a family that were written about after that entry, in the order in which they first
    /// were, and the number of the newest entry of all.
    struct Changes {
        std::int64_t newest = 0;
        std::vector<std::string> subjects;
    };
    Changes changes_after(std::int64_t seq, Family family);

    /// Keeps a paper by its content and returns its SHA-256.
    std::string keep_document(const std::string &name, const std::string &bytes);

    /// Keeps the bytes of a photograph by their content and returns their SHA-256; the same ones once. Only
    /// inside a Transaction, with the entry that names them.
    std::string keep_photo(const std::string &bytes);
    bool has_photo(const std::string &hash);
    /// Throws StoreError: they were changed after they were kept.
    std::optional<std::string> photo(const std::string &hash);

    /// What lists say of a coupon: derived, kept so that a list need not judge. Each entry about the coupon
    /// takes it back.
    struct Line {
        std::int64_t first = 0; ///< the coupon's first entry
        std::string coupon;
        std::string basis, body; ///< empty: nothing is kept, or what is kept was changed
        bool changed = false;    ///< the latter
    };
    /// Which lines: those after an entry in the order of registration (before it where it goes `backwards`),
    /// at most so many. A coupon of which is kept that it is of another cohort or class is left out.
    struct LinesAsked {
        std::int64_t from = 0;
        bool backwards = false;
        std::int64_t most = 500;
        std::string cohort = {}, class_id = {};
    };
    std::vector<Line> lines(const LinesAsked &asked);
    /// Of these coupons, in their order; `first` is 0 where there is none.
    std::vector<Line> lines_of(const std::vector<std::string> &coupons);
    std::optional<Line> line(const std::string &coupon);
    /// How many of the first lines, at most so many, are not kept on a basis that begins so.
    std::int64_t lines_without(const std::string &basis, std::int64_t among);
    struct KeptLine {
        std::string coupon, welder, cohort, class_id, basis, body;
    };
    /// Only inside a Transaction.
    void keep_line(const KeptLine &line);
    /// Whether lines can be kept here: not in a record of an older version that is only read.
    bool keeps_lines();
    /// Throws StoreError where the lines are not of as many coupons as the entries: a list would look whole.
    void check_no_line_lacks();

    bool knows(Family family, const std::string &subject);
    std::vector<Entry> entries_of(Family family, const std::string &subject);
    /// The number of the subject's newest entry; 0 if it has none.
    std::int64_t last_entry_of(Family family, const std::string &subject);
    /// The same of all its subjects.
    std::int64_t last_entry_of(Family family);
    std::vector<std::string> subjects(Family family);
    /// Coupons that name this welder, or once did, in the order in which they were registered.
    std::vector<std::string> coupons_of(const std::string &welder);
    /// The newest exam on record by this examiner with this method that nothing took the place of.
    std::optional<Entry> last_exam_by(const std::string &examiner, const std::string &method);
    /// Coupons with an exam by this examiner, or once by.
    std::vector<std::string> coupons_examined_by(const std::string &examiner);
    bool has_examined(const std::string &examiner);
    /// All who ever stood as the examiner of an exam, or the welder of a coupon, as they were written.
    std::vector<std::string> examiners();
    std::vector<std::string> welders_named();
    /// Marks of welders of whom something was said otherwise than before.
    std::vector<std::string> welders_changed();
    /// All cohorts that a coupon was ever said to be of.
    std::vector<std::string> cohorts_named();
    bool names_cohort(const std::string &cohort);
    /// Coupons that were registered like another, in the order in which they were, each behind that one.
    std::vector<std::pair<std::string, std::string>> registered_like();
    /// Coupons that failed on the record that they were imported from, each with the welder named there.
    std::vector<std::pair<std::string, std::string>> failed_elsewhere();
    /// A coupon whose welder has a name on the record that it was imported from.
    struct WelderElsewhere {
        std::string coupon, welder; ///< as he is named here, or was
        std::string name;           ///< there
    };
    std::vector<WelderElsewhere> welders_elsewhere();
    /// Coupons with an exam by equipment of this serial number, or once by; capitals do not matter.
    std::vector<std::string> coupons_examined_with(const std::string &serial);
    struct Document {
        std::string name, bytes;
    };
    std::optional<Document> document(const std::string &hash);
    /// The hash of the newest entry.
    std::string head();
    std::optional<std::string> criteria_text(const std::string &hash);
    /// That every entry stands as it was written, before somebody is said to be qualified by them: much less
    /// than `verify` looks at, and not where the file is as it was when it was walked. Throws StoreError.
    void check_chain();
    /// Throws StoreError only where nothing can be read at all.
    Verification verify();
    /// The number of the entry that has the hash.
    std::optional<std::int64_t> entry_with_hash(const std::string &hash);
    /// A consistent copy, verified: returns what the copy holds. Throws StoreError; never overwrites a file,
    /// and leaves none that does not verify.
    Verification backup(const std::string &to);
    /// From now on nothing is entered here: whoever opens it to write is refused.
    void make_reading_copy();

private:
    void migrate(int version);
    /// That what was appended in this transaction is there to be read.
    void check_appended();
    bool ends_with(const std::string &hash);
    std::string newest_hash();
    void forget_head() { head_held_ = false; }
    void end_moment();
    bool knows_entry(const Walked &one);
    /// The first column of a query, with its one parameter if it has one.
    std::vector<std::string> texts(const std::string &sql, const std::string &given = {});
    /// The first two columns of a query.
    std::vector<std::pair<std::string, std::string>> pairs(const std::string &sql);
    int version();
    /// A statement that is prepared once; not for texts that seldom come again.
    InUse statement(std::string_view sql);
    struct Prepared;

    std::string path_;
    Walked walked_;
    std::set<std::string> texts_kept_; ///< in the transaction that is open, by their hash
    Noted noted_;                      ///< at the begin of the transaction that is open
    bool began_ = false;
    bool in_transaction_ = false;
    bool in_moment_ = false;
    bool head_held_ = false; ///< whether `head_` is the newest hash, as nobody can have written since
    std::string head_;       ///< the newest hash that was seen here
    std::uint64_t entries_seen_ = 0, others_seen_ = 0; ///< see state()
    std::optional<Appended> appended_;                 ///< in the transaction that is open
    std::unique_ptr<SQLite::Database> db_;
    std::unique_ptr<Prepared> prepared_; ///< goes before the database
};

/// What people read for an SQLite error.
StoreError store_error(const std::string &path, const SQLite::Exception &e);

} // namespace beadbook
