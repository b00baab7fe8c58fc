#pragma once

#include <string>
#include <string_view>

namespace beadbook {

/// Whether a text can be a reason: it holds a word of two letters, of whatever alphabet, and is no word for
/// none ("n/a", "none"), nor one that says nothing ("ok"). Common practice, no source.
bool gives_reason(std::string_view text);

/// A reason as it is stored (checked_text), wherever one is asked: empty stays empty, which the caller
/// refuses. Throws DataError: signs, figures, single letters or a word for none give none.
std::string checked_reason(std::string_view text, std::string_view what);

} // namespace beadbook
