// One moment of the record, and whether anything was written since the last look.
#include "records/ledger_rows.hpp"
#include "records/ledger_statements.hpp"

namespace beadbook {

using namespace ledger_rows;

Ledger::Moment::Moment(Ledger &ledger)
    : ledger_(ledger), outermost_(!ledger.in_transaction_ && !ledger.in_moment_) {
    if (!outermost_) return;
    guarded(ledger_.path_, [&] { ledger_.statement("BEGIN")->exec(); }); // the first look takes the lock
    ledger_.in_moment_ = true;
    ledger_.forget_head();
}

Ledger::Moment::~Moment() {
    if (outermost_) ledger_.end_moment();
}

void Ledger::end_moment() {
    if (!in_moment_) return;
    in_moment_ = false;
    forget_head();
    // Of what only read nothing can be lost; where SQLite ended it by itself there is nothing to end.
    if (sqlite3_get_autocommit(db_->getHandle()) != 0) return;
    statement("COMMIT")->tryExecuteStep();
}

std::string Ledger::newest_hash() {
    return guarded(path_, [&] {
        auto query = statement("SELECT hash FROM entry ORDER BY seq DESC LIMIT 1");
        return query->executeStep() ? query->getColumn(0).getString() : no_hash;
    });
}

std::string Ledger::head() {
    state();
    return head_;
}

std::uint64_t Ledger::state(About about) {
    if (!head_held_) {
        if (std::string now = newest_hash(); now != head_) {
            // Somebody else wrote, or what was written here was rolled back: nobody knows about what.
            head_ = std::move(now);
            ++entries_seen_;
            ++others_seen_;
        }
        head_held_ = in_transaction_ || in_moment_;
    }
    return about == About::anything ? entries_seen_ : others_seen_;
}

} // namespace beadbook
