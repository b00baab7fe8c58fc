#pragma once

#include "cli/exit_code.hpp"
#include "cli/options.hpp"
#include "cli/session.hpp"

namespace beadbook {

/// One command: its words, its help and what it does. The table below drives dispatch, help, completion of
/// misspelt names, and the tests that every command has help and an example.
struct Command {
    std::string name;
    std::string arguments; ///< "COUPON [NUMBER]"
    std::string summary;   ///< one line
    std::string details;   ///< may be empty
    std::string example;
    std::size_t least = 0, most = 0; ///< positional words
    std::vector<Option> options;     ///< of its own; --book and --help come with every command
    std::function<ExitCode(const Args &, Session &)> run;
};
const std::vector<Command> &commands();

// One function a command, each in its own file cmd_NAME.cpp.
Command register_command();
Command change_command();
Command exam_command();
Command log_command();
Command finish_command();
Command reopen_command();
Command move_command();
Command restore_command();
Command correct_command();
Command withdraw_command();
Command remark_command();
Command judge_command();
Command why_command();
Command grade_command();
Command coupons_command();
Command show_command();
Command history_command();
Command criteria_command();
Command export_command();
Command import_command();
Command compute_command();
Command practice_command();
Command valid_command();
Command methods_command();
Command rules_command();
Command range_command();
Command plan_command();
Command may_command();
Command enrol_command();
Command welder_command();
Command welders_command();
Command due_command();
Command qualify_command();
Command carry_command();
Command used_command();
Command trained_command();
Command renew_command();
Command extend_command();
Command revoke_command();
Command retract_command();
Command record_command();
Command verify_command();
Command backup_command();

/// Runs the program on its words (without its own name). Never throws.
int run_program(const std::vector<std::string> &words, Session &session);

} // namespace beadbook
