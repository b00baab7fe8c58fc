#include "operations/board.hpp"

#include "measure/natural_order.hpp"
#include "measure/text.hpp"
#include "operations/selecting.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

std::string kind_on_board(const CouponRecord &coupon) {
    std::vector<std::string> weld, wanted;
    for (const char *field : {"joint", "form", "position", "process"})
        if (std::string value = coupon.get(field); !value.empty()) weld.push_back(std::move(value));
    if (const std::string set = coupon.get("criteria"); !set.empty()) wanted.push_back(criteria_name(set));
    if (const std::string id = coupon.get("class"); !id.empty()) wanted.push_back("class " + id);
    const std::string between = weld.empty() || wanted.empty() ? "" : ", ";
    const std::string all = joined(weld, " ") + between + joined(wanted, " ");
    return all.empty() ? "not said" : all;
}

/// The first coupon that is asked for, from there on.
std::string first_meant(Office &office, const Selection &of, const Ledger::LinesAsked &from) {
    std::string out;
    walk(office, from, [&](CouponAtHand &one) {
        if (is_meant(of, one)) out = one.mark();
        return out.empty();
    });
    return out;
}

} // namespace

Board board_of(Office &office, const Selection &of, std::size_t most) {
    Newest found = newest(office, of, most);
    Board out;
    out.more = found.more;
    out.coupons = found.coupons.size();
    std::map<std::string, Board::Line, NaturalOrder> lines;
    for (auto &cell : found.coupons) {
        const CouponRecord &record = cell.coupon.record;
        const bool open = cell.grade == GradeState::none || cell.grade == GradeState::again;
        if (!record.withdrawn.empty())
            ++out.withdrawn;
        else if (open)
            ++out.to_grade;
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
    const auto here = office.ledger().line(mark);
    if (!here) throw DataError("there is no coupon '" + shown(mark) + "' on record");
    return {first_meant(office, of, {here->first, true, 20, of.cohort, of.class_id}),
            first_meant(office, of, {here->first, false, 20, of.cohort, of.class_id})};
}

} // namespace beadbook
