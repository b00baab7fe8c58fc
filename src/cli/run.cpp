#include "cli/command.hpp"

#include "cli/help.hpp"
#include "cli/settings.hpp"
#include "cli/version.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

Args parse(const Command &command, const std::vector<std::string> &words) {
    Args args = parse_words(command.all_options(), words);
    if (args.has("help")) return args;
    const auto &given = args.positional();
    const std::string expected = "expected " + (command.arguments().empty() ? "none" : command.arguments());
    if (given.size() < command.least()) throw UsageError("too few words; " + expected);
    if (given.size() > command.most())
        throw UsageError("'" + shown(given[command.most()]) + "' is one word too many; " + expected);
    return args;
}

/// --sure, or --why "...": what is a flag wherever it is an option takes no value.
std::string option_text(const std::string &field) {
    bool flag = false, value = false;
    for (const auto &command : commands())
        for (const auto &option : command.all_options())
            if (option.name == field) (option.value.empty() ? flag : value) = true;
    return "--" + field + (flag && !value ? "" : " \"...\"");
}

/// A refusal with what to type: which option gives the missing field, which command mends it.
std::string in_words(const Refusal &e) {
    std::string out = e.what();
    if (e.missing())
        out += (out.ends_with("?")                    ? " give "
                : out.find('\n') != std::string::npos ? "\ngive "
                                                      : ": give ") +
               option_text(e.field());
    for (const auto &remedy : e.remedies()) {
        out += (&remedy == &e.remedies().front() ? "; mend it with 'beadbook " : ", or 'beadbook ") +
               remedy.operation;
        for (const auto &word : remedy.on) out += " " + shown(word);
        for (const auto &field : remedy.fields) out += " " + option_text(field);
        out += "'";
    }
    return out;
}

/// A message that nobody would read to its end.
std::string capped(const std::string &text) {
    constexpr std::size_t most = 20'000;
    if (text.size() <= most) return text;
    std::string out = text.substr(0, most);
    while (!valid_utf8(out)) out.pop_back();
    return out + "...\nand " + std::to_string(text.size() - out.size()) + " bytes more";
}

bool colour_wanted(const Args &args, const Session &session) {
    const std::string when = args.text("color", "auto");
    if (when != "auto" && when != "always" && when != "never")
        throw UsageError("--color is auto, always or never, not '" + shown(when) + "'");
    return when == "always" || (when == "auto" && session.colour);
}

ExitCode run_command(const Command &command, const Args &args, Session &session) {
    std::ostream nowhere(nullptr);
    Session own{session.in,
                args.has("quiet") ? nowhere : session.out,
                session.err,
                session.in_is_terminal && !args.has("quiet") && !args.has("dry-run"),
                colour_wanted(args, session),
                session.now,
                session.today,
                session.environment,
                session.width,
                session.pipe_closed,
                false,
                session.until_stopped,
                session.open,
                args.has("no-pager") || args.has("quiet") ? 0 : session.height,
                session.page};
    const auto run = [&] {
        Call call(args, own);
        return command.run(call);
    };
    try {
        const ExitCode code = run();
        session.stored = own.stored;
        return code;
    } catch (...) {
        session.stored = own.stored;
        throw;
    }
}

ExitCode run_words(const std::vector<std::string> &words, Session &session) {
    if (words.empty()) {
        session.err << program_help();
        return ExitCode::usage;
    }
    if (words[0] == "--help" || words[0] == "-h" || (words[0] == "help" && words.size() == 1)) {
        session.print(program_help());
        return ExitCode::done;
    }
    if (words[0] == "--version") {
        session.out << "beadbook " << program_version() << "\n";
        return ExitCode::done;
    }
    const bool help = words[0] == "help";
    const Command &command = command_named(help ? words[1] : words[0]);
    if (!help) {
        const Args args = parse(command, {words.begin() + 1, words.end()});
        if (!args.has("help")) return run_command(command, with_settings(command, args, session), session);
    }
    session.print(command_help(command));
    return ExitCode::done;
}

} // namespace

int run_program(const std::vector<std::string> &words, Session &session) {
    const auto fail = [&](ExitCode code, const std::string &what, const std::string &hint = "") {
        session.out.flush();
        session.err << "beadbook: error: " << visible(capped(what)) << "\n" << hint;
        return static_cast<int>(code);
    };
    // After something was stored nothing may read as if it had not been.
    const auto untold = [&](const std::string &why) {
        return fail(ExitCode::untold, "what was entered is stored, but " + why +
                                          "; look at the record before anything is entered again");
    };
    const auto hint = [&] {
        const bool known = !words.empty() && command_called(words[0]);
        return "see 'beadbook " + (known ? words[0] + " " : "") + "--help'\n";
    };
    try {
        const ExitCode code = run_words(words, session);
        session.out.flush();
        if (!session.out && session.pipe_closed && session.pipe_closed()) return static_cast<int>(code);
        if (!session.out && session.stored) return untold("the output could not be written");
        if (!session.out) return fail(ExitCode::store, "the output could not be written");
        return static_cast<int>(code);
    } catch (const UsageError &e) {
        if (session.stored) return untold(e.what());
        return fail(ExitCode::usage, e.what(), hint());
    } catch (const Refusal &e) {
        if (session.stored) return untold(in_words(e));
        const ExitCode code = code_of(e.kind());
        return fail(code, in_words(e), code == ExitCode::usage ? hint() : "");
    } catch (const std::bad_alloc &) {
        if (session.stored) return untold("out of memory");
        return fail(ExitCode::store, "out of memory");
    } catch (const std::exception &e) {
        if (session.stored) return untold(std::string("unexpected: ") + e.what());
        return fail(ExitCode::store, std::string("unexpected: ") + e.what());
    }
}

} // namespace beadbook
