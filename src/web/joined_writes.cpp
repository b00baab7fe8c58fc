#include "web/joined_writes.hpp"

#include <optional>

namespace beadbook {
namespace {

/// Its refusal is its own matter; the others go on.
void run(const JoinedWrites::Deed &deed, Office &office, std::exception_ptr &error) {
    try {
        deed.work(office);
        error = nullptr;
    } catch (...) {
        error = std::current_exception();
    }
}

} // namespace

void JoinedWrites::enter(Deed deed) {
    Waiting mine{std::move(deed)};
    std::unique_lock lock(mutex_);
    queue_.push_back(&mine);
    changed_.wait(lock, [&] { return mine.done || !storing_; });
    if (!mine.done) { // nobody is storing: this thread does it, for all that wait
        storing_ = true;
        const Batch batch(queue_.begin(), queue_.end());
        queue_.clear();
        lock.unlock();
        store(batch);
        lock.lock();
        for (Waiting *one : batch) one->done = true;
        storing_ = false;
        changed_.notify_all();
    }
    if (mine.error) std::rethrow_exception(mine.error);
}

std::size_t JoinedWrites::waiting() const {
    const std::lock_guard lock(mutex_);
    return queue_.size();
}

void JoinedWrites::store(const Batch &batch) {
    bool begins = false;
    for (const Waiting *one : batch) begins = begins || one->deed.begins_record;
    std::exception_ptr failure;
    bool begun = false;
    try {
        Book book(book_, begins ? Ledger::Mode::create : Ledger::Mode::write);
        Catalogue catalogue(outside_);
        std::optional<Ledger::Transaction> together;
        if (batch.size() > 1) together.emplace(book.ledger());
        begun = true;
        for (Waiting *one : batch) {
            // An office each, because it remembers what it made of entries, also of those that were rolled
            // back.
            Office office(book, catalogue);
            run(one->deed, office, one->error);
        }
        if (together) together->commit();
        return;
    } catch (...) {
        failure = std::current_exception();
    }
    // The record cannot be written to, or what one of them did was too much for the disk: then alone each
    // shows whether it was that one.
    for (Waiting *one : batch)
        if (begun && batch.size() > 1)
            store({one});
        else
            one->error = failure;
}

} // namespace beadbook
