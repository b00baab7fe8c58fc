#include "facts/log_line.hpp"

#include "facts/guessed_type.hpp"
#include "facts/log_line_hints.hpp"
#include "facts/one_unit.hpp"
#include "facts/whole_turn.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

class LineParser {
public:
    LineParser(std::string_view line, const WeldLine &weld, std::optional<Unit> unit,
               const Vocabulary &vocabulary)
        : own_(line), weld_(weld), unit_(unit), vocabulary_(vocabulary) {
        if (!valid_utf8(line)) throw InputError("the line is not UTF-8 text");
        if (line.size() > 2000) throw InputError("the line is longer than 2000 bytes");
        std::replace(own_.begin(), own_.end(), '\t', ' ');
        text_ = line = own_;
        blanks();
        if (number_at(at_)) read_number();
        const std::size_t hash = line.find('#', at_);
        check_typed_signs(line.substr(0, hash));
        if (hash == std::string_view::npos) return;
        if (number_at(hash))
            throw InputError(
                "'" + shown(line.substr(hash)) +
                    "': a digit right behind # is the number of a find, which begins its line; a "
                    "remark has a blank there",
                hash);
        text_ = line.substr(0, hash);
        out_.remark = checked_text(line.substr(hash + 1), "remark");
    }

    LogLine parse() {
        read_method();
        read_type();
        for (blanks(); at_ < text_.size(); blanks()) read_part();
        if (out_.at && out_.middle) throw InputError("a place is given twice; write 'at' or 'mid'");
        if (!unkeyed_.empty() && !out_.at && !out_.middle)
            throw InputError("'" + shown(unkeyed_) + "' could be the size or the place; write 's " +
                                 shown(unkeyed_) + "' or 'at " + shown(unkeyed_) + "'",
                             static_cast<std::size_t>(unkeyed_.data() - text_.data()));
        check_sense(out_, weld_, unit_);
        return {method_, std::move(out_), std::move(guessed_), std::move(typed_)};
    }

private:
    bool number_at(std::size_t at) const {
        return at + 1 < text_.size() && text_[at] == '#' && is_digit(text_[at + 1]);
    }

    /// `#7`, as the program prints a find.
    void read_number() {
        const std::size_t begin = at_++;
        constexpr int most = 10'000'000;
        int number = 0;
        for (; at_ < text_.size() && is_digit(text_[at_]); ++at_)
            number = std::min(number * 10 + (text_[at_] - '0'), most + 1);
        if (number < 1 || number > most || (at_ < text_.size() && !is_blank(text_[at_])))
            throw InputError("'" + shown(text_.substr(begin, at_ - begin + 1)) +
                                 "' is no number of a find; write it like #7 and a blank",
                             begin);
        out_.number = number;
    }

    /// `MT` in front of the type: a whole word that is no type itself.
    void read_method() {
        blanks();
        const std::string_view word = peek_word();
        const auto method = exam_named(word.substr(0, word.size() - (word.ends_with(':') ? 1 : 0)));
        if (!method || vocabulary_.find(word)) return;
        method_ = method;
        at_ += word.size();
    }

    static bool is_blank(char c) { return std::isspace(static_cast<unsigned char>(c)) != 0; }

    std::size_t after_blanks(std::size_t at) const {
        while (at < text_.size() && is_blank(text_[at])) ++at;
        return at;
    }

    /// Blanks, and a comma that parts what stands before it from what comes. No sign of a number is dropped.
    void blanks() {
        at_ = after_blanks(at_);
        if (at_ == text_.size() || text_[at_] != ',') return;
        const std::size_t next = after_blanks(at_ + 1);
        const bool glued = next == at_ + 1, follows = at_ > 0 && !is_blank(text_[at_ - 1]);
        if (next < text_.size()) {
            const char c = text_[next];
            const bool number = is_digit(c) || c == '.';
            if (c == ',' || (number && (glued || !follows)) || (glued && (c == '-' || c == '+')))
                throw stray_comma();
        }
        at_ = next;
    }

    InputError stray_comma() const {
        return InputError("'" + shown(text_.substr(at_, text_.find(' ', at_ + 2) - at_)) +
                              "': a comma parts what a line says, and is no decimal point; write one such as "
                              "0.1, or leave the comma out",
                          at_);
    }

