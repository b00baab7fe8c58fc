#pragma once

#include <string>

namespace beadbook::codec {

/// What is wrong with the bytes of a body whose hash holds; empty if nothing.
std::string fault_of_body(const std::string &text);

/// Hash of the document that a qualification rests on; empty if it names none.
std::string paper_of(const std::string &text);

} // namespace beadbook::codec
