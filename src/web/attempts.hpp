#pragma once

#include <chrono>
#include <deque>
#include <map>
#include <mutex>
#include <string>

namespace beadbook {

/// Counts attempts to sign in that failed, by account and by address, so that nobody tries many passwords.
/// For many threads.
class Attempts {
public:
    using Time = std::chrono::seconds;

    /// Counts one as failed, unless there were too many; then false: nothing is to be tried. Counted before
    /// the password is looked at, so that many at once are no way around.
    bool begin(const std::string &account, const std::string &address, Time now);
    /// It was right: the account's count begins anew, and the address's without this one.
    void succeeded(const std::string &account, const std::string &address);

    static constexpr std::size_t most_of_account = 5, most_of_address = 30;
    static constexpr Time window{15 * 60};

private:
    std::deque<Time> &recent(const std::string &key, Time now);

    std::mutex mutex_;
    std::map<std::string, std::deque<Time>> failed_;
};

} // namespace beadbook
