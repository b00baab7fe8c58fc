#include "terminal/options.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <boost/program_options.hpp>

namespace po = boost::program_options;

namespace beadbook {
namespace {

const po::value_semantic *taking(const Option &option) {
    if (option.value.empty()) return new po::untyped_value(true); // option_description owns it
    if (option.many) return po::value<std::vector<std::string>>()->value_name(option.value);
    return po::value<std::string>()->value_name(option.value);
}

po::options_description described(const std::vector<Option> &options) {
    po::options_description out;
    for (const auto &option : options) {
        const std::string names = option.name + (option.quick ? std::string(",") + option.quick : "");
        out.add_options()(names.c_str(), taking(option), "");
    }
    return out;
}

} // namespace

Args parse_words(const std::vector<Option> &options, const std::vector<std::string> &words) {
    constexpr const char *word = "positional"; // no option is called so
    po::options_description all = described(options);
    all.add_options()(word, po::value<std::vector<std::string>>());
    po::positional_options_description positional;
    positional.add(word, -1);
    po::variables_map map;
    try {
        po::store(po::command_line_parser(words)
                      .options(all)
                      .positional(positional)
                      .style(po::command_line_style::unix_style & ~po::command_line_style::allow_guessing)
                      .run(),
                  map);
        po::notify(map);
    } catch (const po::unknown_option &e) {
        const std::string asked = e.get_option_name();
        std::vector<std::string> names, begun;
        for (const auto &option : options) names.push_back("--" + option.name);
        for (const auto &name : names)
            if (asked.size() > 3 && (name.starts_with(asked) || name.ends_with(asked.substr(1))))
                begun.push_back(name);
        const bool number = asked.size() > 1 && asked.find_first_of("0123456789") == 1;
        throw UsageError("there is no option '" + shown(asked) + "'" +
                         (number ? "; a word that begins with - is read as one, unless -- stands before it"
                          : begun.empty() ? did_you_mean(asked, names)
                                          : "; did you mean '" + joined(begun, "' or '") +
                                                "'? an option is written in full"));
    } catch (const po::invalid_command_line_syntax &e) {
        if (e.kind() == po::invalid_command_line_syntax::empty_adjacent_parameter)
            throw UsageError(shown(e.get_option_name()) + "= has no value");
        throw UsageError(shown(e.what()));
    } catch (const po::error &e) {
        throw UsageError(shown(e.what()));
    }
    Args::Values values;
    for (const auto &option : options) {
        if (map.count(option.name) == 0) continue;
        const po::variable_value &value = map[option.name];
        values[option.name] = option.value.empty() ? std::vector<std::string>{""}
                              : option.many        ? value.as<std::vector<std::string>>()
                                                   : std::vector<std::string>{value.as<std::string>()};
    }
    return {std::move(values),
            map.count(word) ? map[word].as<std::vector<std::string>>() : std::vector<std::string>{}};
}

std::string options_help(const std::vector<Option> &options, std::size_t width) {
    std::vector<std::string> names;
    std::size_t column = 0;
    for (const auto &option : options) {
        names.push_back("  " + (option.quick ? std::string("-") + option.quick + ", " : std::string()) +
                        "--" + option.name + (option.value.empty() ? "" : " " + option.value));
        column = std::max(column, std::min(names.back().size() + 2, width / 3));
    }
    std::string out = "Options:\n";
    for (std::size_t i = 0; i < options.size(); ++i) {
        const bool beside = names[i].size() + 2 <= column;
        const std::string first =
            beside ? padded(names[i], column) : names[i] + "\n" + std::string(column, ' ');
        out += first + wrapped(options[i].help, width, column).substr(column) + "\n";
    }
    return out;
}

} // namespace beadbook
