#include "criteria/weld_words.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace beadbook {
namespace {

struct Called {
    std::string_view also, name;
};

// Abbreviations of AWS A3.0 and numbers of ISO 4063:2009, from memory: the 13x with a flux core are FCAW,
// those with a metal core GMAW.
constexpr auto other_processes = std::to_array<Called>({
    {"111", "SMAW"}, {"MMA", "SMAW"}, {"MMAW", "SMAW"}, {"114", "FCAW"}, {"132", "FCAW"}, {"136", "FCAW"},
    {"12", "SAW"},   {"121", "SAW"},  {"122", "SAW"},   {"124", "SAW"},  {"125", "SAW"},  {"126", "SAW"},
    {"13", "GMAW"},  {"131", "GMAW"}, {"133", "GMAW"},  {"135", "GMAW"}, {"138", "GMAW"}, {"MIG", "GMAW"},
    {"MAG", "GMAW"}, {"14", "GTAW"},  {"141", "GTAW"},  {"142", "GTAW"}, {"143", "GTAW"}, {"145", "GTAW"},
    {"146", "GTAW"}, {"147", "GTAW"}, {"TIG", "GTAW"},  {"15", "PAW"},   {"151", "PAW"},  {"152", "PAW"},
    {"153", "PAW"},  {"154", "PAW"},  {"155", "PAW"},   {"3", "OFW"},    {"31", "OFW"},   {"311", "OFW"},
    {"312", "OFW"},  {"313", "OFW"},  {"OAW", "OFW"},   {"51", "EBW"},   {"511", "EBW"},  {"512", "EBW"},
    {"513", "EBW"},  {"52", "LBW"},   {"521", "LBW"},   {"522", "LBW"},  {"523", "LBW"},  {"72", "ESW"},
    {"73", "EGW"},   {"21", "RSW"},   {"22", "RSEW"},   {"42", "FRW"},   {"43", "FSW"},
});

constexpr auto other_metals = std::to_array<Called>({
    {"steels", "steel"},
    {"stainless", "steel"},
    {"aluminum", "aluminium"},
    {"bronze", "copper"},
    {"brass", "copper"},
});

std::string_view among(const FactInfo &fact, std::string_view word) {
    for (const auto &one : fact.words)
        if (same_word(one, word)) return one;
    return {};
}

template <std::size_t N>
std::string_view among(const std::array<Called, N> &others, std::string_view word) {
    for (const auto &one : others)
        if (same_word(one.also, word)) return one.name;
    return {};
}

WordBits bit_of(Fact fact, std::string_view word) { return WordBits{1} << word_index(info(fact), word); }

/// Words by which a text says that it is not what it names, or that it may be something else.
constexpr std::string_view words_of_doubt[] = {"not",    "non",    "no",    "or",
                                               "filler", "silver", "maybe", "perhaps"};

/// The first word of each part between plus signs and commas; one that is not known leaves all unknown.
template <class Find>
WordBits bits_of(Fact fact, std::string_view text, Find called) {
    WordBits out = 0;
    if (leaves_open(text)) return out;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find_first_of("+,", begin), text.size());
        const std::string_view part = trimmed(text.substr(begin, end - begin));
        const std::string_view word = called(part.substr(0, part.find(' ')));
        if (word.empty()) return 0;
        out |= bit_of(fact, word);
        begin = end + 1;
    }
    return out;
}

} // namespace

bool leaves_open(std::string_view text) {
    const auto words = letters_in(text);
    return text.find_first_of("?(") != text.npos || std::any_of(words.begin(), words.end(), [](auto word) {
               return std::any_of(std::begin(words_of_doubt), std::end(words_of_doubt),
                                  [&](auto doubt) { return same_word(doubt, word); });
           });
}

std::string_view process_called(std::string_view word) {
    const std::string_view own = among(info(Fact::process), word);
    return own.empty() ? among(other_processes, word) : own;
}

std::string_view position_called(std::string_view word) { return among(info(Fact::position), word); }

WordBits processes_in(std::string_view text) { return bits_of(Fact::process, text, process_called); }
bool same_process(std::string_view a, std::string_view b) {
    return (processes_in(a) & processes_in(b)) != 0 || same_word(a, b);
}
WordBits positions_in(std::string_view text) { return bits_of(Fact::position, text, position_called); }

WordBits materials_in(std::string_view text) {
    WordBits out = 0;
    if (leaves_open(text)) return out;
    for (const auto word : letters_in(text)) {
        std::string_view metal = among(info(Fact::material), word);
        if (metal.empty()) metal = among(other_metals, word);
        if (!metal.empty()) out |= bit_of(Fact::material, metal);
    }
    return out;
}

} // namespace beadbook
