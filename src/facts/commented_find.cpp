#include "facts/commented_find.hpp"

#include "criteria/methods.hpp"
#include "facts/line_gist.hpp"
#include "facts/log_line_hints.hpp"
#include "facts/told_spot.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view blanks = " \t", digits = "0123456789";

/// Behind the method that a line may begin with.
std::string_view behind_method(std::string_view words) {
    const std::size_t end = std::min(words.find_first_of(blanks), words.size());
    const std::string_view word = words.substr(0, end);
    const bool method = exam_named(word.substr(0, word.size() - (word.ends_with(':') ? 1 : 0))).has_value();
    return method ? trimmed(words.substr(end)) : words;
}

/// The number before it is how many, where no find is numbered: none goes under a number that it has not.
std::string each_as_find(std::string_view find) {
    if (!find.starts_with('#')) return "'" + shown(find) + "'";
    const std::size_t end = std::min(find.find(' '), find.size());
    if (find.substr(1, end - 1) == "1") return "'" + shown(trimmed(find.substr(end))) + "' with its place,";
    return "each of the " + std::string(find.substr(1, end - 1)) + " on a line of its own, '" +
           shown(trimmed(find.substr(end))) + "' with its place,";
}

constexpr std::optional<Typed> IndicationRecord::*find_places[] = {
    &IndicationRecord::at, &IndicationRecord::middle, &IndicationRecord::end, &IndicationRecord::across};

/// Whether what is told may be a find of that type.
bool is_alike(const ToldFind &told, TypeId found, const Vocabulary &vocabulary) {
    return std::any_of(told.types.begin(), told.types.end(), [&](TypeId type) {
        return vocabulary.is_a(type, found) || vocabulary.is_a(found, type);
    });
}

/// Linear by its very name: undercut, overlap, lamination.
bool is_named_linear(const ToldFind &told, const Vocabulary &vocabulary) {
    const auto type = vocabulary.find(told.word);
    return type && vocabulary[*type].shape == Shape::linear;
}

/// Whether a size is one that was logged of the find, in its unit or another that a bare number may have.
bool is_size_of(const IndicationRecord &find, std::string_view size, std::optional<Unit> unit) {
    const auto is = [&](std::optional<Unit> bare) {
        try {
            const Exact value(parse_length(size, bare).nm);
            return std::any_of(find.measures.begin(), find.measures.end(),
                               [&](const auto &one) { return one.second.value == value; }) ||
                   std::any_of(std::begin(find_places), std::end(find_places), [&](const auto place) {
                       return find.*place && (find.*place)->value == value;
                   });
        } catch (const InputError &) {
            return false;
        }
    };
    return is(unit) || (!unit && (is(Unit::inch) || is(Unit::millimetre)));
}

} // namespace

std::string_view behind_hash(std::string_view line) {
    const std::string_view bare = trimmed(line);
    return bare.substr(std::min(bare.find_first_not_of("# \t"), bare.size()));
}

bool reads_as_find(std::string_view words, const Vocabulary &vocabulary) {
    const std::string_view find = behind_method(trimmed(words));
    const auto named = type_named(find, vocabulary);
    if (!named) return false;
    const std::string_view rest = find.substr(named->length);
    if (trimmed(rest).empty()) return true;
    const std::string_view behind = rest.substr(0, rest.find('#'));
    return behind.find_first_of(digits) != rest.npos &&
           !tells_no_find(find.substr(0, named->length), named->type, behind, vocabulary);
}

std::string find_in_comment(std::string_view line, const Vocabulary &vocabulary) {
    const std::string_view bare = trimmed(line);
    if (!bare.starts_with('#')) return "";
    const std::string_view words = behind_hash(bare);
    const std::size_t end = std::min(words.find_first_not_of(digits), words.size());
    const std::string_view find = trimmed(words.substr(end));
    if (end == 0) return reads_as_find(words, vocabulary) ? std::string(words) : "";
    if (find.size() == words.size() - end || !type_named(behind_method(find), vocabulary)) return "";
    return "#" + std::string(words.substr(0, end)) + " " + std::string(find);
}

std::string word_of_find(std::string_view text, const Vocabulary &vocabulary, Heard heard) {
    const auto told = told_in(behind_hash(text), vocabulary, heard);
    return told.empty() ? "" : told.front().word;
}

