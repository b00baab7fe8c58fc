#pragma once

#include "records/entry.hpp"

#include <optional>
#include <string>

namespace beadbook::codec {

/// What is wrong with the bytes of a body whose hash holds: a key that stands twice, another order, blanks
/// (whoever reads the bytes otherwise reads another fact), a number that would be cut short. Empty if
/// nothing.
std::string fault_of_body(const std::string &body);

/// The hash of the document that an entry rests on, if it is one of a qualification that was carried in.
std::optional<std::string> document_of(const Entry &entry);

} // namespace beadbook::codec
