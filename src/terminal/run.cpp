#include "terminal/run.hpp"

#include "measure/text.hpp"
#include "terminal/command_text.hpp"
#include "terminal/help.hpp"
#include "terminal/settings.hpp"
#include "terminal/version.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// A value of an option that was typed without quotes: `--examiner A. Field`. Empty if it is none.
std::string value_without_quotes(const Command &command, const std::vector<std::string> &words,
                                 const std::vector<std::string> &given) {
    const auto &options = command.options;
    for (std::size_t i = 2; i < words.size(); ++i) {
        const bool a_word = std::find(given.begin(), given.end(), words[i]) != given.end();
        const bool takes_one = std::any_of(options.begin(), options.end(), [&](const Option &one) {
            return "--" + one.name == words[i - 2] && one.value == "NAME";
        });
        if (a_word && takes_one)
            return "; what has several words stands in quotes: " + words[i - 2] + " \"" +
                   shown(words[i - 1]) + " " + shown(words[i]) + "\"";
    }
    return "";
}

Args parse(const Command &command, const std::vector<std::string> &words) {
    Args args = parse_words(command.options, words);
    if (args.has("help")) return args;
    const auto &given = args.positional();
    const std::string arguments = command.arguments();
    const std::string expected =
        arguments.empty() ? command.name() + " takes options only" : "expected " + arguments;
    if (given.size() < command.least()) throw UsageError("too few words; " + expected);
    if (given.size() > command.most()) {
        const std::string unquoted = value_without_quotes(command, words, given);
        throw UsageError("'" + shown(given[command.most()]) + "' is one word too many; " + expected +
                         (!unquoted.empty() ? unquoted
                          : arguments.ends_with("TEXT") || arguments.ends_with("LINE")
                              ? "; what has several words stands in quotes"
                              : ""));
    }
    return args;
}

/// A refusal with what to type: which option gives the missing field, which command mends it.
std::string in_words(const Refusal &e, const Command *command) {
    std::string out = e.what();
    const auto all = command ? command->options : std::vector<Option>{};
    // Of what another command gives, the remedies tell.
    if (e.missing() &&
        std::any_of(all.begin(), all.end(), [&](const Option &o) { return o.name == e.field(); }))
        out += (out.ends_with("?")                    ? " give "
                : out.find('\n') != std::string::npos ? "\ngive "
                                                      : ": give ") +
               (e.example().empty() ? option_text(e.field(), command)
                                    : "--" + e.field() + " " + word_text(e.example()));
    std::vector<std::string> told; // what several reasons ask stands once
    for (const auto &remedy : e.remedies()) {
        std::string words = "'" + command_text(remedy) + "'";
        if (std::find(told.begin(), told.end(), words) != told.end()) continue;
        out += (!told.empty()        ? ", or "
                : out.ends_with("?") ? " Or mend it with "
                                     : "; mend it with ") +
               words;
        told.push_back(std::move(words));
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

ExitCode run_command(const Deeds &deeds, const Command &command, const Args &args, Session &session) {
    std::ostream nowhere(nullptr);
    Session own{session.in,
                args.has("quiet") ? nowhere : session.out,
                session.err,
                session.in_is_terminal,
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
                session.page,
                args.has("quiet") ? Session::no_number : session.many};
    const auto run = [&] {
        Call call(args, own);
        return deeds.at(command.name())(call);
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

ExitCode take(const Deeds &deeds, const std::vector<std::string> &words, Session &session) {
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
    if (words[0].starts_with("-")) {
        std::string named;
        for (const auto &word : words)
            if (named.empty() && command_called(word)) named = word;
        throw UsageError("'" + shown(words[0]) + "' stands before the command; " +
                         (named.empty()
                              ? "expected COMMAND, then its words and options, or --help or --version" +
                                    did_you_mean(words[0], {"--help", "--version"})
                              : "write 'beadbook " + named + " ...', and its options behind it"));
    }
    const bool help = words[0] == "help";
    const Command &command = command_named(help ? words[1] : words[0]);
    if (!help) {
        const Args args = parse(command, {words.begin() + 1, words.end()});
        if (!args.has("help"))
            return run_command(deeds, command, with_settings(command, args, session), session);
    }
    session.print(command_help(command, session.width));
    return ExitCode::done;
}

} // namespace

int run_words(const Deeds &deeds, const std::vector<std::string> &words, Session &session) {
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
        const ExitCode code = take(deeds, words, session);
        session.out.flush();
        if (!session.out && session.pipe_closed && session.pipe_closed()) return static_cast<int>(code);
        if (!session.out && session.stored) return untold("the output could not be written");
        if (!session.out) return fail(ExitCode::store, "the output could not be written");
        return static_cast<int>(code);
    } catch (const UsageError &e) {
        if (session.stored) return untold(e.what());
        return fail(ExitCode::usage, e.what(), hint());
    } catch (const Refusal &e) {
        const Command *command = words.empty() ? nullptr : command_called(words[0]);
        if (session.stored) return untold(in_words(e, command));
        const ExitCode code = code_of(e.kind());
        return fail(code, in_words(e, command), code == ExitCode::usage ? hint() : "");
    } catch (const std::bad_alloc &) {
        if (session.stored) return untold("out of memory");
        return fail(ExitCode::store, "out of memory");
    } catch (const std::exception &e) {
        if (session.stored) return untold(std::string("unexpected: ") + e.what());
        return fail(ExitCode::store, std::string("unexpected: ") + e.what());
    }
}

} // namespace beadbook
