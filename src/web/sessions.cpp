#include "web/sessions.hpp"

#include "measure/hex.hpp"
#include "measure/refusal.hpp"

#include <openssl/rand.h>

namespace beadbook {

std::string secret_word() {
    std::string bytes(32, '\0');
    if (RAND_bytes(reinterpret_cast<unsigned char *>(bytes.data()), static_cast<int>(bytes.size())) != 1)
        throw Refusal(Refusal::Kind::record, "this computer gives no random numbers");
    return hex(bytes);
}
std::string Sessions::new_link() {
    const std::lock_guard lock(mutex_);
    return *links_.insert(secret_word()).first;
}

std::optional<BenchSession> Sessions::enter(const std::string &link) {
    const std::lock_guard lock(mutex_);
    if (links_.erase(link) == 0) return std::nullopt;
    BenchSession session{secret_word(), secret_word(), person_};
    sessions_[session.id] = {session, {}, {}};
    return session;
}

BenchSession Sessions::sign_in(const SignedIn &account, Time now) {
    const std::lock_guard lock(mutex_);
    for (auto one = sessions_.begin(); one != sessions_.end();)
        if (one->second.is_over(now)) {
            notes_.erase(one->first);
            one = sessions_.erase(one);
        } else {
            ++one;
        }
    BenchSession session{secret_word(), secret_word(), account.person, account};
    sessions_[session.id] = {session, now, now};
    return session;
}

std::optional<BenchSession> Sessions::find(const std::string &id, Time now, bool used) {
    const std::lock_guard lock(mutex_);
    const auto found = sessions_.find(id);
    if (found == sessions_.end() || found->second.is_over(now)) return std::nullopt;
    if (used) found->second.used = now;
    return found->second.session;
}

void Sessions::end(const std::string &id) {
    const std::lock_guard lock(mutex_);
    sessions_.erase(id);
    notes_.erase(id);
}

void Sessions::sit_down(const std::string &id, const std::string &person) {
    const std::lock_guard lock(mutex_);
    if (const auto found = sessions_.find(id); found != sessions_.end())
        found->second.session.person = person;
}

void Sessions::tell(const std::string &id, std::vector<std::string> notes) {
    const std::lock_guard lock(mutex_);
    auto &all = notes_[id];
    for (auto &note : notes) all.push_back(std::move(note));
}

std::vector<std::string> Sessions::told(const std::string &id) {
    const std::lock_guard lock(mutex_);
    std::vector<std::string> out;
    out.swap(notes_[id]);
    return out;
}

} // namespace beadbook
