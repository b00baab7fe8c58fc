#include "operations/import_rows.hpp"

#include "facts/log_line.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

/// "row 2", "rows 2 to 9 and 12".
std::string rows_text(const std::vector<std::size_t> &rows) {
    std::vector<std::string> out;
    for (std::size_t begin = 0, end = 1; begin < rows.size(); begin = end++) {
        while (end < rows.size() && rows[end] == rows[begin] + (end - begin)) ++end;
        out.push_back(std::to_string(rows[begin]) +
                      (end - begin > 1 ? " to " + std::to_string(rows[end - 1]) : ""));
    }
    constexpr std::size_t most = 12;
    if (out.size() > most) out.resize(most), out.emplace_back("others");
    return (rows.size() == 1 ? "row " : "rows ") + listed(out);
}

} // namespace

void RowsAgain::take(const CouponState &coupon, std::size_t row, const IndicationRecord &find) {
    const auto [of, first_row] = standing_.try_emplace(coupon.record.id);
    if (first_row)
        for (const auto &i : coupon.indications)
            of->second.emplace(std::pair(i.exam, print_log_line(i)), i.number);
    const auto stands = of->second.find({find.exam, print_log_line(find)});
    if (stands == of->second.end()) return new_.push_back(row);
    again_.push_back(row);
    constexpr std::size_t most = 5;
    if (as_.size() < most)
        as_.push_back("row " + std::to_string(row) + " as #" + std::to_string(stands->second) + " of " +
                      coupon.record.id);
}

void RowsAgain::check() const {
    if (again_.empty()) return;
    const std::string known = as_.size() == again_.size() ? listed(as_) : joined(as_, ", ") + " and so on";
    const std::string fresh =
        new_.empty() ? "no row is new" : rows_text(new_) + (new_.size() == 1 ? " is new" : " are new");
    throw refused(rows_text(again_) + (again_.size() == 1 ? " is" : " are") + " on record already (" + known +
                  "), " + fresh +
                  ", and nothing was stored; leave out what is on record, or if these are other finds")
        .give("again");
}

} // namespace beadbook
