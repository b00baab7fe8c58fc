#include "cli/command.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <limits>
#include <sstream>

namespace beadbook {
namespace {

constexpr std::size_t any_number = std::numeric_limits<std::size_t>::max();

struct Count {
    std::size_t least = 0, most = 0;
};

/// The words of one way to call it: "COUPON [LINE ...]".
Count words_taken_by(const std::string &way) {
    Count out;
    int optional = 0;
    bool repeated = false;
    std::istringstream words(way);
    for (std::string word; words >> word;) {
        optional += static_cast<int>(std::count(word.begin(), word.end(), '['));
        if (word.starts_with("...")) {
            repeated = true;
        } else {
            ++out.most;
            if (optional == 0) ++out.least;
        }
        optional -= static_cast<int>(std::count(word.begin(), word.end(), ']'));
    }
    if (repeated) out.most = any_number;
    return out;
}

Count counted_in_all(std::string ways) {
    Count out{any_number, 0};
    for (std::size_t at = 0; at != std::string::npos;) {
        at = ways.find(" | ");
        const Count one = words_taken_by(ways.substr(0, at));
        out = {std::min(out.least, one.least), std::max(out.most, one.most)};
        if (at != std::string::npos) ways.erase(0, at + 3);
    }
    return out;
}

} // namespace

std::string Command::line(std::size_t number) const {
    std::size_t at = 0;
    for (; number > 0; --number) at = help.find('\n', at) + 1;
    return help.substr(at, help.find('\n', at) - at);
}

std::string Command::name() const { return help.substr(0, help.find_first_of(" \n")); }

std::string Command::arguments() const { return std::string(trimmed(line(0).substr(name().size()))); }

std::string Command::details() const {
    const std::size_t head = line(0).size() + line(1).size() + line(2).size() + 3;
    return head < help.size() ? help.substr(head) : "";
}

std::vector<Option> Command::all_options() const {
    const std::vector<Option> of_entering{
        {"by", "NAME", "who does this (else BEADBOOK_USER, else your login)"},
        {"dry-run", "", "do all but store it: tells what it would", 'n'}};
    return beadbook::options(options, enters ? of_entering : std::vector<Option>{},
                             Option{"json", "", "print JSON for programs"},
                             Option{"quiet", "", "print nothing but mistakes; the exit code tells", 'q'},
                             Option{"color", "WHEN", "auto, always or never (default auto: on a terminal)"},
                             Option{"no-pager", "", "print it at once, however long it is"},
                             Option{"book", "FILE", "the record (else BEADBOOK_BOOK, else your data folder)"},
                             Option{"help", "", "this help", 'h'});
}

Command looks(For whom, ExitCode (*run)(Call &), std::string help, std::vector<Option> options) {
    return {whom, false, run, std::move(help), std::move(options)};
}
Command enters(For whom, ExitCode (*run)(Call &), std::string help, std::vector<Option> options) {
    return {whom, true, run, std::move(help), std::move(options)};
}

std::size_t Command::least() const { return counted_in_all(arguments()).least; }
std::size_t Command::most() const { return counted_in_all(arguments()).most; }

const std::vector<Command> &commands() {
    static const std::vector<Command> all = [] {
        std::vector<Command> out;
        for (const auto &family :
             {coupon_commands, examining_commands, photo_commands, judging_commands, listing_commands,
              technique_commands, planning_commands, welder_commands, qualifying_commands, standing_commands,
              printing_commands, people_commands, catalogue_commands, owners_copy_commands, exchange_commands,
              keeping_commands, bench_commands, program_commands})
            for (auto &command : family()) out.push_back(std::move(command));
        return out;
    }();
    return all;
}

const Command *command_called(const std::string &name) {
    const auto &all = commands();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Command &c) { return c.name() == name; });
    return found == all.end() ? nullptr : &*found;
}

const Command &command_named(const std::string &name) {
    if (const Command *command = command_called(name)) return *command;
    std::vector<std::string> names;
    for (const auto &c : commands()) names.push_back(c.name());
    throw UsageError("there is no command '" + shown(name) + "'" + did_you_mean(name, names));
}

} // namespace beadbook
