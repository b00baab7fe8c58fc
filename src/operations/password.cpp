#include "operations/password.hpp"

#include "measure/refusal.hpp"

#include <algorithm>
#include <new>
#include <semaphore>
#include <sodium.h>

namespace beadbook {
namespace {

// Between libsodium's own "interactive" and "moderate": a sixth of a second here.
constexpr unsigned long long hash_passes = 3;
constexpr std::size_t hash_memory = 64U << 20U;
constexpr std::ptrdiff_t shortest = 10;
constexpr std::size_t longest = 200; ///< bytes

/// Each takes its memory while it runs, and anybody may ask for one.
std::counting_semaphore<2> &hashing() {
    static std::counting_semaphore<2> two(2);
    return two;
}

template <class Work>
auto one_of_two(Work work) {
    if (sodium_init() < 0) throw Refusal(Refusal::Kind::record, "this computer gives no random numbers");
    hashing().acquire();
    const auto out = work();
    hashing().release();
    return out;
}

std::string hashed(const std::string &password) {
    std::string out(crypto_pwhash_STRBYTES, '\0');
    if (one_of_two([&] {
            return crypto_pwhash_str(out.data(), password.data(), password.size(), hash_passes, hash_memory);
        }) != 0)
        throw std::bad_alloc();
    return out.substr(0, out.find('\0'));
}

const std::string &hash_of_nobody() {
    static const std::string hash = hashed("nobody's");
    return hash;
}

} // namespace

std::string hash_of_password(const std::string &password) {
    // Bytes that go on with a letter are none of their own.
    const auto letters = std::count_if(password.begin(), password.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    });
    if (letters < shortest)
        throw refused("the password is shorter than " + std::to_string(shortest) + " characters")
            .at("password");
    if (password.size() > longest)
        throw refused("the password is longer than " + std::to_string(longest) + " bytes").at("password");
    return hashed(password);
}

bool is_password(const std::string &password, const std::string &hash) {
    const std::string &against = hash_of_nobody();
    const std::string &asked = hash.empty() ? against : hash;
    // What is longer was never taken, and is not worth its hashing.
    const std::string given = password.substr(0, longest + 1);
    const bool same =
        one_of_two([&] { return crypto_pwhash_str_verify(asked.c_str(), given.data(), given.size()) == 0; });
    return same && !hash.empty();
}

} // namespace beadbook
