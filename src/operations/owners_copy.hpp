#pragma once

#include "criteria/owners_copy.hpp"
#include "operations/writing.hpp"

namespace beadbook {

/// What a blank limits, and what is plausible of it, as its set declares it.
std::string declared_words(const Blank &blank);

/// Why the number bears on this text of the set no more, in words; empty: it does. It is of the set's
/// edition, its blank is declared alike, and stands in the same rules.
std::string why_it_fell(const FillingRecord &filling, const CriteriaSet &set);

/// What of the record's copy bears on this text of the set, confirmations of this very text among it; and
/// which numbers fell.
OwnersCopy copy_that_bears(const OwnersCopyState &state, const CriteriaSet &set);

/// A limit that somebody held against the shop's printed copy.
struct ConfirmRequest {
    std::string criteria;             ///< a shipped name or a file
    std::string part;                 ///< id of a rule, or of another part with a standing
    std::vector<std::string> classes; ///< of a rule; none: all that have a limit
    std::string copy, page;           ///< edition of the printed standard, and where in it
    std::string second;               ///< who countersigns; may be empty
    std::string why;                  ///< of a change
    bool sure = false;                ///< two names that are nearly one are two persons'
};
struct Confirmed {
    std::string set, edition, part;
    std::vector<ConfirmationRecord> confirmations; ///< one a class
};
/// By whoever acts. Who confirms what another person confirmed from the same page countersigns it. Throws
/// Refusal: no such part or class, no copy (field "edition") or page (field "page"), the same person twice
/// (field "second"), a blank (it is filled, not confirmed), a change without a reason, nothing that changes;
/// Unsure: one name may be the other with a slip.
Done<Confirmed> confirm_limit(Writing &writing, const ConfirmRequest &request);

/// A number of the printed copy for a blank.
struct FillRequest {
    std::string criteria, blank, value; ///< value: "0.060 in"
    std::vector<std::string> classes;   ///< that the number is for; may be empty if only one hangs on it
    std::string copy, page, second;     ///< the second person is needed
    std::string why;                    ///< of a change
    bool sure = false;                  ///< two names that are nearly one are two persons'
};
struct Filled {
    std::string set, edition, blank, limits;
    std::vector<FillingRecord> fillings; ///< one a class
    std::vector<std::string> still_open; ///< classes of the blank that nobody filled
};
/// Throws Refusal: no such blank or class, a value of another kind or one that cannot be meant (field
/// "value"), no copy, no page, no second person or the same twice (field "second"), a change without a
/// reason, nothing that changes; Unsure as above.
Done<Filled> fill_blank(Writing &writing, const FillRequest &request);

/// Takes a confirmation or a filling back.
struct RetractCopyRequest {
    std::string criteria, part;       ///< of a rule or a blank
    std::vector<std::string> classes; ///< none: all
    std::string why;
};
struct CopyRetracted {
    std::string set, part;
    bool blank = false;               ///< a filling; else a confirmation
    std::vector<std::string> classes; ///< empty: a part without classes
};
/// Throws Refusal: nothing of it is on record, no reason (field "why").
Done<CopyRetracted> retract_copy(Writing &writing, const RetractCopyRequest &request);

/// How the blanks and confirmations of one set stand in this record.
struct CopySheet {
    std::shared_ptr<const CriteriaSet> set; ///< with all that bears on it
    OwnersCopyState entered;
    struct Fallen {
        FillingRecord record;
        std::string why;
    };
    /// Confirmations of another text of the set, and fillings that fell: they bear on nothing.
    std::vector<ConfirmationRecord> of_other_text;
    std::vector<Fallen> fallen;
    std::size_t open() const; ///< blanks by class that nobody filled
};
CopySheet copy_sheet(Office &office, const std::string &criteria);
/// Of every shipped set that has a blank, and of all that the record speaks of and that can be opened.
std::vector<CopySheet> copy_sheets(Office &office);

/// Whether a stored verdict used other numbers in the blanks of its set than stand there now.
bool older_than_filled(Office &office, const StoredVerdict &verdict);

} // namespace beadbook
