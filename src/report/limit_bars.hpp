#pragma once

#include "report/document.hpp"
#include "report/sentence.hpp"

namespace beadbook {

/// One measurement beside the limit that it is held against.
struct LimitRow {
    std::string who;             ///< "#3", "#2, #3"; of the coupon as a whole empty
    std::string what;            ///< what the rule measures, in its words
    std::string measured, limit; ///< printed so that they differ if they do
    std::string source;          ///< clause and standing
    double share_of_limit = 0;   ///< measured / limit
    double ratio = 0;            ///< how near to being out; over 1 is
    bool least = false;          ///< the limit is a minimum
    bool kept = false;
};

/// Of each reason against a class that has both numbers, the one farthest out first.
std::vector<LimitRow> limit_rows(const Case &c, std::size_t class_index, const ClassJudgement &judged);
/// Of what an accept rests on, the nearest to its limit first.
std::vector<LimitRow> limit_rows(const Case &c, std::size_t class_index, const Proof &proof);

/// A bar each, measured against limit, with both numbers and the clause; what is beyond the limit is hatched.
Picture limit_bars(const std::vector<LimitRow> &rows, double width = 780);
/// The same with characters.
std::string limit_lines(const std::vector<LimitRow> &rows);

/// As a figure, the first of many and how many there are more; nothing if there is none.
void add_limit_bars(Document &doc, std::vector<LimitRow> rows);

} // namespace beadbook
