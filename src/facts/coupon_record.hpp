#pragma once

#include "facts/carried_fact.hpp"
#include "judge/coupon.hpp"
#include "measure/refusal.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace beadbook {

/// One thing that can be written about a coupon. One table drives the command line, the record, the
/// exchange files and the help, so that a field is added in one place.
struct CouponField {
    enum class Kind : std::uint8_t { text, measure, fact, unit, exams, day };
    std::string name; ///< as an option (--weld-length) and as a key in files (weld-length)
    Kind kind = Kind::text;
    Quantity quantity = Quantity::thinner; ///< Kind::measure; two thicknesses share `thinner`
    Fact fact = Fact::joint;               ///< Kind::fact
    std::string help;
};
const std::vector<CouponField> &coupon_fields();
const CouponField *coupon_field(std::string_view name);

/// What is said of each of several processes: "S + B".
std::vector<std::string> parts_of_several(const std::string &text);

/// One field as a person wrote it, checked; a measurement with its unit, and read once.
struct CouponValue {
    std::string text;
    Exact value; ///< of a measurement, in base units
    friend bool operator==(const CouponValue &, const CouponValue &) = default;
};

/// A coupon as people wrote it, by the names of coupon_fields().
struct CouponRecord {
    std::string id;
    std::map<std::string, CouponValue> fields;
    std::vector<std::string>
        sure; ///< plausibility rules that somebody set aside for it (facts/plausibility.hpp)
    std::set<std::string> by_settings; ///< fields that nobody said of it: a shop's settings filled them in
    std::string like; ///< the coupon of the same record that it was registered like; empty: none, or unknown
    std::string withdrawn;           ///< why it was taken back; empty if it stands
    std::vector<CarriedFact> before; ///< what stood against it on the record that it was imported from

    /// Checks one value and stores it; a bare length takes the unit that the coupon has by then (set_all
    /// minds the order, and sizes that are called by a number). Throws DataError.
    void set(const std::string &field, const std::string &value);
    /// Sets many: `units` first, then what is written with its unit, then bare numbers. Throws DataError.
    void set_all(const std::map<std::string, std::string> &values);
    std::string get(const std::string &field) const;
    /// Its bend, fracture or section tests, that is.
    bool bends_failed() const { return get("mechanical") == "failed"; }
    /// A size that is called by a number (NPS 2, sch 40, 16 ga) as its measure with that name (criteria/
    /// nominal_size.hpp); any other value as it is. `beside` is what is given with it, before what is known.
    /// Throws DataError where it is not in the tables, or can mean several.
    std::string sized(const std::string &field, const std::string &value,
                      const std::map<std::string, std::string> &beside) const;
    /// Of bare numbers: `units`, else the one that all its sizes are written in; nothing if they differ or
    /// there are none.
    std::optional<Unit> fixed_unit() const;
    /// In which its sizes were said, so that a limit that is printed in two units holds by it: the one that
    /// its walls are written in, else all its sizes, nothing if they differ; `units` only where there are
    /// none. In which unit somebody looks at it changes no verdict.
    std::optional<Unit> sizes_unit() const;
    /// For printing: the fixed one, else inches.
    Unit unit() const { return fixed_unit().value_or(Unit::inch); }

    /// For the judge. The thinner of two thicknesses is T; the girth of a tube follows from its diameter.
    Coupon facts() const;

    friend bool operator==(const CouponRecord &, const CouponRecord &) = default;
};

/// The mark of a coupon or a welder: letters, digits, dot, dash, underscore; at most 40. Throws DataError,
/// which says what it is the mark of.
void check_mark(const std::string &mark, const std::string &of);
inline void check_coupon_id(const std::string &id) { check_mark(id, "coupon"); }

/// Free text that is stored: valid UTF-8, no control characters, at most 2000 bytes. Throws DataError.
std::string checked_text(std::string_view text, std::string_view what);

/// Whether a coupon's field is a bare length, which takes the unit that other fields fix.
bool is_bare_length(const std::string &field, std::string_view value);

/// What criteria are called: of an own file its name, for where it lies on a machine is nobody's business.
std::string criteria_name(const std::string &criteria);

} // namespace beadbook
