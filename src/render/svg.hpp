#pragma once

#include "report/picture.hpp"

#include <string>
#include <string_view>

namespace beadbook {

/// By classes, whose look is in picture_style(): a page may set the properties that it names. Or plain: each
/// shape carries its own look, dark on white, for programs that do not read the style of the page.
enum class SvgStyle { by_class, plain };

/// A picture as an element of a page, with title and description for who does not see it. Ids within it begin
/// with `id`, which is unique on the page.
std::string svg(const Picture &picture, const std::string &id, SvgStyle style = SvgStyle::by_class);

/// A picture as a file of its own.
std::string svg_file(const Picture &picture);

/// What a page with pictures needs in its style. Colours are properties with a value for light, dark and
/// print; what is told apart differs in fill, hatch or line as well.
std::string_view picture_style();

} // namespace beadbook
