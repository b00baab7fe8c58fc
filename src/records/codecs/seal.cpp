#include "records/codecs/seal.hpp"

#include "measure/refusal.hpp"
#include "records/codecs/located.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {
namespace {

constexpr std::int64_t form = 1;

nlohmann::json unsigned_json(const Seal &seal) {
    return {{"beadbook seal", form},      {"entries", seal.entries}, {"head", seal.head},
            {"sealed at", seal.stamp.at}, {"who", seal.stamp.who},   {"public key", seal.public_key}};
}

} // namespace

std::string signed_text(const Seal &seal) { return canonical(unsigned_json(seal)); }

std::string text_of(const Seal &seal) {
    nlohmann::json out = unsigned_json(seal);
    out["signature"] = seal.signature;
    return out.dump(2) + "\n";
}

Seal seal_from(const std::string &text) {
    const Located root = read_located(text);
    const auto part = [&](const char *key, Located::Kind kind) -> const Located & {
        const Located *found = root.find(key);
        if (!found || found->kind != kind)
            throw DataError("1:1: no seal: '" + std::string(key) + "' is missing or of another kind");
        return *found;
    };
    const auto word = [&](const char *key) { return part(key, Located::Kind::text).text; };
    if (const Located &of = part("beadbook seal", Located::Kind::number); of.whole != form)
        throw DataError(place_in(text, of.at) + ": a seal of form " + of.text +
                        ", which a newer program made; this one reads form 1");
    if (root.items.size() != 7) throw DataError("1:1: no seal: it holds more than a seal does");
    return {part("entries", Located::Kind::number).whole,
            word("head"),
            {word("sealed at"), word("who")},
            word("public key"),
            word("signature")};
}

} // namespace beadbook::codec
