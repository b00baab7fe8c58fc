#pragma once

#include <string>
#include <string_view>

namespace beadbook {

/// Whether a text can be a reason: it holds a word of two letters, of whatever alphabet, and is no word for
/// none ("n/a", "none"), nor one that says nothing ("ok"). Common practice, no source.
bool gives_reason(std::string_view text);

/// The word by which a text says that something was not so: "not", "never", "planned", "no" that stands
/// before no number; empty if none does.
std::string denying_word(std::string_view text);

/// A reason as it is stored (checked_text), wherever one is asked: empty stays empty, which the caller
/// refuses. Throws DataError: signs, figures, single letters or a word for none give none.
std::string checked_reason(std::string_view text, std::string_view what);

/// Reasons that the program writes where nobody is asked for one.
constexpr std::string_view undone_at_once = "undone at once", undone_at_prompt = "undone at the prompt",
                           corrected_at_prompt = "corrected at the prompt",
                           read_at_bench = "read at the bench", by_a_sheet = "gone on with by a sheet",
                           told_first = "told for the first time";
/// The reason of an exam that is finished: with how many found, and what a person said beside it.
std::string finished_reason(int found, const std::string &why);
/// What a person said of a reason as it is stored; empty if the program wrote all of it.
std::string said_in_reason(std::string_view reason);

} // namespace beadbook
