#pragma once

#include "facts/indication_record.hpp"

namespace beadbook {

/// How a line was typed, where that is asked about and not kept.
struct TypedAs {
    bool bare = false;      ///< a length is a number alone, without its unit
    std::string named = {}; ///< the words that name the type; empty if it was guessed
};

/// One short line to one indication, as a technician types it:
///
///     pore 0.045 @ 3.2              type, size, where it begins
///     slag .25x.05 @ 4-1/8          length x width; refused of what is measured by its depth or height
///     undercut l 3/8 d 0.010 at 1-1/2 face smooth
///     lack of fusion from 2 to 2.4 # side wall
///     crack 3/8 long 1/32 deep      what a number is called behind it
///     ri 1.5 mm at 3:30             quick name; clock on a girth weld
///
///     MT crack 0.2 at 3             with the method that found it
///     #7 crack 0.2 at 3             as the program prints it: find 7
///
/// The type may be cut short (cra) where that can mean only one. Keys may stand at their number (l.2), and an
/// hour alone (7:00, 7 o'clock) is the place; with `to` behind it, where it begins and ends.
///
/// Keys: l length, w width, d depth, h height, s size, angle, area; at (or @), from .. to, mid, across
/// [left]; face, root, smooth, sharp; # remark. Bare numbers take the coupon's unit; if nothing fixes it they
/// are refused. A digit right behind a # is a find's number and never begins a remark.
struct LogLine {
    std::optional<Exam> method; ///< if the line names it
    IndicationRecord found;     ///< with its number, if the line gives one
    std::string guessed = {};   ///< the first letters that were taken as the type; empty if it was named
    TypedAs typed = {};
};
/// Throws InputError with the column of the mistake.
LogLine read_log_line(std::string_view line, const WeldLine &weld, std::optional<Unit> unit,
                      const Vocabulary &vocabulary = Vocabulary::shipped());
/// The same where a method has no place. Throws InputError if the line names one.
IndicationRecord parse_log_line(std::string_view line, const WeldLine &weld, std::optional<Unit> unit,
                                const Vocabulary &vocabulary = Vocabulary::shipped());

/// Whether a line of a file is a comment or empty: nothing, or a # that no digit follows.
bool is_comment(std::string_view line);
/// The text without the byte order mark that some editors put in front of a file.
std::string_view without_mark(std::string_view text);

/// The same indication as such a line, for reading back and editing.
std::string print_log_line(const IndicationRecord &indication,
                           const Vocabulary &vocabulary = Vocabulary::shipped());

} // namespace beadbook
