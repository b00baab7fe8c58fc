#include "operations/import_rows.hpp"

#include "facts/log_line.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "operations/finishing.hpp"

#include <algorithm>

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

std::string found_words(int found) { return (found > 0 ? std::to_string(found) : "none") + " found"; }

std::string are_on_record(int number) {
    return counted(static_cast<std::size_t>(number), "is", "are") + " on record";
}

} // namespace

void RowsOfFinished::take(const CouponState &coupon, const ExamRecord &exam, int on_record, std::size_t row) {
    Rows &of =
        exams_.try_emplace({coupon.record.id, exam.number}, Rows{named({&exam}), 0, 0, {}}).first->second;
    of.found = exam.finished->found;
    if (of.rows.empty()) of.before = on_record - 1;
    of.rows.push_back(row);
}

std::size_t RowsOfFinished::tell(Faults &faults) const {
    std::size_t out = 0;
    for (const auto &one : exams_) {
        const auto &which = one.first;
        const Rows &of = one.second;
        if (!of.too_many()) continue;
        out += of.rows.size();
        const std::size_t rows = of.rows.size();
        const bool more = of.before > 0;
        faults.add([&of] { return rows_text(of.rows); },
                   "exam " + of.exam + " of coupon " + which.first + " was finished with " +
                       found_words(of.found) + (more ? ", " + are_on_record(of.before) : "") + ", and " +
                       (rows == 1 ? "this row gives 1" : "these rows give " + std::to_string(rows)) +
                       (more ? " more" : "") + "; leave out what it did not find" +
                       (more ? " or what is on record" : "") +
                       ", or if it found them, open it again, import the table, and finish it with " +
                       std::to_string(of.before + static_cast<int>(rows)));
    }
    return out;
}

std::vector<Remedy> RowsOfFinished::remedies() const {
    std::vector<Remedy> out;
    for (const auto &[which, of] : exams_)
        if (of.too_many()) out.push_back({"reopen", {which.first, std::to_string(which.second)}, {"why"}});
    if (out.size() > 1) out.clear();
    return out;
}

std::string found_otherwise(const ExamRecord &exam, int on_record) {
    if (!exam.finished || exam.finished->found == on_record) return "";
    return "exam " + named({&exam}) + " found " + std::to_string(exam.finished->found) +
           " by its count, and " + are_on_record(on_record) + ": it does not count until the two agree; " +
           (on_record < exam.finished->found ? "import the rest" : "withdraw what was not found") +
           ", or open it again and finish it with what it found";
}

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
