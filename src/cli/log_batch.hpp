#pragma once

#include "cli/session.hpp"
#include "facts/log_line.hpp"

namespace beadbook {

/// Lines of a log to indications: blank lines and lines that begin with # are passed over. Every bad line is
/// named with its place; one is enough to refuse all. Throws DataError.
std::vector<IndicationRecord> parse_log(const std::string &text, const std::string &name,
                                        const WeldLine &weld, Unit unit);

/// The prompt: one line an indication, each stored at once, with the live verdict a class; undo, list, done.
void log_by_prompt(Book &book, const std::string &coupon, int exam, const std::string &criteria,
                   const Stamp &stamp, Session &session);

} // namespace beadbook
