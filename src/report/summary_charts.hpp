#pragma once

#include "operations/summary.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Finds by imperfection, most first: a bar each of all finds with the part that rejects, and the share that
/// it makes with those before it. Nothing if there are none.
std::optional<Figure> imperfection_chart(const Summary &summary, const std::string &caption);
/// Finds by where they begin: the quarters round girth welds, and those along welds with ends. Nothing if no
/// place is known.
std::optional<Figure> place_chart(const Summary &summary, const std::string &caption);

struct NamedShare {
    std::string name;
    Share share;
};
/// Each share as a point in its interval, on one axis from 0 to 100 %. Nothing if nothing was decided.
std::optional<Figure> share_chart(const std::string &title, const std::vector<NamedShare> &rows);

} // namespace beadbook
