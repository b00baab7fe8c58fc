#pragma once

#include "judge/judgement.hpp"

#include <cstdint>
#include <random>
#include <vector>

namespace beadbook::bench {

/// The job that the judge shares with its peers: coupons of five pores on film, judged for the three classes
/// of MIL-HDBK-1890 Table III (page 11, read).
struct Pore {
    std::int64_t at = 0, size = 0; ///< nm, from where it begins
};
constexpr std::size_t pores_each = 5, job_classes = 3;
constexpr const char *job_set = "mil-hdbk-1890-table-3";
constexpr std::int64_t job_weld = 8 * nm_per_inch, job_thickness = nm_per_inch / 4;

using PoresOfCoupon = std::vector<Pore>;

/// The same coupons for the same number, always.
std::vector<PoresOfCoupon> random_pores(std::size_t coupons);

/// As the judge sees them.
std::vector<Indication> as_indications(const PoresOfCoupon &pores);

/// A coupon of which every fact is known, the first word of each.
Coupon known_coupon(std::int64_t thickness, std::int64_t weld_length);

extern const std::vector<ExamDone> all_exams;

/// Classes rejected and nanoseconds a coupon.
struct JobDone {
    std::size_t rejected = 0;
    double ns_each = 0;
};

} // namespace beadbook::bench
