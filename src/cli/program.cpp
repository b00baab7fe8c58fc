// The program itself: settings, completion, manual.
#include "cli/completion.hpp"
#include "cli/manual.hpp"
#include "cli/settings.hpp"
#include "measure/text.hpp"
#include "render/json_settings.hpp"

namespace beadbook {
namespace {

/// As it is, not wrapped.
ExitCode tell_plain(Call &call, const std::string &text) {
    if (call.json()) return call.tell(PlainText{text});
    call.session().out << text;
    return ExitCode::done;
}

ExitCode run_settings(Call &call) { return call.tell(settings_in_force(call.session())); }

ExitCode run_completion(Call &call) { return tell_plain(call, completion_for(call.at(0))); }

ExitCode run_manual(Call &call) {
    return tell_plain(call,
                      call.words().empty() ? program_manual() : command_manual(command_named(call.at(0))));
}

} // namespace

std::vector<Command> program_commands() {
    return {
        looks(For::keeper, run_settings, R"(settings
what holds where a call does not say it, and where each value comes from
settings
The file is BEADBOOK_SETTINGS, else beadbook/settings.yaml in XDG_CONFIG_HOME or ~/.config. It names a command, or
'every', and below it options with their values:
  every: {book: /shop/book.db, color: never}
  register: {criteria: ufgs-15216n, units: in}
What a person states (who examined, found, sure, why, remark, a size and the like) is said in each call, never here.
A call's own words go before variables of the environment, and these before the file.)"),
        looks(For::keeper, run_completion, R"(completion bash|zsh|fish
a script that lets a shell complete commands, options and their words
completion bash
For bash: source <(beadbook completion bash); for zsh put it into a folder of fpath as _beadbook; for fish into
~/.config/fish/completions/beadbook.fish.)"),
        looks(For::keeper, run_manual, R"(manual [COMMAND]
the manual page of the program or of one command, for man
manual log)"),
    };
}

} // namespace beadbook
