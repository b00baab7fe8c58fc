#include "web/authority.hpp"

#include "measure/refusal.hpp"

#include <memory>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/x509v3.h>

namespace beadbook {
namespace {

template <auto Free>
struct Freed {
    template <class T>
    void operator()(T *one) const {
        Free(one);
    }
};
using Key = std::unique_ptr<EVP_PKEY, Freed<EVP_PKEY_free>>;
using Paper = std::unique_ptr<X509, Freed<X509_free>>;
using Bytes = std::unique_ptr<BIO, Freed<BIO_free>>;
using Extension = std::unique_ptr<X509_EXTENSION, Freed<X509_EXTENSION_free>>;

/// OpenSSL answers 1, or something that is not null.
template <class T>
T needed(T given) {
    if (!given) throw Refusal(Refusal::Kind::record, "OpenSSL could not make or read a certificate");
    return given;
}

std::string text_of(BIO *bytes) {
    char *data = nullptr;
    const long size = BIO_get_mem_data(bytes, &data);
    return {data, static_cast<std::size_t>(needed(size))};
}

Bytes pem_bytes(const std::string &text) {
    return Bytes(needed(BIO_new_mem_buf(text.data(), static_cast<int>(text.size()))));
}

void extend(X509 *paper, X509 *issuer, int kind, const std::string &value) {
    X509V3_CTX about;
    X509V3_set_ctx(&about, issuer, paper, nullptr, nullptr, 0);
    const Extension extension(needed(X509V3_EXT_conf_nid(nullptr, &about, kind, value.c_str())));
    needed(X509_add_ext(paper, extension.get(), -1) == 1);
}

void set_number(X509 *paper) {
    unsigned char bytes[16];
    needed(RAND_bytes(bytes, sizeof bytes) == 1);
    bytes[0] = static_cast<unsigned char>((bytes[0] & 0x7F) | 0x40); // positive, and of one length
    const std::unique_ptr<BIGNUM, Freed<BN_free>> number(needed(BN_bin2bn(bytes, sizeof bytes, nullptr)));
    needed(BN_to_ASN1_INTEGER(number.get(), X509_get_serialNumber(paper)));
}

Paper blank(EVP_PKEY *key, const std::string &name, int days) {
    Paper paper(needed(X509_new()));
    needed(X509_set_version(paper.get(), X509_VERSION_3) == 1);
    set_number(paper.get());
    // An hour before now, for tablets whose clock is late.
    needed(X509_gmtime_adj(X509_getm_notBefore(paper.get()), -3600));
    needed(X509_time_adj_ex(X509_getm_notAfter(paper.get()), days, 0, nullptr));
    needed(X509_set_pubkey(paper.get(), key) == 1);
    // A common name holds 64 characters; browsers read the other one.
    const std::string common = name.substr(0, 64);
    needed(X509_NAME_add_entry_by_NID(X509_get_subject_name(paper.get()), NID_commonName, MBSTRING_UTF8,
                                      reinterpret_cast<const unsigned char *>(common.data()),
                                      static_cast<int>(common.size()), -1, 0) == 1);
    return paper;
}

Certified signed_by(EVP_PKEY *signer, X509 *paper, EVP_PKEY *key) {
    needed(X509_sign(paper, signer, EVP_sha256()));
    const Bytes certificate(needed(BIO_new(BIO_s_mem()))), secret(needed(BIO_new(BIO_s_mem())));
    needed(PEM_write_bio_X509(certificate.get(), paper) == 1);
    needed(PEM_write_bio_PrivateKey(secret.get(), key, nullptr, nullptr, 0, nullptr, nullptr) == 1);
    return {text_of(certificate.get()), text_of(secret.get())};
}

} // namespace

Certified new_authority() {
    const Key key(needed(EVP_EC_gen("P-256")));
    const Paper paper = blank(key.get(), "Beadbook authority of this shop", 3653);
    needed(X509_set_issuer_name(paper.get(), X509_get_subject_name(paper.get())) == 1);
    extend(paper.get(), paper.get(), NID_basic_constraints, "critical,CA:TRUE,pathlen:0");
    extend(paper.get(), paper.get(), NID_key_usage, "critical,keyCertSign");
    extend(paper.get(), paper.get(), NID_subject_key_identifier, "hash");
    return signed_by(key.get(), paper.get(), key.get());
}

Certified certified_by(const Certified &authority, const std::string &host) {
    const Paper issuer(
        needed(PEM_read_bio_X509(pem_bytes(authority.certificate).get(), nullptr, nullptr, nullptr)));
    const Key signer(
        needed(PEM_read_bio_PrivateKey(pem_bytes(authority.key).get(), nullptr, nullptr, nullptr)));
    needed(X509_check_private_key(issuer.get(), signer.get()) == 1);
    const Key key(needed(EVP_EC_gen("P-256")));
    const Paper paper = blank(key.get(), host, 397);
    needed(X509_set_issuer_name(paper.get(), X509_get_subject_name(issuer.get())) == 1);
    extend(paper.get(), issuer.get(), NID_basic_constraints, "critical,CA:FALSE");
    extend(paper.get(), issuer.get(), NID_key_usage, "critical,digitalSignature");
    extend(paper.get(), issuer.get(), NID_ext_key_usage, "serverAuth");
    extend(paper.get(), issuer.get(), NID_subject_alt_name, "DNS:" + host);
    extend(paper.get(), issuer.get(), NID_authority_key_identifier, "keyid");
    return signed_by(signer.get(), paper.get(), key.get());
}

} // namespace beadbook
