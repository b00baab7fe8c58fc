#include "terminal/command_text.hpp"

#include "facts/exam_record.hpp"
#include "measure/text.hpp"

namespace beadbook {

std::string option_text(const std::string &field, const Command *of) {
    if (field.starts_with(condition_field))
        return "--condition \"" + field.substr(condition_field.size()) + "=...\"";
    if (const auto is = field.find('='); is != std::string::npos)
        return "--" + field.substr(0, is) + " " + word_text(field.substr(is + 1));
    for (const auto &command : commands())
        for (const auto &option : of ? of->options : command.options)
            if (option.name == field)
                return "--" + field +
                       (option.value.empty()                                    ? ""
                        : option.value == "N" || option.value.starts_with("N|") ? " N"
                                                                                : " \"...\"");
    return of ? option_text(field, nullptr) : "--" + field + " \"...\"";
}

std::string word_text(const std::string &word) {
    const std::string out = shown(word);
    return out.find(' ') == std::string::npos ? out : "\"" + out + "\"";
}

std::string command_text(const Remedy &remedy) {
    std::string out = "beadbook " + remedy.operation;
    for (const auto &word : remedy.on) out += " " + word_text(word);
    for (const auto &field : remedy.fields)
        out += " " + (&field == &remedy.fields.front() && !remedy.value.empty()
                          ? "--" + field + " " + word_text(remedy.value)
                          : option_text(field, command_called(remedy.operation)));
    return out;
}

std::string commands_text(const std::vector<Remedy> &remedies, const std::string &between) {
    std::string out;
    for (const auto &one : remedies) out += (out.empty() ? "" : between) + "'" + command_text(one) + "'";
    return out;
}

} // namespace beadbook
