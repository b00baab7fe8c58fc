#pragma once

#include "facts/stamp.hpp"
#include "measure/day.hpp"
#include "measure/quantity.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace beadbook {

/// Where in the shop's printed copy something was read, by whom, and who read it a second time.
struct CopyRead {
    std::string copy; ///< which edition of the printed standard
    std::string page;
    std::string by, second; ///< two different people; `second` may be empty for a confirmation
    Day on{};
    friend bool operator==(const CopyRead &, const CopyRead &) = default;
};
/// "A. Field and B. Reed (page 21 of AWS D17.1:2017)".
std::string readers_words(const CopyRead &read);
/// "confirmed by A. Field (page 12, edition AWS D17.1:2017, countersigned by B. Reed)".
std::string confirmed_words(const CopyRead &read);

/// That a limit of a set stands in the copy as the file has it.
struct ConfirmationRecord {
    std::string set, edition, hash; ///< of the set's text: a changed text is confirmed no more
    std::string part, class_id;     ///< of a rule, a class each; other parts have no class
    CopyRead read;
    friend bool operator==(const ConfirmationRecord &, const ConfirmationRecord &) = default;
};

/// What a blank of a set is for one class.
struct FillingRecord {
    std::string set, edition;
    std::string blank, clause, kind,
        class_id;       ///< the blank as it was declared: another one is not filled by it
    std::string limits; ///< what it limits and what is plausible, as declared; empty: an older program's
    std::string use;    ///< of the rules that it was read for (Blank::use); empty: an older program's
    std::string typed;  ///< "0.060 in"
    Exact value;        ///< in base units
    CopyRead read;
    friend bool operator==(const FillingRecord &, const FillingRecord &) = default;
};

/// What a record says of one set, as it stands: what was replaced or withdrawn is left out.
struct OwnersCopyState {
    template <class Record>
    struct Entered {
        Record record;
        std::int64_t seq = 0;
        std::string hash; ///< of the entry
        Stamp stamp;
    };
    std::vector<Entered<ConfirmationRecord>> confirmations; ///< in the order in which they were entered
    std::vector<Entered<FillingRecord>> fillings;
};

} // namespace beadbook
