#include "facts/line_gist.hpp"

#include "facts/clauses.hpp"
#include "facts/log_line_hints.hpp"
#include "measure/parse.hpp"
#include "measure/place.hpp"
#include "measure/text.hpp"
#include "measure/unit.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view figures = "0123456789";

/// Behind `correct 3`, however that is typed, and behind the number of a find.
std::string_view behind_order(std::string_view line) {
    std::string_view rest = trimmed(line);
    const auto words = words_of(rest);
    const auto from = [&](std::size_t word) {
        return word < words.size() ? rest.substr(static_cast<std::size_t>(words[word].data() - rest.data()))
                                   : std::string_view();
    };
    if (words.empty()) return rest;
    if (words.front().starts_with('#')) return from(1);
    const bool corrects =
        same_word(words.front(), "correct") ||
        (words.size() > 1 && has_a_figure(words[1]) && !nearest_word(words.front(), {"correct"}).empty() &&
         !type_named(words.front(), Vocabulary::shipped()));
    if (!corrects) return rest;
    const bool numbered = words.size() > 1 && words[1].size() < 4 && has_a_figure(words[1]);
    return from(numbered ? 2 : 1);
}

/// Without its remark, and without what stands in front of the type.
std::string_view what_it_tells(std::string_view line) {
    std::string_view rest = behind_order(line);
    rest = trimmed(rest.substr(0, rest.find('#')));
    if (const std::size_t end = std::min(rest.find(' '), rest.size());
        exam_named(rest.substr(0, end - (end > 0 && rest[end - 1] == ':' ? 1 : 0))))
        rest = trimmed(rest.substr(end));
    return rest;
}

/// Letters that look like figures as these, in small letters.
std::string look_alike(std::string_view word) {
    std::string out = lowered(word);
    for (char &c : out) c = c == 'o' ? '0' : c == 'l' || c == 'i' ? '1' : c == ';' ? ':' : c;
    return out;
}

bool is_hour(std::string_view word) {
    const std::size_t colon = word.find_first_of(":;");
    return colon != word.npos && colon > 0 && has_a_figure(look_alike(word.substr(0, colon)));
}

/// A unit of a place, or o'clock.
bool is_unit(std::string_view word) {
    std::size_t end = 0;
    return (scan_unit(word, end, {Dimension::length, Dimension::angle}) && end == word.size()) ||
           behind_clock_word(word, 0) == word.size();
}

/// A measure's key, by itself or at its number.
bool is_measure_word(std::string_view word) {
    return std::any_of(measure_keys().begin(), measure_keys().end(), [&](const MeasureKey &key) {
        return same_word(word, key.word) || same_word(word, key.quick);
    });
}

/// What stands as a place: behind its word or as an hour; where nothing does, it may be any number without a
/// key.
struct PlacesTyped {
    std::vector<std::string> keyed, bare;
};
PlacesTyped places_in(std::string_view line) {
    const std::string_view said = what_it_tells(line);
    const auto words = words_of(said);
    PlacesTyped out;
    const auto with_unit = [&](std::size_t i, std::string_view word) {
        std::string out(word);
        if (i + 1 < words.size() && !has_a_figure(words[i + 1]) && !is_measure_word(words[i + 1]) &&
            is_unit(words[i + 1]))
            out += " " + std::string(words[i + 1]);
        return out;
    };
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string_view word =
            words[i].ends_with(',') ? words[i].substr(0, words[i].size() - 1) : words[i];
        const std::string_view before = i > 0 ? words[i - 1] : std::string_view();
        const bool told =
            same_word(before, "at") || before == "@" || same_word(before, "from") || same_word(before, "mid");
        const bool hour =
            is_hour(word) || (has_a_figure(word) && with_unit(i, word).find("clock") != std::string::npos);
        if (word.empty() || (!told && same_word(before, "to"))) continue;
        if (word.starts_with('@') && word.size() > 1)
            out.keyed.push_back(with_unit(i, word.substr(1)));
        else if (told || hour)
            out.keyed.push_back(with_unit(i, word));
        else if (!is_measure_word(before) &&
                 (figures.find(word.front()) != figures.npos || word.front() == '.'))
            out.bare.push_back(with_unit(i, word));
    }
    return out;
}

bool is_same_place(const std::string &typed, const Typed &place, const WeldLine &weld,
                   std::optional<Unit> unit) {
    try {
        return parse_place(typed, weld, unit).value == place.value;
    } catch (const InputError &) {
        const std::string said = look_alike(typed), text = look_alike(place.text);
        return text.starts_with(said) &&
               (text.size() == said.size() || figures.find(text[said.size()]) == figures.npos);
    }
}

const std::optional<Typed> &place_told(const IndicationRecord &find) {
    return find.at ? find.at : find.middle;
}

/// A word that the find has otherwise.
bool contradicts_word(std::string_view line, const IndicationRecord &find) {
    for (const auto word : words_of(what_it_tells(line)))
        for (std::size_t a = 0; a < attribute_count; ++a)
            if (const auto said = word_index(info(static_cast<Attribute>(a)), lowered(word));
                said && find.words[a] != 0 && find.words[a] != said)
                return true;
    return false;
}

} // namespace

std::vector<TypeId> types_spoken_of(std::string_view line, const Vocabulary &vocabulary) {
    constexpr std::size_t least = 3; // shorter ones join other words: of, in, at
    const std::string_view said = what_it_tells(line);
    const auto words = words_of(said);
    for (const auto word : words) {
        const auto named =
            type_named(said.substr(static_cast<std::size_t>(word.data() - said.data())), vocabulary);
        if (named && (word.data() == said.data() || named->length >= least)) return {named->type};
    }
    const std::string_view found = trimmed(said.substr(0, said.find_first_of("@.0123456789")));
    if (found.empty()) return {};
    const std::string_view first = found.substr(0, found.find(' '));
    for (const auto word : {found, first})
        if (auto could = vocabulary.perhaps(word); !could.empty()) return could;
    for (const auto word : {found, first})
        if (const auto type = vocabulary.find(nearest_word(word, vocabulary.names()))) return {*type};
    return vocabulary.sharing(first);
}

bool may_tell(std::string_view line, const IndicationRecord &find, const WeldLine &weld,
              std::optional<Unit> unit, const Vocabulary &vocabulary) {
    const auto types = types_spoken_of(line, vocabulary);
    const bool alike = std::any_of(types.begin(), types.end(), [&](TypeId type) {
        return vocabulary.is_a(type, find.type) || vocabulary.is_a(find.type, type);
    });
    if (!alike || contradicts_word(line, find)) return false;
    const auto places = places_in(line);
    const auto &place = place_told(find);
    if (!place) return places.keyed.empty();
    const auto &could = places.keyed.empty() ? places.bare : places.keyed;
    return std::any_of(could.begin(), could.end(),
                       [&](const auto &one) { return is_same_place(one, *place, weld, unit); });
}

bool tells_another_place(std::string_view line, const IndicationRecord &find, const WeldLine &weld,
                         std::optional<Unit> unit) {
    const auto places = places_in(line).keyed;
    const auto &place = place_told(find);
    return !places.empty() && (!place || std::none_of(places.begin(), places.end(), [&](const auto &one) {
        return is_same_place(one, *place, weld, unit);
    }));
}

} // namespace beadbook
