#include "measure/sha256.hpp"

#include "measure/hex.hpp"

#include <sodium/crypto_hash_sha256.h>

#include <array>

namespace beadbook {

std::string sha256(std::string_view bytes) {
    std::array<unsigned char, crypto_hash_sha256_BYTES> digest{};
    crypto_hash_sha256(digest.data(), reinterpret_cast<const unsigned char *>(bytes.data()), bytes.size());
    return hex({reinterpret_cast<const char *>(digest.data()), digest.size()});
}

} // namespace beadbook
