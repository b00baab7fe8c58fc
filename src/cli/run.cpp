#include "cli/command.hpp"

#include "cli/version.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <sstream>

namespace beadbook {
namespace {

constexpr std::string_view exit_codes =
    "Exit codes: 0 done, accepted; 1 rejected, uncovered; 5 cannot say; "
    "6 work not allowed;\n"
    "2 wrong usage; 3 bad data, nothing stored; 4 trouble with the record; "
    "130 interrupted.\n";

std::vector<Option> options_of(const Command &command) {
    return options(command.options,
                   Option{"book", "FILE", "the record (else BEADBOOK_BOOK, else your data folder)"},
                   Option{"help", "", "this help", 'h'});
}

std::string command_help(const Command &command) {
    std::ostringstream out;
    out << "beadbook " << command.name << (command.arguments.empty() ? "" : " " + command.arguments)
        << " [options]\n"
        << command.summary << "\n\nExample:\n  " << command.example << "\n";
    if (!command.details.empty()) out << "\n" << command.details << "\n";
    out << "\n" << options_help(options_of(command)) << "\n" << exit_codes << "\n" << caution;
    return out.str();
}

std::string program_help() {
    std::ostringstream out;
    out << "beadbook COMMAND ...   examination log and acceptance evaluator for weld test coupons\n\n"
           "Example:\n"
           "  beadbook register T-7 --criteria ufgs-15216n --joint groove --form tube --weld-thickness "
           "3/16in\n"
           "  beadbook exam T-7 PT --examiner \"A. Field\" --level II\n"
           "  beadbook log T-7 \"rounded indication 0.06 at 2.1\"\n"
           "  beadbook judge T-7\n\nCommands:\n";
    for (const auto &c : commands())
        out << "  " << c.name << std::string(12 - c.name.size(), ' ') << c.summary << "\n";
    out << "\n'beadbook COMMAND --help' tells more. Commands that print data take --json.\n"
        << exit_codes << "\n"
        << caution;
    return out.str();
}

Args parse(const Command &command, const std::vector<std::string> &words) {
    Args args = parse_words(options_of(command), words);
    if (args.flag("help")) return args;
    const auto &given = args.positional();
    if (given.size() < command.least) throw UsageError("too few words; expected " + command.arguments);
    if (given.size() > command.most)
        throw UsageError("'" + shown(given[command.most]) + "' is one word too many; expected " +
                         (command.arguments.empty() ? "none" : command.arguments));
    return args;
}

const Command &find_command(const std::string &name) {
    const auto &all = commands();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Command &c) { return c.name == name; });
    if (found != all.end()) return *found;
    std::vector<std::string> names;
    for (const auto &c : all) names.push_back(c.name);
    throw UsageError("there is no command '" + shown(name) + "'" + did_you_mean(name, names));
}

/// A refusal with what to type: which option gives the missing field, which command mends it.
std::string in_words(const Refusal &e) {
    std::string out = e.what();
    if (e.missing()) out += (out.ends_with("?") ? " give --" : ": give --") + e.field() + " \"...\"";
    for (const auto &remedy : e.remedies()) {
        out += (&remedy == &e.remedies().front() ? "; mend it with 'beadbook " : ", or 'beadbook ") +
               remedy.operation;
        for (const auto &word : remedy.on) out += " " + shown(word);
        for (const auto &field : remedy.fields) out += " --" + field + " \"...\"";
        out += "'";
    }
    return out;
}

ExitCode run_words(const std::vector<std::string> &words, Session &session) {
    if (words.empty()) {
        session.err << program_help();
        return ExitCode::usage;
    }
    if (words[0] == "--help" || words[0] == "-h" || (words[0] == "help" && words.size() == 1)) {
        session.out << program_help();
        return ExitCode::done;
    }
    if (words[0] == "--version") {
        session.out << "beadbook " << program_version() << "\n";
        return ExitCode::done;
    }
    const bool help = words[0] == "help";
    const Command &command = find_command(help ? words[1] : words[0]);
    if (!help) {
        const Args args = parse(command, {words.begin() + 1, words.end()});
        if (!args.flag("help")) return command.run(args, session);
    }
    session.out << command_help(command);
    return ExitCode::done;
}

} // namespace

const std::vector<Command> &commands() {
    static const std::vector<Command> table{
        plan_command(),     range_command(),    register_command(), exam_command(),     log_command(),
        finish_command(),   reopen_command(),   judge_command(),    why_command(),      grade_command(),
        coupons_command(),  show_command(),     history_command(),  change_command(),   correct_command(),
        withdraw_command(), remark_command(),   enrol_command(),    welder_command(),   welders_command(),
        qualify_command(),  carry_command(),    may_command(),      record_command(),   used_command(),
        trained_command(),  due_command(),      renew_command(),    extend_command(),   revoke_command(),
        retract_command(),  rules_command(),    valid_command(),    practice_command(), methods_command(),
        compute_command(),  criteria_command(), export_command(),   import_command(),   verify_command(),
        backup_command(),
    };
    return table;
}

int run_program(const std::vector<std::string> &words, Session &session) {
    const auto fail = [&](ExitCode code, const std::string &what, const std::string &hint = "") {
        session.out.flush();
        session.err << "beadbook: error: " << what << "\n" << hint;
        return static_cast<int>(code);
    };
    const std::string hint = "see 'beadbook " +
                             (words.empty() || words[0].starts_with("-") ? "" : shown(words[0]) + " ") +
                             "--help'\n";
    try {
        const ExitCode code = run_words(words, session);
        session.out.flush();
        if (!session.out) return fail(ExitCode::store, "the output could not be written");
        return static_cast<int>(code);
    } catch (const UsageError &e) {
        return fail(ExitCode::usage, e.what(), hint);
    } catch (const Refusal &e) {
        const ExitCode code = code_of(e.kind());
        return fail(code, in_words(e), code == ExitCode::usage ? hint : "");
    } catch (const std::bad_alloc &) {
        return fail(ExitCode::store, "out of memory");
    } catch (const std::exception &e) {
        return fail(ExitCode::store, std::string("unexpected: ") + e.what());
    }
}

} // namespace beadbook
