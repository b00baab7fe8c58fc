#pragma once

#include "language/formula.hpp"
#include "measure/refusal.hpp"

#include <map>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Something that the conditions and formulas of a file may speak of.
struct Name {
    enum class Kind : std::uint8_t {
        quantity, ///< a number with its unit; formulas may use it
        word,     ///< one of some words
        day,      ///< of the calendar
    };
    std::string text; ///< as files write it, blanks and all: "current kind"
    Kind kind = Kind::quantity;
    Slot slot = 0;
    Dimension dimension = Dimension::number; ///< of a quantity
    std::vector<std::string> words;          ///< of a word; empty: any
};

/// Something speaks of a formula or table that has a mistake itself, which is told there.
struct ToldElsewhere : InputError {
    ToldElsewhere() : InputError("what it speaks of has a mistake itself") {}
};

/// The table of names of one file. Sets, rules for welders and practices differ in their table only: the
/// grammar over it is one (language/condition_parser.hpp).
class Names {
public:
    /// False, and nothing added, if the name is taken. Throws std::logic_error on a slot that is too large.
    bool add(Name name);
    const Name *find(std::string_view text) const;
    const std::vector<Name> &all() const { return all_; }
    /// What the file calls a quantity: its first name.
    std::string called(Slot quantity) const;

    std::map<std::string, Formula> formulas;                    ///< named formulas
    std::map<std::string, std::shared_ptr<const Table>> tables; ///< `table NAME`
    /// `blank NAME`: its index in the file's list of blanks, and what it measures.
    struct BlankName {
        Slot index = 0;
        Dimension dimension = Dimension::number;
    };
    std::map<std::string, BlankName> blanks;
    std::map<std::string, Formula> limits; ///< `limit of RULE`, in the class being read
    /// That stand in the file with a mistake, which is told there: who speaks of one is told nothing more.
    std::set<std::string> unread_tables, unread_formulas;

private:
    std::vector<Name> all_;
};

} // namespace beadbook
