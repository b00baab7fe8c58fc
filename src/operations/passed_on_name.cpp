#include "operations/passed_on_name.hpp"

#include "facts/name_likeness.hpp"
#include "records/codecs/typed.hpp"
#include "records/codecs/welder.hpp"

namespace beadbook {
namespace {

/// A name of the welder's that a mark bore after an entry, and bears no more: one that was only written out
/// or mended is the same.
std::string borne_after(Book &book, const std::string &mark, std::int64_t entry, const WelderNames &welder) {
    const std::string now = book.welder(mark).record.name;
    std::string out, name;
    const auto take = [&] {
        if (!name.empty() && !may_be_taken_for(name, now) && welder.means(name)) out = name;
    };
    for (const auto &one : book.welder_history(mark)) {
        if (one.kind != "welder" || is_withdrawal(one)) continue;
        if (one.seq > entry) take();
        name = codec::welder_from(mark, codec::parsed(one.body)).name;
    }
    return out;
}

/// The name where the coupon comes from, if it is this welder's and not that of who bears its mark here.
std::string borne_elsewhere(Book &book, const CouponRecord &coupon, const std::string &mark,
                            const WelderNames &welder) {
    const std::string name = welder_there(coupon.before);
    if (name.empty() || says_another(coupon) || !welder.may_be(name) ||
        (book.knows_welder(mark) && WelderNames(book, mark).may_be(name)))
        return "";
    return name;
}

} // namespace

std::vector<std::string> coupons_once_his(Book &book, const WelderNames &welder) {
    std::vector<std::string> out;
    for (const auto &mark : book.ledger().welders_changed())
        if (mark != welder.mark() && !borne_after(book, mark, 0, welder).empty())
            for (auto &id : book.coupons_of(mark)) out.push_back(std::move(id));
    for (const auto &one : book.welders_elsewhere())
        if (welder.may_be(one.name)) out.push_back(one.coupon);
    return out;
}

std::string called_as_then(Book &book, const CouponRecord &coupon, std::int64_t begun,
                           const WelderNames &welder) {
    const std::string mark = coupon.get("welder");
    if (mark.empty() || mark == welder.mark()) return "";
    std::string out = borne_elsewhere(book, coupon, mark, welder);
    if (out.empty() && book.knows_welder(mark)) out = borne_after(book, mark, begun, welder);
    return out;
}

} // namespace beadbook
