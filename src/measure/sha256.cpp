#include "measure/sha256.hpp"

#include "measure/hex.hpp"

#include <openssl/crypto.h>
#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace beadbook {

namespace {

/// Of one thread, made once: to be looked for and made costs more than to hash a line of a list.
class Hasher {
public:
    Hasher() {
        // No openssl.cnf makes another SHA-256, and to read it takes longer than all else of OpenSSL's start.
        OPENSSL_init_crypto(OPENSSL_INIT_NO_LOAD_CONFIG, nullptr);
        method_ = EVP_MD_fetch(nullptr, "SHA256", nullptr);
        context_ = EVP_MD_CTX_new();
    }
    ~Hasher() {
        EVP_MD_CTX_free(context_);
        EVP_MD_free(method_);
    }
    Hasher(const Hasher &) = delete;

    std::string of(std::string_view bytes) {
        std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
        unsigned int size = 0;
        if (!method_ || !context_ || EVP_DigestInit_ex2(context_, method_, nullptr) != 1 ||
            EVP_DigestUpdate(context_, bytes.data(), bytes.size()) != 1 ||
            EVP_DigestFinal_ex(context_, digest.data(), &size) != 1)
            throw std::runtime_error("SHA-256 is not available");
        return hex({reinterpret_cast<const char *>(digest.data()), size});
    }

private:
    EVP_MD *method_ = nullptr;
    EVP_MD_CTX *context_ = nullptr;
};

} // namespace

std::string sha256(std::string_view bytes) {
    thread_local Hasher hasher;
    return hasher.of(bytes);
}

} // namespace beadbook
