#pragma once

#include "operations/office.hpp"
#include "records/changed_values.hpp"

namespace beadbook {

/// Whether it says something else of who welded it, how, or by what it is judged: then it was failed by what
/// it was, whatever it is called now.
bool of_the_test(const std::vector<ChangedValue> &values);

/// A change of what a coupon is said to be, after it was examined and while its own criteria rejected it,
/// after which they reject it no more, or it is said to be another test; such a change of an exam that was
/// finished, or of what it found; or of the text of those criteria, in their place. A finger may have
/// slipped; or a reject was made to go.
struct Turned {
    CouponRecord before;
    std::vector<ChangedValue> values;
    bool accepted = false; ///< rejected no more
    std::string why;
    Stamp stamp;
    enum class By : std::uint8_t { description, exam, text, elsewhere };
    By by = By::description;   ///< text: of its criteria; the stamp is of the verdict by the old one;
                               ///< elsewhere: on the record that it was imported from
    std::int64_t entry = 0;    ///< of the change; 0: text, elsewhere
    std::string by_rules = {}; ///< a kept text: which of its rules rejected what
    std::string told = {};     ///< elsewhere, or by a text of which something is not known: the sentence
    /// Names of the fields.
    std::vector<std::string> fields() const;
    bool of_the_test() const { return beadbook::of_the_test(values); }
    /// "it was rejected by iso-5817 before its class was changed"; of a kept text with rules and finds.
    std::string words() const;
};
/// Oldest first; that of the criteria's text last. Two verdicts are taken for each change that was made after
/// an examination.
std::vector<Turned> turned(Office &office, const std::string &coupon);

} // namespace beadbook