    static bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

    std::string_view peek_word() const {
        std::size_t end = at_;
        while (end < text_.size() && !is_blank(text_[end]) && text_[end] != ',') ++end;
        return text_.substr(at_, end - at_);
    }

    /// The longest run of words that names a type; its first word if none does, for the message.
    void read_type() {
        blanks();
        const std::size_t begin = at_;
        if (const auto named = type_named(text_.substr(begin), vocabulary_)) {
            out_.type = named->type;
            typed_.named = text_.substr(begin, named->length);
            at_ = begin + before_its_key(text_.substr(begin), named->length);
            return;
        }
        if (const auto turn = whole_turn_said(text_.substr(begin)); !turn.empty())
            throw InputError(how_a_turn_is_written(turn, weld_, unit_), begin);
        std::size_t last = begin;
        while (last < text_.size() && text_[last] != '@' && text_[last] != '.' && !is_digit(text_[last]))
            ++last;
        const LineAround around{trimmed(text_.substr(0, begin)), text_.substr(begin), out_.remark};
        const NamedType guess =
            guessed_type(around, trimmed(text_.substr(begin, last - begin)), begin, vocabulary_);
        out_.type = guess.type;
        guessed_ = text_.substr(begin, guess.length);
        at_ = begin + before_its_key(text_.substr(begin), guess.length);
    }

    /// A key that stands at its number: l.2, d0.010.
    bool at_its_number(std::string_view word, std::string_view quick) const {
        return word.size() > quick.size() && same_word(word.substr(0, quick.size()), quick) &&
               (word[quick.size()] == '.' || is_digit(word[quick.size()]));
    }

    /// 7:00, 7 o'clock
    bool hour_here() const {
        std::size_t end = at_;
        while (end < text_.size() && is_digit(text_[end])) ++end;
        if (end == at_) return false;
        return (end + 1 < text_.size() && text_[end] == ':' && is_digit(text_[end + 1])) ||
               behind_clock_word(text_, end) != end;
    }

    void read_part() {
        const std::size_t begin = at_;
        if (hour_here()) return read_place(begin);
        if (text_[at_] == '@') {
            ++at_;
            return read_place(begin);
        }
        if (is_digit(text_[at_]) || text_[at_] == '.') return read_size(begin);
        const std::string_view word = peek_word();
        const auto takes = [&](std::string_view name) {
            if (!same_word(word, name)) return false;
            at_ += name.size();
            return true;
        };
        if (takes("at")) return read_place(begin);
        if (takes("mid")) return set_place(out_.middle, begin, "middle");
        if (takes("from")) {
            read_place(begin);
            if (!out_.end) throw InputError("'from' needs 'to', e.g. from 2 to 2.4", at_);
            return;
        }
        if (takes("across")) {
            blanks();
            out_.across_left = same_word(peek_word(), "left");
            if (out_.across_left || same_word(peek_word(), "right")) at_ += peek_word().size();
            if (out_.across) throw InputError("'across' is given twice", begin);
            out_.across = measure(Dimension::length, begin);
            check_side_behind(text_.substr(begin), at_ - begin, begin);
            return;
        }
        if (takes("side")) blanks();
        if (read_attribute()) return;
        for (const auto &key : measure_keys())
            if (takes(key.word) || takes(key.quick) ||
                (at_its_number(word, key.quick) && (at_ += key.quick.size(), true)))
                return set_measure(key.quantity, measure(info(key.quantity).dimension, begin), begin);
        if (const auto turn = whole_turn_said(text_.substr(begin)); !turn.empty())
            throw InputError(how_a_turn_is_written(turn, weld_, unit_), begin);
        const bool parted = begin > 0 && is_blank(text_[begin - 1]);
        throw InputError(why_not_understood(text_.substr(begin), word, parted, out_.type, vocabulary_),
                         begin);
    }

