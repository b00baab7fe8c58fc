#pragma once

#include "operations/welder_meant.hpp"
#include "operations/writing.hpp"

namespace beadbook {

/// What is said about a coupon: fields by the names of coupon_fields().
struct CouponRequest {
    std::string mark;
    std::map<std::string, std::string> fields;
    bool sure = false;                      ///< what nobody would believe at first sight is meant so
    std::vector<std::string> sure_of = {};  ///< or only what these plausibility rules ask about
    std::set<std::string> by_settings = {}; ///< of the fields: those that settings filled in
};

/// A coupon as it was said, every field checked, its criteria found and its class one of theirs. `base` is
/// what is known already; what was set aside for it stays so while it reads the same. The one door for
/// register, change, import and carry. Words that rules for welders do not know are refused
/// (operations/known_words.hpp): `by` those rules, else by any. Throws Refusal, Unsure.
CouponRecord described(Catalogue &catalogue, const CouponRequest &request, CouponRecord base = {},
                       const RangeRules *by = nullptr);

/// What was understood of sizes that were called by a number (NPS 2, 16 ga steel), a sentence each.
std::vector<std::string> sizes_understood(const std::map<std::string, std::string> &given,
                                          const CouponRecord &kept);

/// Throws DataError if the mark is taken, and names one that is free. Notes: what is not said and could be
/// (coupon_hints.hpp), a weld thickness that was worked out because it is said to be `full`,
/// and sizes_understood.
Done<CouponRecord> register_coupon(Writing &writing, const CouponRequest &request, CouponRecord base = {});
/// One of many: the marks on record are read once, by the caller.
class MarksAlike;
Done<CouponRecord> register_coupon(Writing &writing, const CouponRequest &request, CouponRecord base,
                                   MarksAlike &alike);
/// Throws DataError if the mark is taken. `tell_free`: which one is free comes with it; not of what is
/// imported, which may be on record under that mark.
void check_new(Book &book, const std::string &mark, bool tell_free = true);

/// Marks on record, so that one which somebody would take for another is asked about; welders too
/// (welder_meant.hpp).
class MarksAlike {
public:
    explicit MarksAlike(Book &book);
    /// Throws Unsure where another mark is read like it (seen_mark) or it looks as if another was meant
    /// (odd_mark), unless that is meant: then the coupon keeps it in its `sure`.
    void take(CouponRecord &coupon, bool sure, const std::vector<std::string> &sure_of);

private:
    std::map<std::string, std::string> by_seen_;
    WeldersMeant welders_;
};

struct CouponChange {
    CouponRequest said;
    std::vector<std::string> forget; ///< fields that should not be there
    std::string why;
};
/// The old entry is kept. Refused if it changes nothing, or if what was logged would no longer lie on the
/// weld.
Done<CouponRecord> change_coupon(Writing &writing, const CouponChange &request);

/// Takes a whole coupon back, for a reason: it stays on record, is judged no more and proves nothing.
Done<CouponRecord> withdraw_coupon(Writing &writing, const std::string &mark, const std::string &why);
/// Brings it back.
Done<CouponRecord> restore_coupon(Writing &writing, const std::string &mark, const std::string &why);

/// A free remark.
Done<Remark> remark_on(Writing &writing, const std::string &mark, const std::string &text);

} // namespace beadbook
