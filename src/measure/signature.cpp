#include "measure/signature.hpp"

#include "measure/hex.hpp"
#include "measure/refusal.hpp"

#include <openssl/evp.h>
#include <openssl/pem.h>

namespace beadbook {
namespace {

using Key = std::unique_ptr<EVP_PKEY, decltype(&EVP_PKEY_free)>;
using Work = std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)>;
using Text = std::unique_ptr<BIO, decltype(&BIO_free)>;

const unsigned char *bytes_of(std::string_view text) {
    return reinterpret_cast<const unsigned char *>(text.data());
}
unsigned char *room_in(std::string &text) { return reinterpret_cast<unsigned char *>(text.data()); }

[[noreturn]] void not_available() { throw std::runtime_error("Ed25519 signatures are not available"); }

} // namespace

void SigningKey::release(EVP_PKEY *key) { EVP_PKEY_free(key); }

SigningKey SigningKey::fresh() {
    EVP_PKEY *key = EVP_PKEY_Q_keygen(nullptr, nullptr, "ED25519");
    if (!key) not_available();
    return SigningKey(key);
}

SigningKey SigningKey::from_pem(const std::string &pem) {
    const Text text(BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size())), &BIO_free);
    // A file that asks for a word would have the library ask on the terminal.
    const auto no_word = [](char *, int, int, void *) { return -1; };
    SigningKey key(PEM_read_bio_PrivateKey(text.get(), nullptr, no_word, nullptr));
    if (!key.key_ || EVP_PKEY_get_id(key.key_.get()) != EVP_PKEY_ED25519)
        throw InputError("no key that signs is in it; expected an Ed25519 key as PEM, without a password");
    return key;
}

std::string SigningKey::pem() const {
    const Text text(BIO_new(BIO_s_mem()), &BIO_free);
    if (PEM_write_bio_PrivateKey(text.get(), key_.get(), nullptr, nullptr, 0, nullptr, nullptr) != 1)
        not_available();
    char *begin = nullptr;
    const long size = BIO_get_mem_data(text.get(), &begin);
    return {begin, static_cast<std::size_t>(size)};
}

std::string SigningKey::public_key() const {
    std::string out(32, '\0');
    std::size_t size = out.size();
    if (EVP_PKEY_get_raw_public_key(key_.get(), room_in(out), &size) != 1) not_available();
    return hex(out);
}

std::string SigningKey::sign(std::string_view bytes) const {
    const Work work(EVP_MD_CTX_new(), &EVP_MD_CTX_free);
    std::string out(64, '\0');
    std::size_t size = out.size();
    if (EVP_DigestSignInit(work.get(), nullptr, nullptr, nullptr, key_.get()) != 1 ||
        EVP_DigestSign(work.get(), room_in(out), &size, bytes_of(bytes), bytes.size()) != 1)
        not_available();
    return hex(out);
}

bool signed_by(std::string_view public_key, std::string_view bytes, std::string_view signature) {
    const auto key_bytes = from_hex(public_key), signed_bytes = from_hex(signature);
    if (!key_bytes || !signed_bytes) return false;
    const Key key(
        EVP_PKEY_new_raw_public_key(EVP_PKEY_ED25519, nullptr, bytes_of(*key_bytes), key_bytes->size()),
        &EVP_PKEY_free);
    const Work work(EVP_MD_CTX_new(), &EVP_MD_CTX_free);
    return key && EVP_DigestVerifyInit(work.get(), nullptr, nullptr, nullptr, key.get()) == 1 &&
           EVP_DigestVerify(work.get(), bytes_of(*signed_bytes), signed_bytes->size(), bytes_of(bytes),
                            bytes.size()) == 1;
}

} // namespace beadbook