    bool read_attribute() {
        const std::string word = lowered(peek_word());
        for (std::size_t a = 0; a < attribute_count; ++a)
            if (const auto index = word_index(info(static_cast<Attribute>(a)), word)) {
                if (out_.words[a] != 0 && out_.words[a] != index)
                    throw InputError("both '" + info(static_cast<Attribute>(a)).words[out_.words[a] - 1u] +
                                         "' and '" + word + "'",
                                     at_);
                out_.words[a] = index;
                at_ += word.size();
                return true;
            }
        return false;
    }

    /// Where it begins, and with `to` where it ends.
    void read_place(std::size_t begin) {
        set_place(out_.at, begin, "place");
        blanks();
        const std::size_t to = at_;
        if (!same_word(peek_word(), "to")) return;
        at_ += 2;
        set_place(out_.end, to, "end");
    }

    /// A bare number is what such a find is measured by alone, unless it is called something else behind it;
    /// with an x between two numbers, length and width.
    void read_size(std::size_t begin) {
        if (angle_at(text_.substr(at_), vocabulary_[out_.type]))
            return set_measure(Quantity::angle, measure(Dimension::angle, begin), begin);
        const Typed first = measure(Dimension::length, begin);
        const std::size_t end = at_;
        const std::string_view typed = text_.substr(begin, end - begin);
        const auto called = called_behind();
        const std::size_t look = after_blanks(at_);
        if (look + 1 < text_.size() && text_[look] == 'x' && !is_letter(text_[look + 1])) {
            at_ = look + 1;
            read_second(first, typed, called, begin);
        } else if (called) {
            set_measure(*called, first, begin);
        } else {
            if (same_word(text_.substr(look, 3), "to ")) {
                at_ = look + 3;
                const std::string stretch = shown(typed) + " to " + shown(value_text(look));
                throw InputError("'" + stretch + "' lacks a word in front: write 'from " + stretch +
                                     "' if that is where it lies; of a size write the largest alone",
                                 begin);
            }
            // A fillet size is printed so, with its unit.
            const bool printed = vocabulary_[out_.type].name.ends_with(" size") && !is_digit(text_[end - 1]);
            if (!out_.measures.empty() && !printed) unkeyed_ = typed;
            const Quantity meant =
                out_.measures.empty() ? measured_alone(vocabulary_, out_.type) : Quantity::size;
            set_measure(meant, first, begin);
            depth_alone_ = meant == Quantity::depth;
        }
    }

    /// What stands behind the x.
    void read_second(const Typed &first, std::string_view typed, std::optional<Quantity> called,
                     std::size_t begin) {
        const std::size_t behind_x = at_;
        const Typed second = measure(Dimension::length, begin);
        const std::string_view other = trimmed(text_.substr(behind_x, at_ - behind_x));
        const auto other_called = called_behind();
        if (!called && !other_called) {
            const bool swapped = shorter(first, second);
            check_two(swapped ? other : typed, swapped ? typed : other, vocabulary_[out_.type],
                      own_measure(vocabulary_, out_.type), begin);
            // Two bare numbers are the two dimensions, whichever was read off first.
            set_measure(Quantity::length, std::max(first, second, shorter), begin);
            set_measure(Quantity::width, std::min(first, second, shorter), behind_x);
            return;
        }
        // What stands before a width is the length; but of a cap as well the height.
        const bool may_be_height = !called && other_called == Quantity::width &&
                                   own_measure(vocabulary_, out_.type) == OwnMeasure::height;
        if (!other_called || (!called && other_called == Quantity::length) || may_be_height)
            throw InputError("'" + shown(called ? other : typed) +
                                 "': say of both numbers what they are, such as " +
                                 (may_be_height ? "'.06 high x .25 wide'" : "'3/8 long x 1/32 deep'"),
                             called ? static_cast<std::size_t>(other.data() - text_.data()) : begin);
        set_measure(called.value_or(Quantity::length), first, begin);
        set_measure(*other_called, second, behind_x);
    }

    /// `long` of `3/8 long`.
    std::optional<Quantity> called_behind() {
        const std::size_t look = after_blanks(at_);
        const MeasureKey *key = key_behind(text_.substr(look));
        if (!key) return std::nullopt;
        at_ = look + key->behind.size();
        return key->quantity;
    }

