#pragma once

#include "facts/coupon_state.hpp"

#include <map>
#include <string>
#include <vector>

/// The exchange format (records/README.md): what was measured, in a form that other programs read and that
/// can be read back unchanged. Verdicts are derived again; grades and history stay with the record.
namespace beadbook::codec {

inline constexpr int exchange_version = 1;
inline constexpr const char *exchange_format = "beadbook exchange";

/// One mistake of a file: at which byte, on what, and what is wrong.
struct Mistake {
    std::size_t at = 0;
    std::string what;
};

struct GivenIndication {
    std::size_t at = 0; ///< byte in the file
    IndicationRecord record;
};
struct GivenExam {
    std::size_t at = 0;
    ExamRecord record; ///< number 0: the file gives none
    std::vector<GivenIndication> indications;
};
struct GivenPhoto {
    std::size_t at = 0;
    PhotoRecord record; ///< named by its hash; a file of this format has no bytes
};
/// One coupon of an exchange file. If it has mistakes, only they can be relied on.
struct GivenCoupon {
    std::size_t at = 0;
    CouponRecord record;
    std::vector<GivenExam> exams;
    std::vector<Mistake> mistakes;
    std::vector<GivenPhoto> photos = {};
    std::map<std::string, std::string> texts = {}; ///< of its fields, as the file has them
};

/// Reads every coupon of a file strictly: unknown and doubled keys and values of the wrong kind are mistakes,
/// and so is a number of nanometres that contradicts the text beside it. Throws DataError: not JSON, or
/// another format or version.
std::vector<GivenCoupon> read_exchange(const std::string &text);

/// One coupon, as it stands in the list of such a file. Throws DataError: not JSON.
GivenCoupon read_exchange_coupon(const std::string &text);

/// A coupon with its exams and what they found as one line of JSON, its end included.
std::string exchange_line(const CouponState &coupon);
/// Coupons as a file of the exchange format, given part by part: a head, each coupon, and the end.
class ExchangeText {
public:
    std::string head() const;
    std::string coupon(const CouponState &coupon);
    std::string end() const;

private:
    bool any_ = false;
};

} // namespace beadbook::codec
