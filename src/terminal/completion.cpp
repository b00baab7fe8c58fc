#include "terminal/completion.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"
#include "terminal/command.hpp"

#include <algorithm>
#include <cctype>
#include <set>
#include <sstream>

namespace beadbook {
namespace {

/// The words in the help of a command that are typed as they stand: passed|failed, list, show.
std::vector<std::string> fixed_words(const Command &command) {
    std::string text = command.arguments();
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == '|' || c == '[' || c == ']'; }, ' ');
    std::istringstream words(text);
    std::set<std::string> out;
    const auto typed = [](const std::string &word) {
        const bool capitals =
            std::none_of(word.begin(), word.end(), [](unsigned char c) { return std::islower(c) != 0; });
        return std::isalpha(static_cast<unsigned char>(word.front())) && (!capitals || exam_named(word));
    };
    for (std::string word; words >> word;)
        if (typed(word)) out.insert(word);
    return {out.begin(), out.end()};
}

/// The words that the value of an option is one of, where these are fixed: groove, fillet of --joint.
std::vector<std::string> values_of(const Option &option) {
    std::vector<std::string> out;
    const CouponField *field = coupon_field(option.name);
    if (option.value == "VALUE" && field && field->kind == CouponField::Kind::fact)
        out = info(field->fact).words;
    else if (option.name == "color")
        out = {"auto", "always", "never"};
    std::erase_if(out, [](const std::string &word) { return word.find(' ') != std::string::npos; });
    return out;
}

/// For a shell, between single quotes.
std::string quoted(const std::string &text) {
    std::string out = "'";
    for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

std::string all_names() {
    std::vector<std::string> out;
    for (const auto &command : commands()) out.push_back(command.name());
    return joined(out, " ");
}

std::string for_bash() {
    std::ostringstream out;
    out << "_beadbook() {\n"
           "    local word=${COMP_WORDS[COMP_CWORD]} words\n"
           "    if ((COMP_CWORD == 1)); then\n"
           "        COMPREPLY=($(compgen -W "
        << quoted(all_names())
        << " -- \"$word\"))\n"
           "        return\n"
           "    fi\n"
           "    case ${COMP_WORDS[1]},${COMP_WORDS[COMP_CWORD-1]} in\n";
    for (const auto &command : commands())
        for (const auto &option : command.options)
            if (const auto words = values_of(option); !words.empty())
                out << "    " << command.name() << ",--" << option.name << ") COMPREPLY=($(compgen -W "
                    << quoted(joined(words, " ")) << " -- \"$word\")); return ;;\n";
    out << "    esac\n"
           "    case ${COMP_WORDS[1]} in\n";
    for (const auto &command : commands()) {
        std::vector<std::string> words = fixed_words(command);
        for (const auto &option : command.options) words.push_back("--" + option.name);
        out << "    " << command.name() << ") words=" << quoted(joined(words, " ")) << " ;;\n";
    }
    out << "    esac\n"
           "    COMPREPLY=($(compgen -W \"$words\" -- \"$word\") $(compgen -f -- \"$word\"))\n"
           "}\n"
           "complete -o filenames -F _beadbook beadbook\n";
    return out.str();
}

std::string for_zsh() {
    // A colon would end a word, and brackets its description.
    const auto text = [](std::string t) {
        std::replace(t.begin(), t.end(), ':', ';');
        std::replace(t.begin(), t.end(), '[', '(');
        std::replace(t.begin(), t.end(), ']', ')');
        return t;
    };
    std::ostringstream out;
    out << "#compdef beadbook\n_beadbook() {\n    if ((CURRENT == 2)); then\n        local -a all=(\n";
    for (const auto &command : commands())
        out << "            " << quoted(command.name() + ":" + text(command.summary)) << "\n";
    out << "        )\n        _describe command all\n        return\n    fi\n    case $words[2] in\n";
    for (const auto &command : commands()) {
        out << "    " << command.name() << ") _arguments -s";
        for (const auto &option : command.options) {
            const auto values = values_of(option);
            const std::string ways = values.empty() ? "_files" : "(" + joined(values, " ") + ")";
            out << " "
                << quoted((option.many ? "*" : "") + std::string("--") + option.name +
                          (option.value.empty() ? "" : "=") + "[" + text(option.help) + "]" +
                          (option.value.empty() ? "" : ":" + text(option.value) + ":" + ways));
        }
        const auto words = fixed_words(command);
        out << " "
            << (words.empty() ? quoted("*:file:_files") : quoted("*:word:(" + joined(words, " ") + ")"))
            << " ;;\n";
    }
    out << "    esac\n}\n_beadbook \"$@\"\n";
    return out.str();
}

std::string for_fish() {
    std::ostringstream out;
    for (const auto &command : commands()) {
        out << "complete -c beadbook -n __fish_use_subcommand -f -a " << command.name() << " -d "
            << quoted(command.summary) << "\n";
        const std::string here =
            "complete -c beadbook -n " + quoted("__fish_seen_subcommand_from " + command.name());
        for (const auto &option : command.options)
            out << here << " -l " << option.name << (option.quick ? std::string(" -s ") + option.quick : "")
                << (option.value.empty() ? "" : " -r")
                << (values_of(option).empty() ? "" : " -f -a " + quoted(joined(values_of(option), " ")))
                << " -d " << quoted(option.help) << "\n";
        if (const auto words = fixed_words(command); !words.empty())
            out << here << " -a " << quoted(joined(words, " ")) << "\n";
    }
    return out.str();
}

} // namespace

std::string completion_for(const std::string &shell) {
    if (shell == "bash") return for_bash();
    if (shell == "zsh") return for_zsh();
    if (shell == "fish") return for_fish();
    throw UsageError("'" + shown(shell) + "' is no shell that is known here; expected bash, zsh or fish");
}

} // namespace beadbook
