#pragma once

#include "render/paint.hpp"
#include "report/document.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// A document for a terminal or a file: wrapped at blanks, by characters and not bytes; coloured if the paint
/// says so.
std::string text(const Document &document, const Paint &paint = Paint(false), std::size_t width = 100);

/// Parts of one long list that are printed as they come: one head above the first, and columns as wide as any
/// part so far made them.
class TextInParts {
public:
    explicit TextInParts(const Paint &paint) : paint_(paint) {}
    /// The part's tables; whatever else it holds is as in any text.
    std::string operator()(const Document &part);

private:
    Paint paint_;
    std::vector<std::size_t> widths_;
};

} // namespace beadbook
