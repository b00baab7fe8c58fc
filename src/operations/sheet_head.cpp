#include "operations/sheet_head.hpp"

#include "facts/person_name.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace beadbook {
namespace {

struct HeadKey {
    std::string_view word;
    void (*take)(ExamRequest &exam, const std::string &value);
};
constexpr std::array<HeadKey, 7> head_keys{
    {{"by", [](ExamRequest &exam, const std::string &value) { exam.examiner = value; }},
     {"level", [](ExamRequest &exam, const std::string &value) { exam.level = value; }},
     {"date", [](ExamRequest &exam, const std::string &value) { exam.date = parse_day(value); }},
     {"practice", [](ExamRequest &exam, const std::string &value) { exam.practice = value; }},
     {"procedure", [](ExamRequest &exam, const std::string &value) { exam.procedure = value; }},
     {"with", [](ExamRequest &exam, const std::string &value) { exam.equipment.push_back(value); }},
     {"note", [](ExamRequest &exam, const std::string &value) { exam.note = value; }}}};

const HeadKey *head_key(std::string_view word) {
    const auto at = std::find_if(head_keys.begin(), head_keys.end(),
                                 [&](const HeadKey &one) { return same_word(one.word, word); });
    return at == head_keys.end() ? nullptr : &*at;
}

/// The key that somebody means who calls it by this name; null if it is none.
const HeadKey *key_meant_by(std::string_view name) {
    constexpr std::pair<std::string_view, std::string_view> called[] = {
        {"examiner", "by"}, {"day", "date"}, {"equipment", "with"}};
    for (const auto &[word, key] : called)
        if (same_word(word, name)) return head_key(key);
    return head_key(name);
}

/// A line up to where its methods end, however they are parted.
struct Beginning {
    std::vector<Exam> methods;
    bool well_parted = true; ///< by blanks and commas
    std::string_view rest;   ///< behind them, without blanks before it
};

Beginning beginning_of(std::string_view line) {
    Beginning out;
    for (std::size_t at = 0;;) {
        const std::size_t end = std::min(line.find_first_of(" \t,;/+&:", at), line.size());
        const std::string_view word = line.substr(at, end - at);
        const auto method = exam_named(word);
        out.rest = line.substr(at);
        if (!method && (out.methods.empty() || word != "and")) return out;
        if (method) out.methods.push_back(*method);
        std::size_t next = std::min(line.find_first_not_of(" \t,/+&:", end), line.size());
        out.well_parted = out.well_parted && method &&
                          line.substr(end, next - end).find_first_of("/+&:") == std::string_view::npos;
        at = next;
    }
}

/// What stands behind the methods, with a semicolon for each comma before a key.
std::string parted(std::string_view said) {
    std::string out;
    for (const auto word : words_of(said)) {
        if (head_key(word) && out.ends_with(',')) out.back() = ';';
        out.append(out.empty() ? "" : " ").append(word);
    }
    return out;
}

/// The head as it is written well.
std::string mended(const Beginning &begins) {
    std::string out;
    for (const Exam method : begins.methods) out.append(out.empty() ? "" : " ").append(name_of(method));
    if (begins.rest.starts_with(';')) return out + std::string(begins.rest);
    if (begins.rest.find(';') != std::string_view::npos) return out + "; " + parted(begins.rest);
    for (const auto word : words_of(begins.rest)) {
        const bool begins_a_part = head_key(word) || word.find('=') != std::string_view::npos;
        if (begins_a_part && out.ends_with(',')) out.pop_back();
        out.append(begins_a_part ? "; " : " ").append(word);
    }
    return out;
}

/// Abbreviations of methods are.
bool all_capitals(std::string_view word) {
    return word.size() >= 2 && word.size() <= 4 &&
           std::all_of(word.begin(), word.end(), [](unsigned char c) { return std::isupper(c) != 0; });
}

} // namespace

std::string_view take_word(std::string_view &rest) {
    const std::size_t end = std::min(rest.find_first_of(" \t"), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(rest.find_first_not_of(" \t", end), rest.size()));
    return word;
}

std::vector<Exam> methods_of_head(std::string_view line,
                                  const std::function<bool(const std::string &)> &knows) {
    Beginning begins = beginning_of(line);
    const bool ends = begins.rest.empty() || begins.rest.front() == ';';
    if (begins.methods.empty() || (ends && begins.well_parted)) return begins.methods;
    if (knows(std::string(words_of(line).front()))) return {};
    const std::string_view next = begins.rest.substr(0, begins.rest.find_first_of(" \t;"));
    if (ends || head_key(next) || next.find('=') != std::string_view::npos)
        throw refused("blanks part the methods of a head, and a semicolon stands behind them: write '" +
                      shown(mended(begins)) + "'");
    if (line.find(';') != std::string_view::npos || all_capitals(next))
        throw refused("'" + shown(next) + "' is no exam; expected " + exam_names_text());
    return {};
}

std::optional<std::pair<Exam, std::string>> practice_of_one(std::string_view said) {
    if (!same_word(take_word(said), "practice")) return std::nullopt;
    const auto method = exam_named(take_word(said));
    if (!method || said.empty()) return std::nullopt;
    return std::pair(*method, std::string(said));
}

std::optional<std::string> incomplete_because(std::string_view said) {
    constexpr std::string_view word = "incomplete";
    if (!said.starts_with(word)) return std::nullopt;
    const std::string_view after = trimmed(said.substr(word.size()));
    if (!after.empty() && after.front() != ':') return std::nullopt;
    return std::string(trimmed(after.substr(std::min<std::size_t>(1, after.size()))));
}

void take_head_part(std::string_view said, ExamRequest &exam, std::set<std::string_view> &keys) {
    if (said.empty()) return;
    const std::string whole(said);
    if (const auto why = incomplete_because(said)) {
        if (!exam.incomplete.empty())
            throw refused("'" + shown(whole) + "': this head says 'incomplete' twice; which is meant?");
        if (!gives_reason(*why)) throw refused("why was it not complete? incomplete: WHY");
        exam.incomplete = *why;
        return;
    }
    if (const auto equals = whole.find('='); equals != std::string::npos) {
        if (const HeadKey *key = key_meant_by(trimmed(said.substr(0, equals))))
            throw refused("'" + shown(whole) + "': '" + std::string(key->word) +
                          "' is no condition and has no '='; write '" + std::string(key->word) + " " +
                          shown(trimmed(said.substr(equals + 1))) + "'");
        exam.conditions.push_back(whole);
        return;
    }
    if (same_word(whole, "as before")) {
        exam.as_before = true;
        return;
    }
    const std::string_view word = take_word(said);
    if (const HeadKey *key = head_key(word)) {
        if (const std::string well = parted(whole); key->word != "note" && well.find(';') != well.npos)
            throw refused("'" + shown(whole) + "': a semicolon parts what a head says; write '" +
                          shown(well) + "'");
        if (!keys.insert(key->word).second && key->word != "with")
            throw refused("'" + shown(whole) + "': this head says '" + std::string(key->word) +
                          "' twice; which is meant?");
        // The level of the one before says nothing of the next.
        const bool another = key->word == "by" && !same_person(exam.examiner, said);
        if (another && !keys.contains("level")) exam.level.clear();
        return key->take(exam, std::string(said));
    }
    std::vector<std::string> words;
    for (const auto &key : head_keys) words.emplace_back(key.word);
    throw refused("'" + shown(whole) +
                  "' is not understood; expected by, level, date, practice, procedure, with EQUIPMENT, note, "
                  "as before, incomplete: WHY, or NAME=VALUE" +
                  did_you_mean(word, words));
}

} // namespace beadbook
