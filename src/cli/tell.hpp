#pragma once

#include "cli/exit_code.hpp"
#include "cli/options.hpp"
#include "cli/session.hpp"
#include "operations/done.hpp"
#include "render/text.hpp"

namespace beadbook {

/// Prints a result: as text made from its document, or as JSON; doubts go to the error stream, and into the
/// JSON. `document_of` and `json_text` of the result's family must be included.
template <class Result>
void tell(const Args &args, Session &session, const Result &result,
          const std::vector<std::string> &notes = {}) {
    for (const auto &note : notes) session.err << "beadbook: note: " << note << "\n";
    if (args.flag("json"))
        session.out << json_text(result, notes);
    else
        session.out << text(document_of(result), session.paint());
}
template <class T>
void tell(const Args &args, Session &session, const Done<T> &done) {
    tell(args, session, done.value, done.notes);
}

} // namespace beadbook
