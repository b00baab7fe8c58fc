#pragma once

#include "render/escaped.hpp"
#include "render/svg.hpp"
#include "report/document.hpp"

#include <functional>
#include <string>

namespace beadbook {

/// What a page is printed on; any: as the printer has it.
enum class PaperSize { any, a4, letter };

/// One page, complete in itself, that prints on A4 and Letter. `plain` is for programs that make paper of it
/// and know less of styles than a browser.
std::string html(const Document &document, SvgStyle style = SvgStyle::by_class,
                 PaperSize paper = PaperSize::any);

/// Where a page tells of an exam of the document's coupon, by its number.
using ExamPath = std::function<std::string(int)>;

/// Its blocks alone, for a page that others make; with picture_style() in the page's style. Two on one page
/// take different `ids`. What names an exam leads to its page, where there is one.
std::string fragment(const Document &document, const std::string &ids = "p", const ExamPath &exam_path = {});

} // namespace beadbook
