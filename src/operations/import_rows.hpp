#pragma once

#include "facts/coupon_state.hpp"
#include "operations/faults.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// Rows of finds of an exam that was finished, which takes as many as it found.
class RowsOfFinished {
public:
    /// `on_record`: how many finds the exam has with this row.
    void take(const CouponState &coupon, const ExamRecord &exam, int on_record, std::size_t row);
    /// Tells each exam that has more now than it found. Returns how many rows are told.
    std::size_t tell(Faults &faults) const;
    /// Opens it again; nothing where it is several, as each must be.
    std::vector<Remedy> remedies() const;

private:
    struct Rows {
        std::string exam; ///< "1 (VT)"
        int found = 0, before = 0;
        std::vector<std::size_t> rows;

        bool too_many() const { return before + static_cast<int>(rows.size()) > found; }
    };
    std::map<std::pair<std::string, int>, Rows> exams_; ///< by mark and number
};

/// That an exam was finished with another number of finds than come with it, and how that is mended; empty if
/// it was not.
std::string found_otherwise(const ExamRecord &exam, int on_record);

/// Rows of a table that are on record already beside those that are new: a table that grew since it was
/// imported.
class RowsAgain {
public:
    /// A find that a row gives. It stands already where its exam has one that reads alike.
    void take(const CouponState &coupon, std::size_t row, const IndicationRecord &find);
    /// Throws Refusal if any stands already.
    void check() const;

private:
    using Standing = std::map<std::pair<int, std::string>, int>;
    std::map<std::string, Standing> standing_; ///< the finds of each coupon by exam and line
    std::vector<std::size_t> new_;
    std::vector<std::size_t> again_;
    std::vector<std::string> as_; ///< "row 2 as #1 of T-1"
};

} // namespace beadbook
