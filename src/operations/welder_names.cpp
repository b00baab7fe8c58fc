#include "operations/welder_names.hpp"

#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "operations/marks.hpp"
#include "operations/welder_meant.hpp"
#include "records/fold.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool share(const std::vector<std::string> &a, const std::vector<std::string> &b) {
    return std::any_of(a.begin(), a.end(),
                       [&](const auto &one) { return std::find(b.begin(), b.end(), one) != b.end(); });
}

void take_seen(const std::string &text, std::vector<std::string> &out) {
    if (std::string seen = seen_mark(text); !seen.empty()) out.push_back(std::move(seen));
}

} // namespace

WelderText::WelderText(const std::string &as_written)
    : text(as_written), keys(person_keys(folded_name(text))) {
    for (const auto part : names_in(text)) parts.emplace_back(part);
    take_seen(text, seen);
    if (parts.size() > 1)
        for (const auto &part : parts) take_seen(part, seen);
}

WelderNames::WelderNames(std::string mark, const std::vector<std::string> &ever) : mark_(std::move(mark)) {
    take_seen(mark_, mark_seen_);
    for (const auto &name : ever)
        if (!name.empty()) names_.emplace_back(name);
}

WelderNames::WelderNames(Book &book, const std::string &mark)
    : WelderNames(mark, names_ever(mark, book.welder_history(mark))) {}

bool WelderNames::means(const WelderText &who) const {
    if (!mark_.empty() &&
        (who.text == mark_ || std::find(who.parts.begin(), who.parts.end(), mark_) != who.parts.end()))
        return true;
    return std::any_of(names_.begin(), names_.end(),
                       [&](const WelderText &name) { return share(name.keys, who.keys); });
}

bool WelderNames::seen_as(const WelderText &who) const {
    return share(mark_seen_, who.seen) ||
           std::any_of(names_.begin(), names_.end(),
                       [&](const WelderText &name) { return share(name.seen, who.seen); });
}

std::string WelderNames::taken_for(const WelderText &who) const {
    for (const auto &name : names_)
        if (may_be_taken_for(name.text, who.text)) return name.text;
    return "";
}

std::string welder_name(Book &book, const std::string &mark) {
    return mark.empty() || !book.knows_welder(mark) ? "" : book.welder(mark).record.name;
}

bool says_another(const CouponRecord &coupon) { return is_meant(coupon.sure, welder_like_another); }

bool welded_as(Book &book, const CouponRecord &coupon, const WelderNames &welder) {
    const std::string text = coupon.get("welder");
    if (text.empty()) return false;
    if (book.knows_welder(text)) return text == welder.mark();
    if (welder.means(text)) return true;
    return !says_another(coupon) && welder.seen_as(text);
}

bool may_be_welded_as(Book &book, const CouponRecord &coupon, const WelderNames &welder) {
    const std::string text = coupon.get("welder");
    return !text.empty() && !book.knows_welder(text) && !says_another(coupon) &&
           !welded_as(book, coupon, welder) && !welder.taken_for(text).empty();
}

} // namespace beadbook
