// The table of commands.yaml, read.
#include "criteria/methods.hpp"
#include "criteria/shipped.hpp"
#include "facts/coupon_record.hpp"
#include "facts/equipment_record.hpp"
#include "language/fields.hpp"
#include "measure/text.hpp"
#include "terminal/command.hpp"

#include <algorithm>
#include <map>
#include <sstream>
#include <stdexcept>

namespace beadbook {
namespace {

constexpr std::pair<std::string_view, For> people[] = {{"technician", For::technician},
                                                       {"instructor", For::instructor},
                                                       {"welder", For::welder},
                                                       {"keeper", For::keeper}};

/// Each by its short name and in words.
std::string methods_in_words() {
    std::vector<std::string> out;
    for (const auto &method : method_table)
        out.push_back(std::string(method.name) + " " + std::string(method.called));
    return listed(out);
}

std::string kinds_text() {
    std::vector<std::string> out;
    for (const auto &kind : equipment_kinds()) out.push_back(kind.name);
    return joined(out, ", ");
}

/// What the table leaves to other tables.
std::string filled_in(std::string text) {
    static const std::pair<std::string, std::string> places[] = {{"{methods}", exam_names_text()},
                                                                 {"{methods|}", joined(exam_names(), "|")},
                                                                 {"{methods in words}", methods_in_words()},
                                                                 {"{kinds of equipment}", kinds_text()}};
    if (text.find('{') == std::string::npos) return text;
    for (const auto &[place, with] : places)
        for (std::size_t at = text.find(place); at != std::string::npos;
             at = text.find(place, at + with.size()))
            text.replace(at, place.size(), with);
    return text;
}

/// From "-f, --file FILE" or "--condition NAME=VALUE ...".
Option option_from(const std::string &said, const std::string &help) {
    Option out;
    out.help = filled_in(help);
    for (const auto word : words_of(said)) {
        if (word.starts_with("--"))
            out.name = word.substr(2);
        else if (word.starts_with("-"))
            out.quick = word[1];
        else if (word == "...")
            out.many = true;
        else
            out.value = word;
    }
    return out;
}

class CommandTable {
public:
    std::vector<Command> commands;
    std::map<std::string, std::vector<Option>> groups; ///< each named before it is used

    CommandTable() {
        const std::string text = shipped_file("terminal/commands.yaml");
        read(read_yaml(text, issues_));
        std::string faults;
        for (const auto &issue : issues_.all()) faults += print(issue, "commands.yaml", text);
        if (!faults.empty()) throw std::logic_error(faults);
    }

private:
    void read(const Yaml &file) {
        for (const auto &field : coupon_fields())
            groups["coupon fields"].push_back({field.name, "VALUE", field.help});
        const Fields all(file, "", {"groups", "commands"}, issues_);
        if (const Yaml *named = all.need("groups"))
            for (const auto &group : named->entries) groups[group.key] = options_in(group.value);
        for (const Yaml *one : all.items("commands")) commands.push_back(command(*one));
    }
    Command command(const Yaml &node) {
        const Fields of(node, "commands", {"words", "for", "enters", "summary", "example", "more", "options"},
                        issues_);
        Command out;
        out.words = filled_in(of.needed_text("words"));
        const std::string whom = of.needed_text("for");
        const auto who = std::find_if(std::begin(people), std::end(people),
                                      [&](const auto &one) { return one.first == whom; });
        if (who == std::end(people))
            of.error("for", "'" + whom + "' is none of those whom the help speaks to");
        else
            out.whom = who->second;
        out.enters = of.flag("enters", false);
        out.summary = of.needed_text("summary");
        out.example = "beadbook " + of.needed_text("example");
        out.details = filled_in(of.text("more"));
        const Yaml *own = of.get("options");
        out.options = options(own ? options_in(*own) : std::vector<Option>{},
                              out.enters ? groups["entering"] : std::vector<Option>{}, groups["every"]);
        return out;
    }
    /// Of a list of options, and of names of groups.
    std::vector<Option> options_in(const Yaml &list) {
        std::vector<Option> out;
        for (const auto &one : list.items) {
            for (const auto &entry : one.entries) out.push_back(option_from(entry.key, entry.value.text));
            if (one.kind != Yaml::Kind::scalar) continue;
            const auto group = groups.find(one.text);
            if (group == groups.end())
                issues_.error(one.where, "options", "there is no group '" + one.text + "'");
            else
                out.insert(out.end(), group->second.begin(), group->second.end());
        }
        return out;
    }

    Issues issues_;
};

const CommandTable &table() {
    static const CommandTable all;
    return all;
}

} // namespace

const std::vector<Command> &commands() { return table().commands; }

const std::vector<Option> &option_group(const std::string &name) { return table().groups.at(name); }

} // namespace beadbook
