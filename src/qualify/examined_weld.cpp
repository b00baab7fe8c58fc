#include "qualify/examined_weld.hpp"

#include "criteria/methods.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace beadbook {
namespace {

constexpr std::string_view wanted = "expected the day, the methods, that it was accepted, and by whom: "
                                    "2026-10-05 RT accepted by A. Field, line 4 weld 17";

[[noreturn]] void refuse_weld(const std::string &text, const std::string &why) {
    throw InputError("'" + shown(text) + "': " + why + "; " + std::string(wanted));
}

std::string lower(std::string_view word) {
    std::string out(word);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return c < 0x80 ? static_cast<char>(std::tolower(c)) : c; });
    return out;
}

/// Words of letters alone.
std::vector<std::string> plain_words_of(std::string_view text) {
    std::vector<std::string> out;
    bool begun = false;
    for (const char c : text) {
        if (!std::isalpha(static_cast<unsigned char>(c))) {
            begun = false;
            continue;
        }
        if (!begun) out.emplace_back();
        begun = true;
        out.back() += c;
    }
    for (auto &word : out) word = lower(word);
    return out;
}

/// The word by which the text says that something of the weld was not accepted; empty: none.
std::string denial_in(const std::string &text) {
    constexpr std::array<std::string_view, 4> begins{"reject", "fail", "unaccept", "inaccept"};
    constexpr std::array<std::string_view, 6> whole{"not", "never", "refused",
                                                    "nok", "none",  "unsatisfactory"};
    for (const auto &word : plain_words_of(text))
        if (std::any_of(begins.begin(), begins.end(), [&](auto b) { return word.starts_with(b); }) ||
            std::find(whole.begin(), whole.end(), word) != whole.end())
            return word;
    return "";
}

/// The examination that a word names; empty: none.
std::string exam_called(const std::string &word) {
    constexpr std::array<std::string_view, 8> mechanical{"mechanical", "bend",   "bends",   "fracture",
                                                         "macro",      "macros", "section", "sections"};
    if (const auto exam = exam_named(word)) return std::string(name_of(*exam));
    const std::string plain = lower(word);
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
    const std::size_t at = lower(rest).find(" accepted by ");
    if (at == std::string::npos) refuse_weld(text, "it does not say that the weld was accepted, and by whom");
    std::string methods = rest.substr(0, at);
    std::replace_if(
        methods.begin(), methods.end(), [](char c) { return c == ',' || c == '+'; }, ' ');
    for (const auto word : words_of(methods)) {
        if (same_word(word, "and")) continue;
        const std::string exam = exam_called(std::string(word));
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
    if (plain_words_of(out.who).empty()) refuse_weld(text, "it does not say who accepted the weld");
    return out;
}

} // namespace beadbook