    void set_measure(Quantity q, Typed value, std::size_t begin) {
        if (depth_alone_ && q == Quantity::depth) { // the number of `uc .3 d .01` was not it
            depth_alone_ = false;
            out_.measures.emplace(Quantity::size, out_.measures.extract(q).mapped());
        }
        if (!out_.measures.emplace(q, std::move(value)).second)
            throw InputError("the " + std::string(info(q).name) + " is given twice", begin);
    }

    Typed measure(Dimension dimension, std::size_t begin) {
        const std::string_view value = value_text(begin);
        try {
            Typed out = parse_measured(value, dimension, unit_);
            if (dimension == Dimension::length) measures_.take(value, out);
            typed_.bare = typed_.bare || (dimension == Dimension::length && is_bare_number(value));
            return out;
        } catch (const InputError &e) {
            throw InputError(e.what(), static_cast<std::size_t>(value.data() - text_.data()) + e.column);
        }
    }

    void set_place(std::optional<Typed> &place, std::size_t begin, std::string_view what) {
        if (place) throw InputError("the " + std::string(what) + " is given twice", begin);
        const std::string_view value = value_text(begin);
        try {
            place = parse_place(value, weld_, unit_);
            places_.take(value, *place);
        } catch (const InputError &e) {
            throw InputError(e.what(), static_cast<std::size_t>(value.data() - text_.data()) + e.column);
        }
    }

    /// The number that stands here with its unit or clock minutes. What is no number is taken as a word, so
    /// that the message can show it.
    std::string_view value_text(std::size_t begin) {
        at_ = after_blanks(at_);
        if (at_ < text_.size() && text_[at_] == ',') throw stray_comma();
        const std::size_t start = at_;
        if (start == text_.size())
            throw InputError("'" + shown(trimmed(text_.substr(begin))) + "' lacks its value", begin);
        std::size_t end = start;
        if (!scan_number(text_, end)) {
            end = start + peek_word().size();
        } else if (end < text_.size() && text_[end] == ':') {
            ++end;
            while (end < text_.size() && is_digit(text_[end])) ++end;
            at_ = behind_clock_word(text_, end);
            return text_.substr(start, end - start);
        } else if (scan_unit(text_, end, of_a_weld)) {
            // 1'2 is no foot and a number of its own.
            if (end < text_.size() && (is_digit(text_[end]) || text_[end] == '.'))
                end = std::min(text_.find(' ', end), text_.size());
        } else {
            const std::size_t behind = behind_clock_word(text_, end);
            if (behind == end && stuck_at(text_, end))
                end = std::min(text_.find(' ', end), text_.size());
            else
                end = behind;
        }
        at_ = end;
        return text_.substr(start, end - start);
    }

    /// What a line can give; the s of `3.2 s 0.04` is a size and no second.
    static constexpr auto of_a_weld = {Dimension::number, Dimension::length, Dimension::area,
                                       Dimension::angle, Dimension::temperature};

    std::string own_; ///< the line, with blanks for its tabs
    std::string_view text_;
    const WeldLine &weld_;
    std::optional<Unit> unit_;
    const Vocabulary &vocabulary_;
    std::size_t at_ = 0;
    std::optional<Exam> method_;
    std::string guessed_;
    TypedAs typed_;
    bool depth_alone_ = false; ///< a number without a key was taken for it
    std::string_view unkeyed_; ///< a number without a key behind other measures
    OneUnit measures_, places_;
    IndicationRecord out_;
};

} // namespace

LogLine read_log_line(std::string_view line, const WeldLine &weld, std::optional<Unit> unit,
                      const Vocabulary &vocabulary) {
    return LineParser(line, weld, unit, vocabulary).parse();
}

IndicationRecord parse_log_line(std::string_view line, const WeldLine &weld, std::optional<Unit> unit,
                                const Vocabulary &vocabulary) {
    LogLine out = read_log_line(line, weld, unit, vocabulary);
    if (out.method)
        throw InputError("'" + std::string(name_of(*out.method)) + "': the exam is known here, leave it out");
    if (!out.guessed.empty())
        throw InputError("'" + shown(out.guessed) + "' is cut short; write " +
                         vocabulary[out.found.type].name);
    return std::move(out.found);
}

} // namespace beadbook
