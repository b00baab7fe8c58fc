#pragma once

#include <memory>
#include <string>
#include <string_view>

struct evp_pkey_st;

namespace beadbook {

/// A key that signs: Ed25519 (RFC 8032), by OpenSSL. What is public, and signatures, are written as
/// hexadecimal digits.
class SigningKey {
public:
    static SigningKey fresh();
    /// From the text of its file (PEM). Throws InputError: it holds no such key.
    static SigningKey from_pem(const std::string &pem);

    std::string pem() const;        ///< secret
    std::string public_key() const; ///< 64 digits
    std::string sign(std::string_view bytes) const;

private:
    explicit SigningKey(evp_pkey_st *key) : key_(key, &release) {}
    static void release(evp_pkey_st *key);
    std::unique_ptr<evp_pkey_st, void (*)(evp_pkey_st *)> key_;
};

/// Whether the owner of `public_key` signed these bytes so; no for what is no key or no signature.
bool signed_by(std::string_view public_key, std::string_view bytes, std::string_view signature);

} // namespace beadbook
