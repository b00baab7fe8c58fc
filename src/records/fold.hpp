#pragma once

#include "facts/coupon_state.hpp"
#include "facts/equipment_record.hpp"
#include "facts/owners_copy_record.hpp"
#include "facts/person_record.hpp"
#include "facts/welder_record.hpp"
#include "records/entry.hpp"

#include <set>
#include <span>

namespace beadbook {

/// The entries about one coupon, oldest first, to the coupon as it stands after them. Throws StoreError: an
/// entry cannot be read.
CouponState fold_coupon(std::span<const Entry> entries, const Vocabulary &vocabulary = Vocabulary::shipped());

/// One entry more. False if all must be folded again: a change of the coupon itself moves what lies on it.
bool take_entry(CouponState &state, const Entry &entry, const Vocabulary &vocabulary = Vocabulary::shipped());

/// The exams whose standing may be another once the entry is taken: its own, and that under which its find
/// lay.
std::set<int> exams_touched(const CouponState &before, const Entry &entry);

/// What stands of a welder.
WelderState fold_welder(const std::string &mark, std::span<const Entry> entries);
/// Every name that the mark was enrolled under, the first one first, once each: who is called otherwise now
/// is the same person.
std::vector<std::string> names_ever(const std::string &mark, std::span<const Entry> entries);
/// A person, a piece of equipment: what stands of the entries.
PersonState fold_person(const std::string &name, std::span<const Entry> entries);
OwnersCopyState fold_owners_copy(const std::string &set, std::span<const Entry> entries);
EquipmentState fold_equipment(const std::string &serial, std::span<const Entry> entries);

} // namespace beadbook
