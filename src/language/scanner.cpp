#include "language/scanner.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }
bool wordy(char c) { return letter(c) || (c >= '0' && c <= '9') || c == '-'; }
bool blank(char c) { return c == ' ' || c == '\n'; }

} // namespace

Scanner::Scanner(const std::string &text, std::string_view what) : text_(text), what_(what) {
    if (text.size() > 2000) throw InputError("a " + std::string(what) + " of more than 2000 characters");
}

std::size_t Scanner::blanks() {
    while (at_ < text_.size() && blank(text_[at_])) ++at_;
    return at_;
}

bool Scanner::ended() { return blanks() == text_.size(); }

void Scanner::expect_end() {
    if (!ended()) fail("found '" + shown(rest()) + "' where the " + std::string(what_) + " should end");
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
    return text_.substr(begin, std::max<std::size_t>(end - begin, begin < text_.size() ? 1 : 0));
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
