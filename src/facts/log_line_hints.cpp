#include "facts/log_line_hints.hpp"

#include "facts/clauses.hpp"
#include "facts/several_told.hpp"
#include "measure/parse.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "measure/unit.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {

std::optional<NamedType> type_named(std::string_view text, const Vocabulary &vocabulary) {
    constexpr int most_words = 4;
    std::optional<NamedType> out;
    std::size_t end = 0;
    for (int words = 0; words < most_words && end < text.size(); ++words) {
        while (end < text.size() && std::isspace(static_cast<unsigned char>(text[end]))) ++end;
        while (end < text.size() && !std::isspace(static_cast<unsigned char>(text[end]))) ++end;
        // A comma parts the name from what comes.
        const bool parted = end > 0 && text[end - 1] == ',';
        const std::size_t length = parted ? end - 1 : end;
        if (const auto type = vocabulary.find(text.substr(0, length))) out = NamedType{*type, length};
        if (parted) break;
    }
    return out;
}

bool joins_words(std::string_view word) {
    constexpr std::string_view words[] = {"of", "in", "if", "is", "it", "as", "up"};
    return is_one_of(word, words);
}

bool like_a_method(std::string_view word) {
    return word.size() == 2 && word[0] >= 'A' && word[0] <= 'Z' && word[1] == 'T';
}

bool angle_at(std::string_view text, const ImperfectionType &type) {
    std::size_t end = 0;
    if ((type.iso != "505" && type.iso != "508") || !scan_number(text, end)) return false;
    if (scan_unit(text, end, {Dimension::angle})) return true;
    const std::size_t next = text.find_first_not_of(' ', end);
    return !scan_unit(text, end, {Dimension::length}) && (next == text.npos || text[next] != 'x');
}

bool says_none(std::string_view words) {
    std::string_view said = trimmed(words);
    if (said.ends_with('.')) said = trimmed(said.substr(0, said.size() - 1));
    constexpr std::string_view ways[] = {"none",          "nothing",        "none found", "nothing found",
                                         "no indication", "no indications", "no finds"};
    return std::any_of(std::begin(ways), std::end(ways),
                       [&](std::string_view way) { return same_word(way, said); });
}

bool reads_as_none(std::string_view words) {
    constexpr std::string_view ways[] = {"ok",  "okay",   "nil",      "clean", "clear", "good",
                                         "acc", "accept", "accepted", "pass",  "passed"};
    return std::any_of(std::begin(ways), std::end(ways),
                       [&](std::string_view way) { return same_word(way, trimmed(words)); });
}

bool says_over(std::string_view words) {
    constexpr std::string_view ways[] = {"done",      "finish", "finished", "over",
                                         "completed", "ready",  "end",      "ended"};
    return is_one_of(trimmed(words), ways);
}

void check_typed_signs(std::string_view said) {
    constexpr std::pair<std::string_view, std::string_view> signs[] = {{"\u201D", "\" or in"},
                                                                       {"\u201C", "\" or in"},
                                                                       {"\u2033", "\" or in"},
                                                                       {"\u00BD", "1/2, as in 1-1/2"},
                                                                       {"\u00BC", "1/4, as in 1-1/4"},
                                                                       {"\u00BE", "3/4, as in 1-3/4"},
                                                                       {"\u2013", "-"},
                                                                       {"\u2044", "/"},
                                                                       {"\u00D7", "x"}};
    for (const auto &[sign, way] : signs)
        if (const std::size_t at = said.find(sign); at != said.npos)
            throw InputError("'" + std::string(sign) + "' is not understood; write " + std::string(way), at);
}

std::string few_of(const std::vector<TypeId> &types, const Vocabulary &vocabulary) {
    constexpr std::size_t most = 8;
    std::vector<std::string> names;
    for (const TypeId type : types)
        if (names.size() < most) names.push_back(vocabulary[type].name);
    return types.size() > most ? joined(names, ", ") + " or others" : listed(names, "or");
}

void check_two(std::string_view longer, std::string_view other, const ImperfectionType &type, OwnMeasure own,
               std::size_t column) {
    if (type.measured)
        throw InputError("'" + shown(longer) + " x " + shown(other) + "' of " + type.name +
                             ", which is one number; write '" + type.quick + " " + shown(other) + "'" +
                             (type.name == "fillet size" ? ", the smaller leg" : ", what was measured"),
                         column);
    if (own != OwnMeasure::depth && own != OwnMeasure::height) return;
    const std::string word = own == OwnMeasure::depth ? "depth" : "height", both = "l " + shown(longer) + " ";
    const bool height = own == OwnMeasure::height; // a cap is as often measured across as along
    throw InputError("'" + shown(longer) + " x " + shown(other) + "' of " + type.name + " could be " +
                         (height ? "width x height, " : "") + "length x " + word +
                         " or length x width; write " +
                         (height ? "'w " + shown(longer) + " h " + shown(other) + "', '" : "'") + both +
                         word.substr(0, 1) + " " + shown(other) + "' or '" + both + "w " + shown(other) + "'",
                     column);
}

bool stuck_at(std::string_view text, std::size_t end) {
    if (end >= text.size() || text[end] == ' ' || text[end] == 'x') return false;
    return text[end] != ',' || (end + 1 < text.size() && is_digit(text[end + 1]));
}

const MeasureKey *key_behind(std::string_view text) {
    const std::string_view word = text.substr(0, text.find_first_of(" ,"));
    for (const auto &key : measure_keys())
        if (!key.behind.empty() && same_word(word, key.behind)) return &key;
    return nullptr;
}

