#include "operations/import_numbers.hpp"

#include "measure/refusal.hpp"

#include <algorithm>

namespace beadbook {

void Numbers::claim(int number) {
    if (number == 0) return;
    if (number <= used_)
        throw refused("coupon " + coupon_ + " has used " + what_ + " number " + std::to_string(number) +
                      " already");
    if (!claimed_.insert(number).second)
        throw refused(what_ + " number " + std::to_string(number) + " of coupon " + coupon_ +
                      " stands twice");
    highest_ = std::max(highest_, number);
}

} // namespace beadbook
