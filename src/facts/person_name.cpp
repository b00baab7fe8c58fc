#include "facts/person_name.hpp"

#include "criteria/methods.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <vector>

namespace beadbook {
namespace {

/// What people write who do not name anybody, and what stands beside it.
constexpr auto no_names = std::to_array<std::string_view>(
    {"nobody",  "none",       "unknown",  "tbd",      "tba",          "na",         "self",
     "trainee", "someone",    "somebody", "anybody",  "examiner",     "me",         "not",
     "yet",     "examined",   "examine",  "done",     "inspected",    "inspector",  "no",
     "one",     "same",       "welder",   "student",  "learner",      "teacher",    "operator",
     "name",    "technician", "the",      "a",        "an",           "his",        "her",
     "own",     "by",         "to",       "be",       "level",        "lvl",        "iv",
     "iii",     "ii",         "i",        "cwi",      "scwi",         "nde",        "ndt",
     "visual",  "penetrant",  "magnetic", "particle", "radiographic", "instructor", "shop",
     "office",  "root",       "admin",    "system",   "computer",     "test",       "administrator",
     "nn",      "xx",         "xxx",      "qc",       "qa",           "lab",        "laboratory",
     "vendor",  "contractor", "see",      "film",     "report"});

constexpr auto titles = std::to_array<std::string_view>(
    {"jr",     "sr",      "junior", "senior",  "phd",        "msc",       "bsc",      "ing",
     "dipl",   "eng",     "mr",     "mrs",     "ms",         "miss",      "mx",       "sir",
     "madam",  "dr",      "prof",   "herr",    "frau",       "master",    "mister",   "professor",
     "boss",   "chief",   "lead",   "foreman", "supervisor", "inspector", "examiner", "technician",
     "welder", "trainer", "tutor",  "trainee", "apprentice", "operator",  "himself",  "herself"});

/// One letter of UTF-8 in small letters; empty where nothing can be seen: blanks of all kinds, marks without
/// a width, and signs of ASCII.
std::string small_letter(std::string_view letter) {
    static constexpr auto unseen = std::to_array<std::string_view>(
        {"\xC2\xA0", "\xC2\xAD", "\xE2\x80", "\xE2\x81", "\xE2\xA0\x80", "\xE3\x80\x80", "\xEF\xBB\xBF"});
    const auto first = static_cast<unsigned char>(letter.front());
    if (first < 0x80) return std::isalnum(first) ? lowered(letter) : std::string();
    if (std::any_of(unseen.begin(), unseen.end(), [&](auto one) { return letter.starts_with(one); }))
        return "";
    std::string out(letter);
    // A to Z with their marks, of Latin-1.
    if (const auto second = static_cast<unsigned char>(out.back());
        out.size() == 2 && first == 0xC3 && second >= 0x80 && second <= 0x9E && second != 0x97)
        out.back() = static_cast<char>(second + 0x20);
    return out;
}

/// The words of a name, each as its letters. A point parts words as a blank does.
std::vector<std::vector<std::string>> name_words(std::string_view text) {
    std::vector<std::vector<std::string>> out(1);
    while (!text.empty()) {
        const auto first = static_cast<unsigned char>(text.front());
        const std::size_t size = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        const std::string_view letter = text.substr(0, size);
        text.remove_prefix(letter.size());
        if (std::string small = small_letter(letter); !small.empty())
            out.back().push_back(std::move(small));
        else if (!out.back().empty())
            out.emplace_back();
    }
    if (out.back().empty()) out.pop_back();
    return out;
}

bool is_no_name(const std::string &word) {
    return std::find(no_names.begin(), no_names.end(), word) != no_names.end() || exam_named(word) ||
           std::all_of(word.begin(), word.end(), is_digit);
}

/// All letters; or words of three letters and more, and the letters of the shorter ones: "J.R." is "JR".
struct PlainName {
    std::string whole;
    std::vector<std::string> words, initials;
    explicit PlainName(std::string_view name) {
        for (const auto &word : name_words(name)) {
            whole += joined(word, "");
            if (word.size() > 2)
                words.push_back(joined(word, ""));
            else
                initials.insert(initials.end(), word.begin(), word.end());
        }
        std::sort(words.begin(), words.end());
        std::sort(initials.begin(), initials.end());
    }
    friend bool operator==(const PlainName &a, const PlainName &b) {
        return a.whole == b.whole || (a.words == b.words && a.initials == b.initials);
    }
};

} // namespace

bool is_title(std::string_view word) { return std::find(titles.begin(), titles.end(), word) != titles.end(); }

bool names_somebody(std::string_view text) {
    std::string whole;
    bool all_none = true;
    std::size_t letters = 0;
    for (const auto &word : name_words(text)) {
        const std::string one = joined(word, "");
        whole += one;
        letters += word.size();
        all_none = all_none && is_no_name(one);
    }
    const bool single = letters == 1 && whole.size() == 1;
    return !whole.empty() && !single && !all_none && !is_no_name(whole);
}

bool may_be_a_name(std::string_view text) {
    std::size_t letters = 0;
    for (const auto &word : name_words(text))
        letters += static_cast<std::size_t>(std::count_if(word.begin(), word.end(), [](const auto &letter) {
            return letter.size() > 1 || !is_digit(letter.front());
        }));
    return letters > 1;
}

std::vector<std::string_view> names_in(std::string_view text) {
    std::vector<std::string_view> out;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find_first_of("()[]/;+&", begin), text.size());
        if (const auto name = trimmed(text.substr(begin, end - begin)); !name.empty()) out.push_back(name);
        begin = end + 1;
    }
    return out;
}

std::vector<std::string> person_keys(std::string_view text) {
    std::vector<std::string> out;
    for (const auto name : names_in(text)) {
        const PlainName plain(name);
        if (plain.whole.empty()) continue;
        out.push_back(plain.whole);
        // No letter is a blank or a comma.
        out.push_back(joined(plain.words, " ") + "," + joined(plain.initials, " "));
    }
    return out;
}

bool same_person(std::string_view a, std::string_view b) {
    const auto one = names_in(a), other = names_in(b);
    return std::any_of(one.begin(), one.end(), [&](std::string_view x) {
        const PlainName plain(x);
        return !plain.whole.empty() && std::any_of(other.begin(), other.end(),
                                                   [&](std::string_view y) { return plain == PlainName(y); });
    });
}

} // namespace beadbook
