#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace beadbook {

/// What is built in and never changes, by name: each is read when it is first asked for, and kept as long as
/// the program runs, because a bench asks for the same ones with every page. For many threads.
template <class T>
class ReadOnce {
public:
    /// `read` is called without a lock, so that it may ask for others; if two threads were at it, the first
    /// stays.
    template <class Read>
    std::shared_ptr<const T> get(const std::string &name, Read read) {
        {
            const std::lock_guard lock(mutex_);
            if (const auto found = all_.find(name); found != all_.end()) return found->second;
        }
        std::shared_ptr<const T> out = read(name);
        const std::lock_guard lock(mutex_);
        return all_.emplace(name, std::move(out)).first->second;
    }

private:
    std::mutex mutex_;
    std::map<std::string, std::shared_ptr<const T>> all_;
};

} // namespace beadbook
