#include "web/attempts.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

/// However a name is typed that means the same person: capitals and blanks aside, as people are found.
std::string account_key(const std::string &name) {
    std::string out = "account ";
    for (const char c : name.substr(0, 200))
        if (!std::isspace(static_cast<unsigned char>(c)))
            out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

std::string address_key(const std::string &address) { return "address " + address; }

} // namespace

std::deque<Attempts::Time> &Attempts::recent(const std::string &key, Time now) {
    auto &times = failed_[key];
    while (!times.empty() && times.front() + window <= now) times.pop_front();
    return times;
}

bool Attempts::begin(const std::string &account, const std::string &address, Time now) {
    const std::lock_guard lock(mutex_);
    // Names that somebody made up are not kept for ever.
    std::erase_if(failed_,
                  [&](const auto &one) { return one.second.empty() || one.second.back() + window <= now; });
    auto &by_account = recent(account_key(account), now);
    auto &by_address = recent(address_key(address), now);
    if (by_account.size() >= most_of_account || by_address.size() >= most_of_address) return false;
    by_account.push_back(now);
    by_address.push_back(now);
    return true;
}

void Attempts::succeeded(const std::string &account, const std::string &address) {
    const std::lock_guard lock(mutex_);
    failed_.erase(account_key(account));
    if (auto &times = failed_[address_key(address)]; !times.empty()) times.pop_back();
}

} // namespace beadbook
