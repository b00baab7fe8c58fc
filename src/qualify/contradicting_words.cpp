#include "qualify/contradicting_words.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>

namespace beadbook {
namespace {

/// Words for the same thing have the same number.
struct Row {
    Trait trait;
    int same;
    std::string_view word;
};

// AWS A3.0 beside ISO 6947 and ISO 9606-1, from memory. A position with its progression is held as the
// position. Backing by gas, flux or an insert, and of welds from both sides, is called with or without by
// whom you ask, so it stands in no row.
constexpr auto rows = std::to_array<Row>({
    {Trait::position, 1, "1G"},     {Trait::position, 1, "1F"},       {Trait::position, 1, "PA"},
    {Trait::position, 2, "2F"},     {Trait::position, 2, "PB"},       {Trait::position, 3, "2G"},
    {Trait::position, 3, "PC"},     {Trait::position, 4, "3G"},       {Trait::position, 4, "3F"},
    {Trait::position, 4, "PF"},     {Trait::position, 4, "PG"},       {Trait::position, 5, "4G"},
    {Trait::position, 5, "PE"},     {Trait::position, 6, "4F"},       {Trait::position, 6, "PD"},
    {Trait::position, 7, "5G"},     {Trait::position, 7, "5F"},       {Trait::position, 7, "PH"},
    {Trait::position, 7, "PJ"},     {Trait::position, 7, "PK"},       {Trait::position, 8, "6G"},
    {Trait::position, 8, "6GR"},    {Trait::position, 8, "H-L045"},   {Trait::position, 8, "J-L045"},
    {Trait::progression, 1, "up"},  {Trait::progression, 2, "down"},  {Trait::transfer, 1, "spray"},
    {Trait::transfer, 1, "S"},      {Trait::transfer, 2, "globular"}, {Trait::transfer, 2, "G"},
    {Trait::transfer, 3, "pulsed"}, {Trait::transfer, 3, "P"},        {Trait::transfer, 4, "short-circuit"},
    {Trait::transfer, 4, "D"},      {Trait::backing, 1, "without"},   {Trait::backing, 1, "ss nb"},
    {Trait::backing, 2, "with"},    {Trait::backing, 2, "ss mb"},     {Trait::runs, 1, "sl"},
    {Trait::runs, 2, "ml"},         {Trait::rotated, 1, "yes"},       {Trait::rotated, 2, "no"},
});

constexpr auto upwards = std::to_array<std::string_view>({"PF", "PH", "H-L045"});
constexpr auto downwards = std::to_array<std::string_view>({"PG", "PJ", "J-L045"});

std::set<std::string_view> parts_of(std::string_view text) {
    std::set<std::string_view> out;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find('+', begin), text.size());
        out.insert(trimmed(text.substr(begin, end - begin)));
        begin = end + 1;
    }
    return out;
}

/// Nothing if a part is in no row.
std::optional<std::set<int>> meanings(Trait trait, std::string_view text) {
    std::set<int> out;
    for (const auto part : parts_of(text)) {
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row &one) {
            return one.trait == trait && same_word(one.word, part);
        });
        if (row == rows.end()) return std::nullopt;
        out.insert(row->same);
    }
    return out;
}

} // namespace

bool contradict(Trait trait, std::string_view a, std::string_view b) {
    const auto one = meanings(trait, a), other = meanings(trait, b);
    return one && other && *one != *other;
}

bool same_meaning(Trait trait, std::string_view a, std::string_view b) {
    const auto one = meanings(trait, a), other = meanings(trait, b);
    return same_word(a, b) || (one && other && *one == *other);
}

Truth same_position(std::string_view a, std::string_view b) {
    const auto number_of = [](std::string_view part) {
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row &one) {
            return one.trait == Trait::position && same_word(one.word, part);
        });
        return row == rows.end() ? 0 : row->same;
    };
    bool open = false;
    for (const auto part : parts_of(a))
        for (const auto other : parts_of(b)) {
            const int one = number_of(part), two = number_of(other);
            const std::string_view up = progression_of(part), too = progression_of(other);
            if (same_word(part, other) ||
                (one != 0 && one == two && (up.empty() || too.empty() || up == too)))
                return Truth::yes;
            open = open || one == 0 || two == 0;
        }
    return open ? Truth::unknown : Truth::no;
}

bool several_positions(std::string_view text) { return parts_of(text).size() > 1; }

std::string_view progression_of(std::string_view position) {
    bool up = false, down = false;
    for (const auto part : parts_of(position)) {
        up = up || std::find(upwards.begin(), upwards.end(), part) != upwards.end();
        down = down || std::find(downwards.begin(), downwards.end(), part) != downwards.end();
    }
    return up == down ? "" : up ? "up" : "down";
}

} // namespace beadbook
