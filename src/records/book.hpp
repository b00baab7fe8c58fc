#pragma once

#include "facts/coupon_state.hpp"
#include "facts/equipment_record.hpp"
#include "facts/owners_copy_record.hpp"
#include "facts/person_record.hpp"
#include "facts/welder_record.hpp"
#include "records/remembered.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What a record file says, in the trade's words. Reads only; operations write (operations/writing.hpp).
class Book {
public:
    Book(const std::string &path, Ledger::Mode mode) : ledger_(path, mode) {}

    Ledger &ledger() { return ledger_; }

    /// As it stands, or as it stood before entry `before`. Whether its exams were valid by their practices is
    /// not told here: that takes the practices' texts (operations/office.hpp). Throws DataError if there is
    /// none.
    CouponState coupon(const std::string &id, std::optional<std::int64_t> before = {});
    bool knows_coupon(const std::string &id) { return ledger_.knows(Family::coupon, id); }
    std::vector<std::string> coupons() { return ledger_.subjects(Family::coupon); }
    /// That name this welder, or once did.
    std::vector<std::string> coupons_of(const std::string &mark) { return ledger_.coupons_of(mark); }
    std::vector<Entry> history(const std::string &id);
    /// As the ledger's, read once.
    const std::vector<Ledger::WelderElsewhere> &welders_elsewhere();
    const std::vector<std::pair<std::string, std::string>> &failed_elsewhere();

    /// Throws DataError if there is no such welder.
    WelderState welder(const std::string &mark);
    bool knows_welder(const std::string &mark);
    std::vector<std::string> welders() { return ledger_.subjects(Family::welder); }
    std::vector<Entry> welder_history(const std::string &mark);
    /// Of the first who is enrolled by that name, where a mark is expected; empty: nobody is.
    std::string mark_of_name(const std::string &name);

    /// Throws DataError if there is no such person; capitals matter (people() has the names as they are).
    PersonState person(const std::string &name);
    std::vector<std::string> people();
    std::vector<Entry> person_history(const std::string &name);

    /// Throws DataError if there is none of that serial number.
    EquipmentState equipment(const std::string &serial);
    std::vector<std::string> all_equipment() { return ledger_.subjects(Family::equipment); }
    std::vector<Entry> equipment_history(const std::string &serial);

    /// What the shop confirmed and filled of a set from its own copy; nothing if it did neither.
    OwnersCopyState owners_copy(const std::string &set);
    std::vector<std::string> sets_with_copy() { return ledger_.subjects(Family::criteria); }
    std::vector<Entry> copy_history(const std::string &set) { return entries(Family::criteria, set); }

private:
    const std::vector<Entry> &entries(Family family, const std::string &subject);

    Ledger ledger_;
    static constexpr auto no_coupon = Ledger::About::no_coupon;
    Remembered<std::string, std::vector<Entry>> coupons_;
    // As long as many coupons are read or judged, these stay: what is entered of a coupon changes none of
    // them.
    Remembered<std::pair<Family, std::string>, std::vector<Entry>, 1000, no_coupon> others_;
    Remembered<std::string, bool, 5000, no_coupon> welders_known_;
    Remembered<bool, std::vector<std::string>, 1, no_coupon> people_;           ///< one, under true
    Remembered<bool, std::vector<Ledger::WelderElsewhere>> elsewhere_;          ///< the same
    Remembered<bool, std::vector<std::pair<std::string, std::string>>> failed_; ///< the same
};

} // namespace beadbook
