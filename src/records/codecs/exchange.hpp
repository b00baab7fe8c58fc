#pragma once

#include "facts/coupon_state.hpp"

#include <map>
#include <string>
#include <vector>

/// The exchange format (records/README.md): what was measured, in a form that other programs read and that
/// can be read back unchanged. Verdicts are derived again; grades and history stay with the record.
namespace beadbook::codec {

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
/// One coupon of an exchange file. If it has mistakes, only they can be relied on.
struct GivenCoupon {
    std::size_t at = 0;
    CouponRecord record;
    std::vector<GivenExam> exams;
    std::vector<Mistake> mistakes;
    std::map<std::string, std::string> texts = {}; ///< of its fields, as the file has them
};

/// Reads every coupon of a file strictly: unknown and doubled keys and values of the wrong kind are mistakes,
/// and so is a number of nanometres that contradicts the text beside it. Throws DataError: not JSON, or
/// another format or version.
std::vector<GivenCoupon> read_exchange(const std::string &text);

/// The coupons as such a file.
std::string exchange_text(const std::vector<CouponState> &coupons);

} // namespace beadbook::codec
