// The words of commands/, read: of those alone whose heading a command stands under, as every start waits for
// it.
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

using Groups = std::map<std::string, std::vector<Option>>;

/// A list of options, and of names of groups that were named before.
std::vector<Option> options_in(const Yaml &list, const Groups &groups, Issues &issues) {
    std::vector<Option> out;
    for (const auto &one : list.items) {
        for (const auto &entry : one.entries) out.push_back(option_from(entry.key, entry.value.text));
        if (one.kind != Yaml::Kind::scalar) continue;
        const auto group = groups.find(one.text);
        if (group == groups.end())
            issues.error(one.where, "options", "there is no group '" + one.text + "'");
        else
            out.insert(out.end(), group->second.begin(), group->second.end());
    }
    return out;
}

/// What `read` makes of a file of the folder; throws std::logic_error with what is wrong in it.
template <class Read>
auto from_file(const std::string &name, Read read) {
    const std::string text = shipped_file("terminal/commands/" + name + ".yaml");
    Issues issues;
    auto out = read(read_yaml(text, issues), issues);
    std::string faults;
    for (const auto &issue : issues.all()) faults += print(issue, name + ".yaml", text);
    if (!faults.empty()) throw std::logic_error(faults);
    return out;
}

const Groups &groups() {
    static const Groups all = from_file("groups", [](const Yaml &file, Issues &issues) {
        Groups out;
        for (const auto &field : coupon_fields())
            out["coupon fields"].push_back({field.name, "VALUE", field.help});
        for (const auto &group : file.entries) out[group.key] = options_in(group.value, out, issues);
        return out;
    });
    return all;
}

Command command_from(const Yaml &node, For whom, Issues &issues) {
    const Fields of(node, "", {"words", "enters", "summary", "example", "more", "options"}, issues);
    Command out;
    out.whom = whom;
    out.words = filled_in(of.needed_text("words"));
    out.enters = of.flag("enters", false);
    out.summary = of.needed_text("summary");
    out.example = "beadbook " + of.needed_text("example");
    out.details = filled_in(of.text("more"));
    const Yaml *own = of.get("options");
    out.options =
        options(own ? options_in(*own, groups(), issues) : std::vector<Option>{},
                out.enters ? option_group("entering") : std::vector<Option>{}, option_group("every"));
    return out;
}

/// Those under one heading.
template <For whom>
const std::vector<Command> &commands_for(const std::string &file) {
    static const std::vector<Command> all = from_file(file, [](const Yaml &list, Issues &issues) {
        std::vector<Command> out;
        for (const auto &one : list.items) out.push_back(command_from(one, whom, issues));
        return out;
    });
    return all;
}

const std::vector<Command> &commands_for(For whom) {
    switch (whom) {
    case For::technician: return commands_for<For::technician>("technician");
    case For::instructor: return commands_for<For::instructor>("instructor");
    case For::welder: return commands_for<For::welder>("welder");
    case For::keeper: break;
    }
    return commands_for<For::keeper>("keeper");
}

constexpr For everyone[] = {For::technician, For::instructor, For::welder, For::keeper};

} // namespace

const std::vector<Command> &commands() {
    static const std::vector<Command> all = [] {
        std::vector<Command> out;
        for (const For whom : everyone)
            out.insert(out.end(), commands_for(whom).begin(), commands_for(whom).end());
        return out;
    }();
    return all;
}

const std::vector<Option> &option_group(const std::string &name) { return groups().at(name); }

const Command *command_called(const std::string &name) {
    for (const For whom : everyone)
        for (const auto &command : commands_for(whom))
            if (command.name() == name) return &command;
    return nullptr;
}

} // namespace beadbook
