#pragma once

#include "operations/record_sheet.hpp"
#include "report/document.hpp"

namespace beadbook {

/// The qualification record of one welder and test, on one page: who, how it stands, what it qualifies, what
/// was welded, examined and graded, by which criteria and rules (edition and hash), and the proof.
Document document_of(const RecordSheet &sheet);

/// A file that was written.
struct PaperWritten {
    std::string what, to;
};
Document document_of(const PaperWritten &done);

} // namespace beadbook
