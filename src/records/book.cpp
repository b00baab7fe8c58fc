#include "records/book.hpp"

#include "measure/text.hpp"
#include "records/fold.hpp"

namespace beadbook {

std::vector<Entry> Book::history(const std::string &id) {
    auto out = ledger_.entries_of(Family::coupon, id);
    if (out.empty()) throw DataError("there is no coupon '" + shown(id) + "'" + did_you_mean(id, coupons()));
    return out;
}

CouponState Book::coupon(const std::string &id, std::optional<std::int64_t> before) {
    auto all = history(id);
    if (before) std::erase_if(all, [&](const Entry &e) { return e.seq >= *before; });
    return fold_coupon(all);
}

std::vector<Entry> Book::welder_history(const std::string &mark) {
    auto out = ledger_.entries_of(Family::welder, mark);
    if (out.empty())
        throw refused("there is no welder '" + shown(mark) + "'" + did_you_mean(mark, welders()))
            .mend({"enrol", {mark}, {}});
    return out;
}

WelderState Book::welder(const std::string &mark) { return fold_welder(mark, welder_history(mark)); }

} // namespace beadbook
