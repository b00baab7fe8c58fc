#pragma once

#include "operations/welders.hpp"

namespace beadbook {

/// A table of welders: CSV whose first row names its columns, which are mark and, as wanted, name, employer
/// and note.
struct WelderTable {
    std::string text;
    std::string name;  ///< of the file, for messages
    bool sure = false; ///< marks and names that may be another's are meant so
};
/// Registers the welder of each row, all or none. Throws Refusal that names every bad line: unknown column,
/// no mark, a mark that is registered already or stands twice.
Done<std::vector<WelderRecord>> enrol_all(Writing &writing, const WelderTable &table);

} // namespace beadbook
