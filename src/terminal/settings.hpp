#pragma once

#include "report/settings_document.hpp"
#include "terminal/command.hpp"
#include "terminal/session.hpp"

namespace beadbook {

/// BEADBOOK_SETTINGS, else beadbook/settings.yaml in the user's folder of settings; empty if there is no
/// home.
std::string settings_path(const Session &session);

/// The file of settings: options of a command, or of `every`, that hold where a call does not give them.
///
///     every: {book: /shop/book.db, color: never}
///     register: {criteria: ufgs-15216n, units: in}
///
/// None if there is no file. Throws DataError with line and column: no such command or option, a flag that is
/// not `yes`, or what a person must say each time.
std::vector<Setting> settings_in_file(const Session &session);

/// The call's words, and what the settings say for the rest. Variables of the environment go before the file.
Args with_settings(const Command &command, Args given, const Session &session);

/// All that a call takes from elsewhere than its words, and where from.
SettingsInForce settings_in_force(const Session &session);

} // namespace beadbook
