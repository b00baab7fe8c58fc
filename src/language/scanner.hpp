#pragma once

#include "measure/parse.hpp"

#include <string>
#include <string_view>

namespace beadbook {

/// A place in a text that is being read, and what may stand there. Throws InputError with the column.
class Scanner {
public:
    /// `what` is read, for messages: "formula", "condition".
    Scanner(const std::string &text, std::string_view what);

    [[noreturn]] void fail(const std::string &message) const { fail_at(at_, message); }
    /// What people usually mean by what stands there is told beside the message.
    [[noreturn]] void fail_at(std::size_t at, const std::string &message) const;

    std::size_t at() const { return at_; }
    void go_to(std::size_t at) { at_ = at; }
    /// Past the blanks; the place after them.
    std::size_t blanks();
    bool ended();
    void expect_end();
    /// The rest of the text.
    std::string_view rest() const { return std::string_view(text_).substr(at_); }
    /// What was read since `begin`, without blanks at its ends.
    std::string since(std::size_t begin) const;

    bool symbol(char c);
    /// Takes the words if they stand here whole.
    bool keyword(std::string_view words);
    /// Takes the words if blanks or the end follow them.
    bool entry(std::string_view words);
    /// A name of letters, digits and dashes.
    std::string word();
    /// The word that begins at a place, or its one character, or "the end": for messages.
    std::string found_at(std::size_t begin) const;
    std::string word_at(std::size_t begin) const;
    /// A number with its sign, if one stands here. Advances.
    std::optional<Exact> number();
    std::optional<UnitWord> unit() { return scan_unit(text_, at_); }

private:
    std::string hint_at(std::size_t at) const;

    const std::string &text_;
    std::string_view what_;
    std::size_t at_ = 0;
};

} // namespace beadbook
