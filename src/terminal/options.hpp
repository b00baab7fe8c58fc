#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace beadbook {

/// Wrong words on the command line. Ends with ExitCode::usage.
struct UsageError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// One option of a command: --name, or -q where it has a quick name.
struct Option {
    std::string name;
    std::string value; ///< what stands for its value in the help, "FILE"; empty: a flag, which takes none
    std::string help;
    char quick = 0;
    bool many = false; ///< may be repeated
};

/// The options of a command from single ones and groups: options(by_option(), coupon_field_options()).
template <class... Parts>
std::vector<Option> options(const Parts &...parts) {
    std::vector<Option> out;
    const auto add = [&](const auto &part) {
        if constexpr (requires { part.begin(); })
            out.insert(out.end(), part.begin(), part.end());
        else
            out.push_back(part);
    };
    (add(parts), ...);
    return out;
}

/// The words of one call, after parsing.
class Args {
public:
    using Values = std::map<std::string, std::vector<std::string>>;

    Args(Values values, std::vector<std::string> positional)
        : values_(std::move(values)), positional_(std::move(positional)) {}

    bool has(const std::string &name) const { return values_.count(name) > 0; }
    /// The value, or the last of several.
    std::string text(const std::string &name, const std::string &otherwise = "") const {
        return has(name) ? values_.at(name).back() : otherwise;
    }
    std::vector<std::string> all(const std::string &name) const {
        return has(name) ? values_.at(name) : std::vector<std::string>{};
    }
    /// The value of an option that was not given.
    void otherwise(const std::string &name, const std::string &value) {
        if (values_.try_emplace(name, 1, value).second) filled_in_.emplace_back(name, value);
    }
    /// Those, as they came.
    const std::vector<std::pair<std::string, std::string>> &filled_in() const { return filled_in_; }
    const std::vector<std::string> &positional() const { return positional_; }
    const std::string &at(std::size_t i) const { return positional_.at(i); }

private:
    Values values_; ///< of what was given; a flag has one empty value
    std::vector<std::string> positional_;
    std::vector<std::pair<std::string, std::string>> filled_in_;
};

/// Takes the words apart. A shortened name is no name: a new option must not change what an old script means.
/// Throws UsageError.
Args parse_words(const std::vector<Option> &options, const std::vector<std::string> &words);

/// The options as a help shows them: a title, then one or more lines each, none longer than `width`.
std::string options_help(const std::vector<Option> &options, std::size_t width);

} // namespace beadbook
