#include "criteria/magnetic_words.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <vector>

namespace beadbook {
namespace {

constexpr auto unmagnetic_metals =
    std::to_array<std::string_view>({"titanium", "aluminium", "magnesium", "copper", "zirconium"});
/// Austenitic grades of AISI, without the letters behind the number.
constexpr auto austenitic_grades = std::to_array<std::string_view>(
    {"301", "302", "303", "304", "305", "308", "309", "310", "316", "317", "321", "347", "348"});
/// Letters that may stand behind such a number.
constexpr auto grade_endings = std::to_array<std::string_view>({"", "l", "h", "n", "ln", "s", "cb", "ti"});
/// The second part of austenitic numbers of EN 10088: "1.4301".
constexpr auto austenitic_numbers = std::to_array<std::string_view>(
    {"4301", "4303", "4305", "4306", "4307", "4310", "4311", "4401", "4404", "4406", "4429", "4432",
     "4435", "4436", "4438", "4439", "4539", "4541", "4550", "4571", "4828", "4841", "4845", "4878"});
/// Beginnings of UNS numbers of nickel alloys that are not magnetic.
constexpr auto nickel_numbers = std::to_array<std::string_view>({"n06", "n07", "n08", "n10"});

constexpr auto ferritic_words = std::to_array<std::string_view>({"ferritic", "martensitic", "pearlitic"});
/// Before "steel".
constexpr auto ferritic_steels =
    std::to_array<std::string_view>({"carbon", "mild", "manganese", "structural"});
/// Before "iron".
constexpr auto irons =
    std::to_array<std::string_view>({"cast", "ductile", "malleable", "grey", "gray", "wrought"});
/// Of AISI: low alloy steels, and ferritic and martensitic stainless ones.
constexpr auto ferritic_grades =
    std::to_array<std::string_view>({"1018", "1020", "4130", "4140", "4340", "8620", "8630", "403", "409",
                                     "410", "416", "420", "430", "440"});

template <class List>
bool among(const List &list, std::string_view word) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

/// Runs of letters and digits, in small letters.
std::vector<std::string> tokens_of(std::string_view text) {
    std::vector<std::string> out(1);
    for (const char c : text) {
        if (std::isalnum(static_cast<unsigned char>(c)))
            out.back() += c;
        else if (!out.back().empty())
            out.emplace_back();
    }
    if (out.back().empty()) out.pop_back();
    for (auto &token : out) token = lowered(token);
    return out;
}

/// "304L", "TP316", "S31603".
bool is_austenitic_grade(std::string_view token) {
    if (token.size() == 6 && token.front() == 's' && all_digits(token.substr(1)))
        return among(austenitic_grades, token.substr(1, 3)) && token != "s32101"; // which is a duplex
    if (token.starts_with("tp")) token.remove_prefix(2);
    return token.size() >= 3 && among(austenitic_grades, token.substr(0, 3)) &&
           among(grade_endings, token.substr(3));
}

bool is_nickel_number(std::string_view token) {
    return token.size() == 6 && among(nickel_numbers, token.substr(0, 3)) && all_digits(token.substr(3));
}

bool names_austenitic(const std::vector<std::string> &tokens) {
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const std::string_view before = i > 0 ? std::string_view(tokens[i - 1]) : std::string_view();
        if (tokens[i] == "austenitic") return true;
        // "A 302" and "SA 302" are specifications of other steels.
        if (is_austenitic_grade(tokens[i]) && before != "a" && before != "sa") return true;
        if (before == "1" && among(austenitic_numbers, tokens[i])) return true;
    }
    return false;
}

/// "nickel alloy"; a "nickel alloy steel" is a steel.
bool names_nickel_alloy(const std::vector<std::string> &tokens) {
    if (std::any_of(tokens.begin(), tokens.end(), is_nickel_number)) return true;
    for (std::size_t i = 1; i < tokens.size(); ++i)
        if (tokens[i - 1] == "nickel" && (tokens[i] == "alloy" || tokens[i] == "alloys"))
            return i + 1 == tokens.size() || tokens[i + 1] != "steel";
    return false;
}

/// "carbon steel", "cast iron"; a "low alloy steel", and no other alloy.
bool names_ferritic(const std::vector<std::string> &tokens) {
    const auto follows = [&](std::size_t i, std::string_view word) {
        return i + 1 < tokens.size() && tokens[i + 1] == word;
    };
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        if (among(ferritic_words, tokens[i]) || among(ferritic_grades, tokens[i])) return true;
        if (among(ferritic_steels, tokens[i]) && follows(i, "steel")) return true;
        if (among(irons, tokens[i]) && follows(i, "iron")) return true;
        if (tokens[i] == "low" && follows(i, "alloy")) return true;
    }
    return false;
}

bool is_called_so(const std::vector<std::string> &tokens) {
    for (std::size_t i = 0; i < tokens.size(); ++i)
        if (tokens[i] == "nonmagnetic" || tokens[i] == "unmagnetic" || tokens[i] == "antimagnetic" ||
            (i > 0 && (tokens[i - 1] == "non" || tokens[i - 1] == "not") && tokens[i] == "magnetic"))
            return true;
    return false;
}

} // namespace

bool names_unmagnetic_metal(std::string_view text) {
    const auto tokens = tokens_of(text);
    if (is_called_so(tokens)) return true;
    if (leaves_open(text)) return false;
    const WordBits metals = materials_in(text);
    const FactInfo &material = info(Fact::material);
    return std::any_of(
               unmagnetic_metals.begin(), unmagnetic_metals.end(),
               [&](std::string_view metal) { return (metals >> word_index(material, metal)) & 1u; }) ||
           names_austenitic(tokens) || names_nickel_alloy(tokens);
}

bool names_magnetic_metal(std::string_view text) {
    const auto tokens = tokens_of(text);
    return !is_called_so(tokens) && names_ferritic(tokens);
}

} // namespace beadbook
