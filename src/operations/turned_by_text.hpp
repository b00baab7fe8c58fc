#pragma once

#include "operations/turned.hpp"

#include <optional>

namespace beadbook {

/// Where another text of its criteria by which it was judged rejects the coupon as it stands, or other
/// numbers in their blanks, by which it was judged or that stood there when it had been examined; and those
/// of today do not: somebody changed them in their place. The newest such, if there is one.
std::optional<Turned> turned_by_text(Office &office, const CouponState &state);

/// Whether another text of its own criteria by which it had been judged rejects a coupon as it stood before
/// an entry, and what counts after that does not: the same text, or where the entry names others, theirs of
/// today. Else a file that is softened today would make all forgotten that was made to go before. In words,
/// which rules of which text rejected which finds; nothing: there is none.
std::optional<std::string> reject_by_kept_text(Office &office, const CouponState &before,
                                               const CouponState &after);

/// Whether a verdict may have gone by such a file: a program that did not say it yet judged by a set that is
/// called otherwise than today's, while the coupon named the same criteria.
bool may_have_gone_by_own(Office &office, const CouponState &coupon, const StoredVerdict &verdict,
                          const CriteriaSet &today);

/// Whether a verdict went by what the coupon names as its criteria: by their name, or by the same file of
/// one's own, whatever its set was called then.
bool went_by_own(Office &office, const CouponState &coupon, const StoredVerdict &verdict,
                 const CriteriaSet &today);

} // namespace beadbook
