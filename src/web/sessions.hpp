#pragma once

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
    std::string id;     ///< of the cookie
    std::string token;  ///< that every writing request repeats
    std::string person; ///< who acts
};

/// Who may use the bench: browsers that came in by a link, each link once. For many threads.
class Sessions {
public:
    explicit Sessions(std::string person) : person_(std::move(person)) {}

    /// A word for a link that lets one browser in.
    std::string new_link();
    /// The session of a browser that comes in by a link; nothing if the link is none, or was used.
    std::optional<BenchSession> enter(const std::string &link);
    std::optional<BenchSession> find(const std::string &id) const;
    void sit_down(const std::string &id, const std::string &person);

    /// What the next page of that session tells once.
    void tell(const std::string &id, std::vector<std::string> notes);
    std::vector<std::string> told(const std::string &id);

private:
    mutable std::mutex mutex_;
    std::string person_;
    std::set<std::string> links_;
    std::map<std::string, BenchSession> sessions_;
    std::map<std::string, std::vector<std::string>> notes_;
};

} // namespace beadbook