std::vector<std::string> keys_of_a_line() {
    std::vector<std::string> out{"at", "mid", "across"};
    for (const auto &key : measure_keys()) out.emplace_back(key.word);
    for (std::size_t a = 0; a < attribute_count; ++a)
        for (const auto &word : info(static_cast<Attribute>(a)).words) out.push_back(word);
    return out;
}

namespace {

/// From the first method on that a text names; empty if it names none.
std::string_view from_method(std::string_view text) {
    for (const std::string_view word : words_of(text))
        if (exam_named(word.substr(0, word.find_first_of(",;:."))))
            return text.substr(static_cast<std::size_t>(word.data() - text.data()));
    return {};
}

} // namespace

std::string type_behind(std::string_view words, const LineAround &line, const Vocabulary &vocabulary) {
    const std::string_view said = trimmed(words.substr(0, words.find('#')));
    const auto keys = keys_of_a_line();
    for (std::size_t at = said.find(' '); at != said.npos; at = said.find(' ', at + 1)) {
        const std::string_view behind = trimmed(said.substr(at)), before = trimmed(said.substr(0, at));
        const std::string_view first = words_of(behind).front();
        if (!word_among(first, keys).empty()) return "";
        const auto type = type_named(behind, vocabulary);
        if (!type || (type->length == first.size() && joins_words(first))) continue;
        if (const std::string_view of = from_method(said); !of.empty())
            return "'" + shown(said) + "': a line says one thing by one method; write '" +
                   shown(trimmed(line.from.substr(static_cast<std::size_t>(of.data() - words.data())))) +
                   "' on a line of its own";
        const auto porosity = vocabulary.find("porosity");
        const bool in_line =
            same_word(before, "linear") && porosity && vocabulary.is_a(type->type, *porosity);
        if (in_line || tells_several(before))
            return how_several_are_logged(
                said.substr(0, static_cast<std::size_t>(behind.data() - said.data()) + type->length),
                type->type, vocabulary);
        const bool side = same_word(before, "root") || same_word(before, "face");
        // As it was typed, since it is typed again as it is printed.
        const std::size_t from = static_cast<std::size_t>(behind.data() - words.data());
        std::string way = shown(trimmed(line.from.substr(from)));
        if (way.size() == type->length) way += " ...";
        if (!line.before.empty()) way = shown(line.before) + " " + way;
        if (side) way += " " + lowered(before);
        std::string remark = side ? "" : shown(before);
        if (!line.remark.empty()) remark += (remark.empty() ? "" : ", ") + shown(line.remark);
        if (!remark.empty()) way += " # " + remark;
        return "'" + shown(said) + "': the type comes first, and what tells where stands behind it; write '" +
               way + "'";
    }
    return "";
}

void check_side_behind(std::string_view across, std::size_t end, std::size_t column) {
    const auto behind = words_of(across.substr(end));
    if (behind.empty() || (!same_word(behind.front(), "left") && !same_word(behind.front(), "right"))) return;
    const auto said = words_of(across.substr(0, end));
    std::string number;
    for (std::size_t i = 1; i < said.size(); ++i) number += " " + shown(said[i]);
    throw InputError("'across" + number + " " + shown(behind.front()) +
                         "': the side stands before the number; write 'across " + lowered(behind.front()) +
                         number + "'",
                     column);
}

std::size_t before_its_key(std::string_view text, std::size_t length) {
    const std::string_view name = text.substr(0, length);
    const std::size_t blank = name.find_last_of(" \t");
    std::size_t next = text.find_first_not_of(" \t", length);
    if (blank == name.npos || next == text.npos) return length;
    try {
        if (!scan_number(text, next)) return length;
    } catch (const InputError &) {
        return length; // whoever reads the number says why
    }
    const std::string_view word = name.substr(blank + 1);
    // A bare number behind a size is one, and of an angle the name says it.
    const bool key = std::any_of(measure_keys().begin(), measure_keys().end(), [&](const MeasureKey &one) {
        return !one.behind.empty() && (same_word(one.word, word) || same_word(one.quick, word));
    });
    return key ? trimmed(name.substr(0, blank)).size() : length;
}

std::string without_sign(std::string_view text) {
    const std::size_t sign = text.find_first_of("=: \t");
    if (sign == text.npos || (text[sign] != '=' && text[sign] != ':')) return "";
    const std::string_view key = text.substr(0, sign);
    const bool quick = std::any_of(measure_keys().begin(), measure_keys().end(),
                                   [&](const auto &one) { return same_word(one.quick, key); });
    if (!quick && word_among(key, keys_of_a_line()).empty()) return "";
    const auto rest = words_of(text.substr(sign + 1));
    return lowered(key) + (rest.empty() ? "" : " " + shown(rest.front()));
}

std::string why_not_understood(std::string_view text, std::string_view word, bool parted, TypeId type,
                               const Vocabulary &vocabulary) {
    if (word.size() > 1 && word.front() == '-' && word.find_first_of("0123456789") == 1)
        return "'" + shown(word) + "' is not understood: " +
               (parted ? "a measure and a place are not below zero"
                       : "where it begins and ends is written with words, e.g. from 2 to 2.4");
    if (const std::string way = without_sign(text); !way.empty())
        return "'" + shown(word) + "': a key stands before its number with a blank; write '" + way + "'";
    if (tells_several(word) || !one_of_plural(word, vocabulary).empty())
        return how_several_are_logged(word, type, vocabulary);
    return "'" + shown(word) +
           "' is not understood; expected a measure (l, w, d, h, s), a place (at, from .. to, mid), face, "
           "root, "
           "smooth, sharp or # and a remark" +
           (word.size() > 2 ? did_you_mean(word, keys_of_a_line()) : "");
}

} // namespace beadbook
