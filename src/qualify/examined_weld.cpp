#include "qualify/examined_weld.hpp"

#include "criteria/methods.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace beadbook {
namespace {

constexpr std::string_view wanted = "expected the day, the methods, that it was accepted, and by whom: "
                                    "2026-10-05 RT accepted by A. Field, line 4 weld 17";

[[noreturn]] void refuse_weld(const std::string &text, const std::string &why) {
    throw InputError("'" + shown(text) + "': " + why + "; " + std::string(wanted));
}

/// The word by which the text says that something of the weld was not accepted; empty: none.
std::string denial_in(const std::string &text) {
    constexpr std::array<std::string_view, 5> begins{"reject", "fail", "unaccept", "inaccept", "repair"};
    constexpr std::array<std::string_view, 7> whole{"not", "never", "refused",       "nok",
                                                    "but", "none",  "unsatisfactory"};
    const std::string small = lowered(text);
    for (const auto word : letters_in(small))
        if (std::any_of(begins.begin(), begins.end(), [&](auto b) { return word.starts_with(b); }) ||
            std::find(whole.begin(), whole.end(), word) != whole.end())
            return std::string(word);
    return "";
}

/// The examination that a word names; empty: none.
std::string exam_called(const std::string &word) {
    constexpr std::array<std::string_view, 8> mechanical{"mechanical", "bend",   "bends",   "fracture",
                                                         "macro",      "macros", "section", "sections"};
    if (const auto exam = exam_named(word)) return std::string(name_of(*exam));
    const std::string plain = lowered(word);
    if (plain == "ut") return "UT";
    return std::find(mechanical.begin(), mechanical.end(), plain) != mechanical.end() ? "mechanical" : "";
}

} // namespace

std::vector<std::string> stated_exams() {
    auto out = exam_names();
    out.emplace_back("UT");
    out.emplace_back("mechanical");
    return out;
}

bool same_designation(const std::string &a, const std::string &b) {
    struct Named {
        std::multiset<std::string> numbers;
        std::set<std::string> letters; ///< of one or two, such as the B of weld 17 B
        std::set<std::string> words;
    };
    const auto read = [](const std::string &text) {
        Named out;
        const std::string small = lowered(text);
        const auto digit = [&](std::size_t i) { return small[i] >= '0' && small[i] <= '9'; };
        const auto letter = [&](std::size_t i) {
            return (small[i] >= 'a' && small[i] <= 'z') || (static_cast<unsigned char>(small[i]) & 0x80) != 0;
        };
        for (std::size_t i = 0; i < small.size();) {
            const std::size_t begin = i;
            while (i < small.size() && digit(i)) ++i;
            if (i > begin) {
                out.numbers.insert(small.substr(begin, i - begin));
                continue;
            }
            while (i < small.size() && letter(i)) ++i;
            if (i > begin)
                (i - begin <= 2 ? out.letters : out.words).insert(small.substr(begin, i - begin));
            else
                ++i;
        }
        return out;
    };
    const auto within = [](const auto &one, const auto &other) {
        return std::includes(one.begin(), one.end(), other.begin(), other.end()) ||
               std::includes(other.begin(), other.end(), one.begin(), one.end());
    };
    const Named one = read(a), other = read(b);
    if (!within(one.numbers, other.numbers) || !within(one.letters, other.letters)) return false;
    return (!one.numbers.empty() && !other.numbers.empty()) || within(one.words, other.words);
}

ExaminedWeld read_examined_weld(const std::string &text) {
    ExaminedWeld out;
    try {
        out.day = parse_day(text.substr(0, 10));
    } catch (const InputError &) {
        refuse_weld(text, "it does not begin with its day");
    }
    if (const std::string word = denial_in(text); !word.empty())
        refuse_weld(text, "it says '" + word + "', and only a weld that was accepted counts");
    std::string rest = text.substr(std::min<std::size_t>(10, text.size()));
    const std::size_t at = lowered(rest).find(" accepted by ");
    if (at == std::string::npos) refuse_weld(text, "it does not say that the weld was accepted, and by whom");
    for (const auto &word : words_apart(rest.substr(0, at), [](char c) { return c == ',' || c == '+'; })) {
        if (same_word(word, "and")) continue;
        const std::string exam = exam_called(word);
        if (exam.empty())
            refuse_weld(text,
                        "'" + shown(word) + "' is no examination, they are " + listed(stated_exams(), "and"));
        if (std::find(out.methods.begin(), out.methods.end(), exam) == out.methods.end())
            out.methods.push_back(exam);
    }
    if (out.methods.empty()) refuse_weld(text, "it does not say by which method the weld was examined");
    const std::string tail = rest.substr(at + std::string_view(" accepted by ").size());
    const std::size_t comma = std::min(tail.find(','), tail.size());
    out.who = trimmed(std::string_view(tail).substr(0, comma));
    if (comma < tail.size()) out.what = trimmed(std::string_view(tail).substr(comma + 1));
    if (letters_in(out.who).empty()) refuse_weld(text, "it does not say who accepted the weld");
    return out;
}

} // namespace beadbook
