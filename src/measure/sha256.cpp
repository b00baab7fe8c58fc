#include "measure/sha256.hpp"

#include "measure/hex.hpp"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace beadbook {

std::string sha256(std::string_view bytes) {
    // Fetched once: to be looked for costs more than to hash a line of a list.
    static const EVP_MD *const method = EVP_MD_fetch(nullptr, "SHA256", nullptr);
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned int size = 0;
    if (!method || EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, method, nullptr) != 1)
        throw std::runtime_error("SHA-256 is not available");
    return hex({reinterpret_cast<const char *>(digest.data()), size});
}

} // namespace beadbook
