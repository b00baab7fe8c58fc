#pragma once

#include <string>

namespace beadbook {

/// The hash of a password, by Argon2id with a salt of its own. Throws Refusal (field "password"): too short
/// or too long.
std::string hash_of_password(const std::string &password);

/// Whether a password is the one of a hash. Without a hash it takes as long, and is not: how long an answer
/// takes does not tell whether there is such an account.
bool is_password(const std::string &password, const std::string &hash);

} // namespace beadbook