std::string other_find_in_remark(const IndicationRecord &find, const WeldLine &weld, std::optional<Unit> unit,
                                 const Vocabulary &vocabulary) {
    for (const auto &told : told_in(find.remark, vocabulary)) {
        const bool alike = is_alike(told, find.type, vocabulary);
        if (!alike && (is_planar_find(told, vocabulary) || is_named_linear(told, vocabulary)))
            return told.clause;
        if (told.measured && (!alike || tells_another_place(told.clause, find, weld, unit)))
            return told.clause;
    }
    if (std::string more = more_told(find.remark); !more.empty()) return more;
    if (std::string worse = worse_told(find.remark); !worse.empty()) return worse;
    const auto is_logged = [&](std::string_view size) { return is_size_of(find, size, unit); };
    if (std::string size = another_size_told(find.remark, is_logged); !size.empty()) return size;
    const std::string another = another_told(find.remark);
    return !another.empty() && tells_another_place(another, find, weld, unit) ? another : "";
}

std::string find_told_in_comment(std::string_view line, const Vocabulary &vocabulary) {
    constexpr const char *where = "and what stands behind # is kept nowhere; log it as a find, or keep it on "
                                  "the coupon with 'remark'";
    const std::string_view words = behind_hash(line);
    if (const std::string word = word_of_find(line, vocabulary, Heard::all); !word.empty())
        return "a remark that speaks of '" + shown(word) + "', " + where;
    for (const auto &told : {place_told(words), number_told(words)})
        if (!told.empty()) return "a remark that reads like a find, '" + shown(told) + "', " + where;
    return "";
}

std::string why_no_comment(std::string_view line, const Vocabulary &vocabulary) {
    if (const std::string find = find_in_comment(line, vocabulary); !find.empty())
        return "a remark that reads like a find; write '" + shown(find) +
               "', or another word behind the # if it is none";
    return find_told_in_comment(line, vocabulary);
}

std::string not_behind_none(std::string_view remark, const Vocabulary &vocabulary) {
    const std::string_view words = behind_hash(remark);
    if (words.empty()) return "";
    constexpr const char *instead =
        "; write what was found as a find in place of none, or another word behind "
        "the # if it is none";
    if (const std::string find = find_in_comment("# " + std::string(words), vocabulary); !find.empty())
        return "a remark that reads like a find, behind none; write " + each_as_find(find) +
               " in place of none, or another word behind the # if it is none";
    if (words.find_first_not_of(digits) == words.npos)
        return "behind none a # with a number, as of a find; write none alone, or the find in its place";
    if (const std::string told = told_beside_none(words, vocabulary); !told.empty())
        return "behind none a remark that speaks of '" + shown(told) + "'" + instead;
    if (const std::string word = taken_back(words); !word.empty())
        return "behind none a remark with '" + shown(word) +
               "', which takes some of it back; say it of what found none alone, write what was found as a "
               "find, "
               "or why it was not complete as incomplete: WHY";
    return "";
}

std::string told_beside_none(std::string_view text, const Vocabulary &vocabulary) {
    if (std::string word = word_of_find(text, vocabulary, Heard::beside_none); !word.empty()) return word;
    for (auto &told : {place_told(text), size_told(text), number_told(text), worse_told(text)})
        if (!told.empty()) return told;
    return "";
}

bool reads_like_a_find(std::string_view text, const Vocabulary &vocabulary) {
    const auto told = told_in(text, vocabulary);
    return !find_in_comment("# " + std::string(text), vocabulary).empty() ||
           std::any_of(told.begin(), told.end(), [](const ToldFind &one) { return one.measured; });
}

bool note_tells_find(std::string_view note, const Vocabulary &vocabulary) {
    return !taken_back(note).empty() || tells_find_of_itself(note, vocabulary);
}

bool tells_find_of_itself(std::string_view note, const Vocabulary &vocabulary) {
    if (!told_beside_none(note, vocabulary).empty()) return true;
    // The height of a cap is a find on a line, and no more than a note here.
    const auto named = type_named(trimmed(note), vocabulary);
    return !find_in_comment("# " + std::string(note), vocabulary).empty() &&
           !(named && tells_no_find(trimmed(note).substr(0, named->length), named->type,
                                    trimmed(note).substr(named->length), vocabulary));
}

std::string find_told_beside(std::string_view text, std::span<const IndicationRecord> logged,
                             const Vocabulary &vocabulary) {
    if (logged.empty()) return tells_find_of_itself(text, vocabulary) ? std::string(text) : "";
    for (const auto &told : told_in(text, vocabulary)) {
        const bool known = std::any_of(logged.begin(), logged.end(), [&](const IndicationRecord &find) {
            return is_alike(told, find.type, vocabulary);
        });
        if (!known && (told.measured || is_planar_find(told, vocabulary))) return told.clause;
    }
    return "";
}

} // namespace beadbook
