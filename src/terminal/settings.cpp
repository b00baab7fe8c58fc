#include "terminal/settings.hpp"

#include "facts/coupon_record.hpp"
#include "language/fields.hpp"
#include "measure/text.hpp"
#include "records/files.hpp"

#include <algorithm>
#include <filesystem>

namespace beadbook {
namespace {

/// Variables of the environment that go before the file.
struct NearerVariable {
    std::string name, option;
};
const NearerVariable variables[] = {{"BEADBOOK_BOOK", "book"}, {"BEADBOOK_USER", "by"}};

/// What a person must say each time: what was seen, done or meant, and of what.
constexpr std::string_view said_each_time[] = {
    "again",     "all",          "as-before", "as-logged", "back",     "calibration", "certificate",
    "condition", "coupon",       "date",      "document",  "edition",  "equipment",   "every-open",
    "exam",      "examiner",     "file",      "finish",    "forget",   "found",       "graded",
    "head",      "incomplete",   "level",     "like",      "lock",     "method",      "name",
    "new-key",   "note",         "override",  "page",      "remark",   "replaces",    "seal",
    "second",    "set-password", "sure",      "text",      "to",       "unlock",      "verdict",
    "vision",    "way",          "weld",      "why",       "withdraw", "without",     "work"};

/// What a look is asked for each time: kept in a file it would hide what it leaves out, or tell an old day.
constexpr std::string_view asked_each_time[] = {"from", "graded", "on", "to", "unfinished", "verdict"};

/// A statement, if the command enters it: never a habit of the shop. Of a coupon's fields only what all
/// coupons of a class have alike is one, and only where they are registered.
bool is_statement(const Command &command, const std::string &option) {
    if (!command.enters)
        return std::find(std::begin(asked_each_time), std::end(asked_each_time), option) !=
               std::end(asked_each_time);
    if (std::find(std::begin(said_each_time), std::end(said_each_time), option) != std::end(said_each_time))
        return true;
    const CouponField *field = coupon_field(option);
    if (!field || command.name() == "exam") return false;
    return command.name() != "register" || field->kind == CouponField::Kind::measure ||
           field->kind == CouponField::Kind::day || option == "mechanical";
}

bool may_not_be_set(const std::string &section, const std::string &option) {
    const auto &all = commands();
    return std::any_of(all.begin(), all.end(), [&](const Command &one) {
        return (section == "every" || section == one.name()) && is_statement(one, option);
    });
}

/// The options that a section of the file may set: of one command, or of any.
std::vector<Option> options_of_section(const std::string &name) {
    if (name != "every") return command_named(name).options;
    std::vector<Option> out;
    for (const auto &command : commands())
        out.insert(out.end(), command.options.begin(), command.options.end());
    return out;
}

void read_section(const Yaml::Entry &section, const std::string &path, Issues &issues,
                  std::vector<Setting> &out) {
    std::vector<Option> known;
    try {
        known = options_of_section(section.key);
    } catch (const UsageError &e) {
        issues.error(section.key_where, section.key, e.what());
        return;
    }
    if (section.value.kind != Yaml::Kind::map)
        issues.error(section.value.where, section.key,
                     "expected options with their values, such as {color: never}");
    for (const auto &entry : section.value.entries) {
        const auto option =
            std::find_if(known.begin(), known.end(), [&](const Option &o) { return o.name == entry.key; });
        if (option == known.end() || entry.key == "help") {
            std::vector<std::string> names;
            for (const auto &one : known) names.push_back(one.name);
            issues.error(entry.key_where, section.key,
                         "there is no option '" + shown(entry.key) + "'" + did_you_mean(entry.key, names));
            continue;
        }
        if (may_not_be_set(section.key, entry.key)) {
            issues.error(entry.key_where, section.key,
                         "'" + entry.key +
                             "' is said in each call by whoever acts; no setting stands for it");
            continue;
        }
        const std::string at = section.key + "." + entry.key;
        const auto value = scalar_text(entry.value, at, issues);
        if (!value) continue;
        if (option->value.empty() && *value != "yes") {
            issues.error(entry.value.where, at, "it takes no value; expected yes");
            continue;
        }
        out.push_back({section.key, entry.key, *value, path + ":" + std::to_string(entry.key_where.line)});
    }
}

} // namespace

std::string settings_path(const Session &session) {
    if (const auto set = session.environment("BEADBOOK_SETTINGS"); !set.empty()) return set;
    std::string folder = session.environment("XDG_CONFIG_HOME");
    if (folder.empty()) {
        const std::string home = session.environment("HOME");
        if (home.empty()) return "";
        folder = home + "/.config";
    }
    return folder + "/beadbook/settings.yaml";
}

std::vector<Setting> settings_in_file(const Session &session) {
    const std::string path = settings_path(session);
    std::error_code ignored; // in a folder that may not be searched there are none for this user
    if (path.empty() || !std::filesystem::exists(path, ignored)) return {};
    const std::string text = read_file(path);
    Issues issues;
    std::vector<Setting> out;
    const Yaml all = read_yaml(text, issues);
    for (const auto &section : all.entries) read_section(section, path, issues, out);
    if (issues.any_error()) {
        std::string faults;
        for (const auto &issue : issues.all()) faults += print(issue, path, text);
        throw DataError("the settings cannot be used:\n" + faults.substr(0, faults.size() - 1));
    }
    return out;
}

Args with_settings(const Command &command, Args given, const Session &session) {
    const auto settings = settings_in_file(session);
    const auto options = command.options;
    const auto set_nearer = [&](const std::string &option) {
        return std::any_of(std::begin(variables), std::end(variables), [&](const NearerVariable &v) {
            return v.option == option && !session.environment(v.name).empty();
        });
    };
    // What --like takes over goes before a habit.
    const bool like = given.has("like");
    // What is said of the command wins over what is said of every one.
    for (const std::string &section : {command.name(), std::string("every")})
        for (const auto &one : settings)
            if (one.command == section && !set_nearer(one.option) && !(like && coupon_field(one.option)) &&
                std::any_of(options.begin(), options.end(),
                            [&](const Option &o) { return o.name == one.option; }))
                given.otherwise(one.option, one.value);
    return given;
}

SettingsInForce settings_in_force(const Session &session) {
    SettingsInForce out{settings_path(session), false, settings_in_file(session)};
    std::error_code ignored;
    out.there = !out.file.empty() && std::filesystem::exists(out.file, ignored);
    for (const auto &variable : variables)
        if (const auto value = session.environment(variable.name); !value.empty())
            out.settings.push_back({"every", variable.option, value, variable.name});
    return out;
}

} // namespace beadbook
