#pragma once

#include "operations/office.hpp"

#include <condition_variable>
#include <deque>
#include <exception>
#include <functional>
#include <mutex>
#include <vector>

namespace beadbook {

/// What many people enter at once: it is committed together, so that the disk is waited for once, and nobody
/// is told that it is stored before it is. Each is all or nothing by itself, and takes none of the others
/// with it. For many threads, and one record.
class JoinedWrites {
public:
    JoinedWrites(std::string book, const Outside &outside) : book_(std::move(book)), outside_(outside) {}

    struct Deed {
        /// Begins a Writing of its own, and commits it. It may be called once more, where those that it was
        /// joined with could not be stored: what it did before was rolled back then.
        std::function<void(Office &)> work;
        bool begins_record = false; ///< there need be no record yet
    };
    /// Returns once it is stored durably. Throws what the work threw, and StoreError.
    void enter(Deed deed);

    /// How many wait for those that are being stored.
    std::size_t waiting() const;

private:
    struct Waiting {
        Deed deed;
        bool done = false;
        std::exception_ptr error = nullptr;
    };
    using Batch = std::vector<Waiting *>;

    void store(const Batch &batch);

    std::string book_;
    const Outside &outside_;
    mutable std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<Waiting *> queue_;
    bool storing_ = false; ///< by the thread of one of them
};

} // namespace beadbook
