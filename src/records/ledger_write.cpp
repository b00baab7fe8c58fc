// Transactions, and what is appended in them.
#include "records/ledger_rows.hpp"
#include "records/ledger_statements.hpp"
#include "records/walked_note.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <SQLiteCpp/Savepoint.h>
#include <sqlite3.h>
#include <utility>

namespace beadbook {

using namespace ledger_rows;

Ledger::~Ledger() = default;
Ledger::Ledger(Ledger &&) noexcept = default;

Ledger::Transaction::Transaction(Ledger &ledger) : ledger_(ledger) {
    guarded(ledger.path_, [&] {
        if (ledger.in_transaction_) return begin_part();
        ledger.appended_.reset(); // of one that was rolled back
        ledger.end_moment();
        ledger.forget_head();
        ledger.texts_kept_.clear();
        whole_ = std::make_unique<SQLite::Transaction>(*ledger.db_, SQLite::TransactionBehavior::IMMEDIATE);
        ledger.in_transaction_ = true;
        ledger.noted_ = walked_note::read(ledger.path_);
    });
}

void Ledger::Transaction::begin_part() {
    // Where the disk is full, say, SQLite rolls the whole back by itself; a part would begin one of its own
    // then.
    if (sqlite3_get_autocommit(ledger_.db_->getHandle()) != 0)
        throw StoreError(ledger_.path_ + ": what this belongs to could not be stored; nothing was stored");
    before_part_ = ledger_.appended_;
    part_ = std::make_unique<SQLite::Savepoint>(*ledger_.db_, "part");
}

Ledger::Transaction::~Transaction() {
    if (whole_) ledger_.in_transaction_ = false;
    if (whole_ || part_) ledger_.forget_head();
    if (!part_) return;
    ledger_.appended_ = before_part_;
    ledger_.texts_kept_.clear();
}

void Ledger::Transaction::commit() {
    guarded(ledger_.path_, [&] {
        if (!part_) return commit_whole();
        part_->release();
        part_.reset();
    });
}

void Ledger::Transaction::commit_whole() {
    const auto all = ledger_.appended_;
    ledger_.check_appended();
    if (ledger_.noted_.any() && !walked_note::read(ledger_.path_).any()) ledger_.noted_ = {};
    const auto end = [&] {
        whole_.reset(); // rolls back what was not committed
        ledger_.in_transaction_ = false;
        ledger_.forget_head();
    };
    try {
        whole_->commit();
    } catch (const SQLite::Exception &) {
        // It may have failed only after the last step, the journal's removal: then all of it is stored.
        end();
        if (!all || !ledger_.ends_with(all->hash)) throw;
    }
    end(); // what comes next, with this one still there, is no part of it
    // What was written here follows what was walked and counted before.
    Noted noted = std::exchange(ledger_.noted_, {});
    if (!noted.any()) return;
    if (all) {
        const std::int64_t last = all->first + all->count - 1;
        if (noted.walked) noted.walked = Walked{last, all->hash};
        if (auto &counted = noted.counted; counted && counted->entries == all->first - 1)
            counted = Counted{last, all->hash, counted->coupons < 0 ? -1 : counted->coupons + all->coupons};
    }
    walked_note::write(ledger_.path_, noted);
}

Entry Ledger::append(Entry e) {
    return guarded(path_, [&] {
        {
            auto last = statement("SELECT seq, hash FROM entry ORDER BY seq DESC LIMIT 1");
            const bool any = last->executeStep();
            e.seq = any ? last->getColumn(0).getInt64() + 1 : 1;
            e.previous = any ? last->getColumn(1).getString() : no_hash;
        }
        e.hash = hash_of(e);
        auto add =
            statement(std::string("INSERT INTO entry (") + columns + ") VALUES (?,?,?,?,?,?,?,?,?,?,?,?)");
        add->bind(1, e.seq);
        add->bind(2, e.at);
        add->bind(3, e.who);
        add->bind(4, e.kind);
        add->bind(5, e.subject);
        if (e.exam) add->bind(6, *e.exam);
        if (e.number) add->bind(7, *e.number);
        if (e.supersedes) {
            add->bind(8, *e.supersedes);
            add->bind(9, e.reason);
        }
        add->bind(10, e.body);
        add->bind(11, e.previous);
        add->bind(12, e.hash);
        // What a trigger of somebody else's ignores is no error to SQLite.
        if (add->exec() != 1) throw StoreError(path_ + ": an entry was not taken; nothing was stored");
        if (!appended_) appended_ = Appended{e.seq, 0, {}, 0};
        ++appended_->count;
        appended_->hash = e.hash;
        if (e.kind == "coupon" && !e.supersedes) ++appended_->coupons;
        // What was appended here is known; what else was, `state` finds out.
        if (e.previous == head_) {
            head_ = e.hash;
            ++entries_seen_;
            if (family_of(e.kind) != Family::coupon) ++others_seen_;
        } else {
            forget_head();
        }
        return e;
    });
}

bool Ledger::ends_with(const std::string &hash) {
    try {
        return newest_hash() == hash;
    } catch (const Refusal &) {
        return false;
    }
}

void Ledger::check_appended() {
    if (!appended_) return;
    const Appended all = *std::exchange(appended_, std::nullopt);
    auto count = statement("SELECT count(*) FROM entry WHERE seq >= ?");
    count->bind(1, all.first);
    if (!count->executeStep() || count->getColumn(0).getInt64() != all.count || newest_hash() != all.hash)
        throw StoreError(path_ + ": what was written is not what is there to be read; nothing was stored");
}

} // namespace beadbook
