#include "measure/sha256.hpp"

#include "measure/hex.hpp"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace beadbook {

std::string sha256(std::string_view bytes) {
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned int size = 0;
    if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr) != 1)
        throw std::runtime_error("SHA-256 is not available");
    return hex({reinterpret_cast<const char *>(digest.data()), size});
}

} // namespace beadbook
