#pragma once

#include "facts/seal.hpp"

#include <string>

namespace beadbook::codec {

/// What is signed: all but the signature, as canonical JSON.
std::string signed_text(const Seal &seal);
/// The file that a seal is kept in.
std::string text_of(const Seal &seal);
/// Reads that. Throws DataError: no seal, or of a later form.
Seal seal_from(const std::string &text);

} // namespace beadbook::codec
