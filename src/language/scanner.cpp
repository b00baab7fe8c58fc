#include "language/scanner.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }
bool wordy(char c) { return letter(c) || (c >= '0' && c <= '9') || c == '-'; }
bool blank(char c) { return c == ' ' || c == '\n'; }

} // namespace

Scanner::Scanner(const std::string &text, std::string_view what) : text_(text), what_(what) {
    if (text.size() > 2000) throw InputError("a " + std::string(what) + " of more than 2000 characters");
}

void Scanner::fail_at(std::size_t at, const std::string &message) const {
    throw InputError(message + hint_at(at), at);
}

/// Signs and habits of writing that mean something else here or nothing.
std::string Scanner::hint_at(std::size_t at) const {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 19> habits{
        {{"\u2264", "'at most'"},
         {"<=", "'at most'"},
         {"<", "'under'"},
         {"\u2265", "'at least'"},
         {">=", "'at least'"},
         {">", "'over'"},
         {"=", "'is' for a word, 'from' and 'to' for a number"},
         {"min(", "'lesser of T and 1 in'"},
         {"max(", "'greater of T and 1 in'"},
         {"between", "'from ... to ...'"},
         {"\u00bd", "'1/2'"},
         {"\u00bc", "'1/4'"},
         {"\u00be", "'3/4'"},
         {"\u215b", "'1/8'"},
         {"\u00d7", "'x'"},
         {"\u00b7", "'x'"},
         {"\u2212", "'-'"},
         {"\u2013", "'-'"},
         {"of ", "'x', as in 10 % x T"}}};
    const std::string_view here = std::string_view(text_).substr(std::min(at, text_.size()));
    const auto digit = [&](std::size_t i) { return i < text_.size() && text_[i] >= '0' && text_[i] <= '9'; };
    const bool after_digit = at > 0 && digit(at - 1);
    if (after_digit && here.starts_with(',') && digit(at + 1)) return "; write a decimal with a point";
    if (after_digit && !here.empty() && letter(here.front()) && !here.starts_with("of "))
        return "; write 'x' between a number and a name, as in 2 x T";
    for (const auto &[habit, instead] : habits) {
        const std::string_view from = trimmed(here);
        if (from.starts_with(habit)) return "; write " + std::string(instead);
    }
    return "";
}

std::size_t Scanner::blanks() {
    while (at_ < text_.size() && blank(text_[at_])) ++at_;
    return at_;
}

bool Scanner::ended() { return blanks() == text_.size(); }

void Scanner::expect_end() {
    if (ended()) return;
    // `0.06 inc`: what stands right behind a number was meant as its unit.
    const std::string word = word_at(blanks());
    const std::size_t before = text_.find_last_not_of(' ', at_ == 0 ? 0 : at_ - 1);
    const bool behind_number = before != std::string::npos && before < at_ && text_[before] >= '0' &&
                               text_[before] <= '9' && !word.empty() && word.front() >= 'a' &&
                               word.front() <= 'z';
    fail("found '" + shown(rest()) + "' where the " + std::string(what_) + " should end" +
         (behind_number ? "; '" + shown(word) + "' is no unit" : ""));
}

std::string Scanner::since(std::size_t begin) const {
    return std::string(trimmed(std::string_view(text_).substr(begin, at_ - begin)));
}

bool Scanner::symbol(char c) {
    blanks();
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
}

bool Scanner::keyword(std::string_view words) {
    blanks();
    if (rest().substr(0, words.size()) != words) return false;
    const std::size_t end = at_ + words.size();
    if (end < text_.size() && wordy(text_[end])) return false;
    at_ = end;
    return true;
}

bool Scanner::entry(std::string_view words) {
    blanks();
    if (rest().substr(0, words.size()) != words) return false;
    const std::size_t end = at_ + words.size();
    if (end < text_.size() && !blank(text_[end])) return false;
    at_ = end;
    return true;
}

std::string Scanner::word() {
    const std::size_t begin = blanks();
    while (at_ < text_.size() && wordy(text_[at_])) ++at_;
    return text_.substr(begin, at_ - begin);
}

std::string Scanner::word_at(std::size_t begin) const {
    std::size_t end = begin;
    while (end < text_.size() && wordy(text_[end])) ++end;
    if (end == begin && end < text_.size()) {
        // One sign, whole: it may be of several bytes.
        ++end;
        while (end < text_.size() && (static_cast<unsigned char>(text_[end]) & 0xC0u) == 0x80u) ++end;
    }
    return text_.substr(begin, end - begin);
}

std::string Scanner::found_at(std::size_t begin) const {
    return begin < text_.size() ? "'" + shown(word_at(begin)) + "'" : "the end";
}

std::optional<Exact> Scanner::number() {
    const std::size_t begin = blanks();
    const bool below_zero = begin < text_.size() && text_[begin] == '-';
    if (below_zero) ++at_;
    const auto out = scan_number(text_, at_);
    if (!out) at_ = begin;
    return out && below_zero ? *out * Exact(-1) : out;
}

} // namespace beadbook
