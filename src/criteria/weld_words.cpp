#include "criteria/weld_words.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
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

bool same(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

std::string_view among(const FactInfo &fact, std::string_view word) {
    for (const auto &one : fact.words)
        if (same(one, word)) return one;
    return {};
}

template <std::size_t N>
std::string_view among(const std::array<Called, N> &others, std::string_view word) {
    for (const auto &one : others)
        if (same(one.also, word)) return one.name;
    return {};
}

WordBits bit_of(Fact fact, std::string_view word) { return WordBits{1} << word_index(info(fact), word); }

/// Words by which a text says that it is not what it names, or that it may be something else.
constexpr std::string_view words_of_doubt[] = {"not",    "non",    "no",    "or",
                                               "filler", "silver", "maybe", "perhaps"};

/// Whether a text leaves open what it is.
bool is_doubtful(std::string_view text) {
    if (text.find_first_of("?(") != text.npos) return true;
    const auto letter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
    for (std::size_t begin = 0; begin < text.size();) {
        std::size_t end = begin;
        while (end < text.size() && letter(text[end])) ++end;
        for (const auto word : words_of_doubt)
            if (same(word, text.substr(begin, end - begin))) return true;
        begin = std::max(end, begin + 1);
    }
    return false;
}

/// The first word of each part between plus signs and commas; one that is not known leaves all unknown.
template <class Find>
WordBits bits_of(Fact fact, std::string_view text, Find called) {
    WordBits out = 0;
    if (is_doubtful(text)) return out;
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

std::string_view process_called(std::string_view word) {
    const std::string_view own = among(info(Fact::process), word);
    return own.empty() ? among(other_processes, word) : own;
}

std::string_view position_called(std::string_view word) { return among(info(Fact::position), word); }

WordBits processes_in(std::string_view text) { return bits_of(Fact::process, text, process_called); }
WordBits positions_in(std::string_view text) { return bits_of(Fact::position, text, position_called); }

WordBits materials_in(std::string_view text) {
    WordBits out = 0;
    if (is_doubtful(text)) return out;
    const auto letter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
    for (std::size_t begin = 0; begin < text.size();) {
        if (!letter(text[begin])) {
            ++begin;
            continue;
        }
        std::size_t end = begin;
        while (end < text.size() && letter(text[end])) ++end;
        const std::string_view word = text.substr(begin, end - begin);
        std::string_view metal = among(info(Fact::material), word);
        if (metal.empty()) metal = among(other_metals, word);
        if (!metal.empty()) out |= bit_of(Fact::material, metal);
        begin = end;
    }
    return out;
}

} // namespace beadbook
