#include "terminal/command.hpp"

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

std::string Command::name() const { return words.substr(0, words.find(' ')); }

std::string Command::arguments() const {
    return std::string(trimmed(std::string_view(words).substr(name().size())));
}

std::size_t Command::least() const { return counted_in_all(arguments()).least; }
std::size_t Command::most() const { return counted_in_all(arguments()).most; }

const Command &command_named(const std::string &name) {
    if (const Command *command = command_called(name)) return *command;
    std::vector<std::string> names;
    for (const auto &c : commands()) names.push_back(c.name());
    throw UsageError("there is no command '" + shown(name) + "'" + did_you_mean(name, names));
}

} // namespace beadbook
