#include "operations/board.hpp"

#include "measure/natural_order.hpp"
#include "measure/text.hpp"
#include "operations/selecting.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

/// Of criteria in a file the name without its folders.
std::string kind_on_board(const CouponRecord &coupon) {
    std::vector<std::string> weld, wanted;
    for (const char *field : {"joint", "form", "position", "process"})
        if (std::string value = coupon.get(field); !value.empty()) weld.push_back(std::move(value));
    if (const std::string set = coupon.get("criteria"); !set.empty())
        wanted.push_back(set.substr(set.rfind('/') + 1));
    if (const std::string id = coupon.get("class"); !id.empty()) wanted.push_back("class " + id);
    const std::string between = weld.empty() || wanted.empty() ? "" : ", ";
    const std::string all = joined(weld, " ") + between + joined(wanted, " ");
    return all.empty() ? "not said" : all;
}

/// The day is looked at once, before any coupon is.
void check_days(const Selection &of) {
    if (of.from && of.to && *of.from > *of.to)
        throw refused("from " + print(*of.from) + " to " + print(*of.to) + " there is no day").at("from");
}

Board::Cell cell_of(CouponAtHand &one) {
    const CouponState &coupon = one.coupon();
    Board::Cell out;
    out.coupon = {coupon.record, {}, coupon.indications.size(), {}, {}, coupon.grade, one.grading()};
    for (const auto &exam : coupon.exams) out.coupon.exams.push_back(exam.method);
    if (const JudgedOrNot &judged = one.judged(); judged.judged)
        out.coupon.verdict = judged.judged->verdict();
    else
        out.coupon.why_not = judged.why_not;
    out.grade = one.grade();
    return out;
}

/// The first of these, in their order, that is asked for.
template <class Iterator>
std::string first_meant(Office &office, const Selection &of, Iterator from, Iterator until) {
    for (; from != until; ++from) {
        const CouponState coupon = office.coupon(*from);
        CouponAtHand one(office, coupon);
        if (is_meant(of, one)) return *from;
    }
    return "";
}

} // namespace

Board board_of(Office &office, const Selection &of, std::size_t most) {
    check_days(of);
    std::vector<Board::Cell> cells;
    Board out;
    const auto marks = of.welder.empty() ? office.book().coupons() : office.book().coupons_of(of.welder);
    for (auto mark = marks.rbegin(); mark != marks.rend(); ++mark) {
        const CouponState coupon = office.coupon(*mark);
        CouponAtHand one(office, coupon);
        if (!is_meant(of, one)) continue;
        if (cells.size() == most) {
            out.more = true;
            break;
        }
        cells.push_back(cell_of(one));
    }
    std::reverse(cells.begin(), cells.end());
    out.coupons = cells.size();
    std::map<std::string, Board::Line, NaturalOrder> lines;
    for (auto &cell : cells) {
        const CouponRecord &record = cell.coupon.record;
        const bool open = cell.grade == GradeState::none || cell.grade == GradeState::again;
        if (open && record.withdrawn.empty()) ++out.to_grade;
        const std::string kind = kind_on_board(record), welder = record.get("welder");
        auto column = std::find(out.kinds.begin(), out.kinds.end(), kind);
        if (column == out.kinds.end()) column = out.kinds.insert(out.kinds.end(), kind);
        const auto at = static_cast<std::size_t>(column - out.kinds.begin());
        Board::Line &line = lines[welder];
        line.welder = welder;
        if (line.cells.size() <= at) line.cells.resize(at + 1);
        line.cells[at].push_back(std::move(cell));
    }
    for (auto &[key, line] : lines) {
        line.cells.resize(out.kinds.size());
        if (office.book().knows_welder(line.welder))
            line.name = office.book().welder(line.welder).record.name;
        out.lines.push_back(std::move(line));
    }
    // Those without a welder come last.
    if (!out.lines.empty() && out.lines.front().welder.empty())
        std::rotate(out.lines.begin(), out.lines.begin() + 1, out.lines.end());
    return out;
}

Neighbours neighbours_of(Office &office, const Selection &of, const std::string &mark) {
    check_days(of);
    const auto marks = office.book().coupons();
    const auto here = std::find(marks.begin(), marks.end(), mark);
    if (here == marks.end()) throw DataError("there is no coupon '" + shown(mark) + "' on record");
    return {first_meant(office, of, std::make_reverse_iterator(here), marks.rend()),
            first_meant(office, of, here + 1, marks.end())};
}

} // namespace beadbook
