#pragma once

#include "operations/accounts.hpp"

#include <chrono>
#include <map>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace beadbook {

/// A word of 256 bits that nobody can guess.
std::string secret_word();

/// Somebody at the bench, in one browser.
struct BenchSession {
    std::string id;                       ///< of the cookie
    std::string token;                    ///< that every writing request repeats
    std::string person;                   ///< who acts
    std::optional<SignedIn> account = {}; ///< who signed in, as it stood then; nobody who came by a link
};

/// Who may use the bench: browsers that came in by a link, each link once, or by name and password. The
/// latter end: when nothing was done for a while, and after a day's work in any case. For many threads.
class Sessions {
public:
    using Time = std::chrono::seconds;
    static constexpr Time longest_idle{30 * 60}, longest{12 * 60 * 60};

    explicit Sessions(std::string person) : person_(std::move(person)) {}

    /// A word for a link that lets one browser in.
    std::string new_link();
    /// The session of a browser that comes in by a link; nothing if the link is none, or was used.
    std::optional<BenchSession> enter(const std::string &link);
    BenchSession sign_in(const SignedIn &account, Time now);
    /// `used`: somebody did something, and not a page that looks by itself whether there is news.
    std::optional<BenchSession> find(const std::string &id, Time now, bool used);
    void end(const std::string &id);
    void sit_down(const std::string &id, const std::string &person);

    /// What the next page of that session tells once.
    void tell(const std::string &id, std::vector<std::string> notes);
    std::vector<std::string> told(const std::string &id);

private:
    mutable std::mutex mutex_;
    std::string person_;
    std::set<std::string> links_;
    struct Held {
        BenchSession session;
        Time began{}, used{};
        bool is_over(Time now) const {
            return session.account && (used + longest_idle <= now || began + longest <= now);
        }
    };
    std::map<std::string, Held> sessions_;
    std::map<std::string, std::vector<std::string>> notes_;
};

} // namespace beadbook
