#include "facts/guessed_type.hpp"

#include "facts/find_words.hpp"
#include "facts/several_told.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

/// The name that is meant by words; of three or four letters, which are as far from many names by two of
/// them, one that is a slip away.
std::string near_name(std::string_view words, const Vocabulary &vocabulary) {
    constexpr std::size_t short_word = 4;
    const auto names = vocabulary.names();
    if (words.size() > short_word) return nearest_word(words, names);
    for (const auto &name : names)
        if (name.size() >= short_word && one_slip(lowered(words), name)) return name;
    return "";
}

/// The words of a line's beginning that are the plural of an imperfection, the most of them; empty if none
/// are.
std::string_view plural_named(std::string_view words, const Vocabulary &vocabulary) {
    for (std::size_t end = words.size(); end != words.npos && end > 0;
         end = words.find_last_of(' ', end - 1)) {
        const std::string_view said = words.substr(0, end);
        const auto one = vocabulary.find(one_of_plural(said, vocabulary));
        if (one && !vocabulary[*one].measured) return said;
    }
    return {};
}

} // namespace

NamedType guessed_type(const LineAround &around, std::string_view found, std::size_t begin,
                       const Vocabulary &vocabulary) {
    const std::string_view line = around.from;
    if (found.empty()) throw InputError("a line begins with the type, e.g. 'gas pore 0.045 at 3.2'", begin);
    const std::string_view first = line.substr(0, line.find_first_of(" \t\n\v\f\r,"));
    if (like_a_method(first) && type_named(line.substr(first.size()), vocabulary))
        throw InputError("'" + shown(first) +
                             (exam_named(first) ? "' is a second method: a find is of one"
                                                : "' is no exam; expected " + exam_names_text()),
                         begin);
    if (reads_as_none(found))
        throw InputError("'" + shown(found) +
                             "' is no find; that an exam found none is said by the word none, when it is "
                             "finished",
                         begin);
    if (says_over(found))
        throw InputError("'" + shown(found) +
                             "' is no find; an exam that is over is finished, with none if it found none",
                         begin);
    if (same_word(first, "no") || says_none(found) || says_none(first))
        throw InputError("'" + shown(found) +
                             "' is no find; that an exam found none is said when it is "
                             "finished, with none found",
                         begin);
    if (const auto plural = plural_named(found, vocabulary); !plural.empty())
        throw InputError(
            how_several_are_logged(plural, *vocabulary.find(one_of_plural(plural, vocabulary)), vocabulary),
            begin);
    if (const std::string behind = type_behind(found, around, vocabulary); !behind.empty())
        throw InputError(behind, begin);
    if (const std::string near = nearest_word(found, vocabulary.names());
        found.size() > first.size() && near.starts_with(std::string(first) + " ") &&
        vocabulary.perhaps(found).empty())
        throw InputError("'" + shown(found) + "' does not begin with a type of imperfection; did you mean '" +
                             near + "'?",
                         begin);
    for (const std::string_view word : {found, first}) {
        const auto could = vocabulary.perhaps(word);
        if (could.size() == 1) return {could.front(), word.size()};
        if (could.empty()) continue;
        std::vector<std::string> names;
        for (const TypeId type : could) names.push_back(vocabulary[type].name);
        throw InputError("'" + shown(word) + "' could be " + listed(names, "or") + "; write which", begin);
    }
    for (const std::string_view word : {found, first})
        if (const auto could = vocabulary.sharing(word); !could.empty())
            throw InputError("'" + shown(word) + "' could be " + few_of(could, vocabulary) +
                                 (could.size() > 1
                                      ? "; write which"
                                      : "; write '" + vocabulary[could.front()].name + "' if that is meant"),
                             begin);
    const std::string near = near_name(found, vocabulary);
    throw InputError("'" + shown(found) + "' does not begin with a type of imperfection" +
                         (!near.empty() ? "; did you mean '" + near + "'?" : "") +
                         " ('criteria types' lists them)",
                     begin);
}

} // namespace beadbook
