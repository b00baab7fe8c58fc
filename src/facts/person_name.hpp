#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Whether a text names somebody who can be asked. "nobody", "the trainee", "not examined", a method, a
/// level, a number and a single letter do not. Common practice, no source.
bool names_somebody(std::string_view text);

/// Whether a text could be a person's name at all: it has two letters.
bool may_be_a_name(std::string_view text);

/// Whether a word in small letters stands beside names and is none: Mr, Prof, jr, foreman.
bool is_title(std::string_view word);

/// Whether two texts name the same person: they differ in order, blanks, points, commas and capitals alone
/// ("Reef, J." and "j reef"). Of several names in a text one is enough.
bool same_person(std::string_view a, std::string_view b);

/// Why a field that holds one person's name holds more than that, and how to mend it; empty if it does not.
/// "Reef, J.", "J. Reef (L1)", "J. Reef, Jr." and "A. Field / Level II" name one; "A. Field, L2", "L2 and L9"
/// and "A. Field L2" name two, by which one would hide behind the other; of "Reef, John" nobody can say,
/// unless somebody is on record by that name.
std::string several_persons(std::string_view text, bool on_record = false);
/// Throws Refusal (the field) with that.
void check_one_person(const std::string &text, const std::string &field, bool on_record = false);
/// The same where somebody comes on record by that name: what may be one person's is asked about. Throws
/// Unsure.
void check_new_name(const std::string &text, const std::string &field, bool sure);

/// Keys of which two texts have one in common if, and only if, same_person says that they name one: for who
/// looks for a person among many.
std::vector<std::string> person_keys(std::string_view text);

/// The names in a text: "J. Reef (L1)", "J. Reef / B. Shore".
std::vector<std::string_view> names_in(std::string_view text);

} // namespace beadbook
