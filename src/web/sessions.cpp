#include "web/sessions.hpp"

#include "measure/refusal.hpp"

#include <array>
#include <openssl/rand.h>

namespace beadbook {

std::string secret_word() {
    std::array<unsigned char, 32> bytes{};
    if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1)
        throw Refusal(Refusal::Kind::record, "this computer gives no random numbers");
    static const char digits[] = "0123456789abcdef";
    std::string out;
    for (const auto byte : bytes) out.append({digits[byte / 16], digits[byte % 16]});
    return out;
}
std::string Sessions::new_link() {
    const std::lock_guard lock(mutex_);
    return *links_.insert(secret_word()).first;
}

std::optional<BenchSession> Sessions::enter(const std::string &link) {
    const std::lock_guard lock(mutex_);
    if (links_.erase(link) == 0) return std::nullopt;
    BenchSession session{secret_word(), secret_word(), person_};
    sessions_[session.id] = session;
    return session;
}

std::optional<BenchSession> Sessions::find(const std::string &id) const {
    const std::lock_guard lock(mutex_);
    const auto found = sessions_.find(id);
    return found == sessions_.end() ? std::nullopt : std::optional(found->second);
}

void Sessions::sit_down(const std::string &id, const std::string &person) {
    const std::lock_guard lock(mutex_);
    if (const auto found = sessions_.find(id); found != sessions_.end()) found->second.person = person;
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
