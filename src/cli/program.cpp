// The program itself: settings, completion, manual.
#include "measure/text.hpp"
#include "render/json_settings.hpp"
#include "terminal/call.hpp"
#include "terminal/completion.hpp"
#include "terminal/manual.hpp"
#include "terminal/settings.hpp"

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

Deeds program_deeds() {
    return {{"settings", run_settings}, {"completion", run_completion}, {"manual", run_manual}};
}

} // namespace beadbook
