#pragma once

#include "operations/office.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// What may be said where finds are logged line by line, beside the finds themselves.
enum class LogWord : std::uint8_t {
    none,
    help,
    list,
    undo,
    correct,
    verdict,
    finish,
    nothing,
    all,
    next,
    on,
    by, ///< a method alone: the lines that follow are of its exam
    done
};

/// One such line: `undo 3`, `MT none`, `on T-8 2`.
struct LogOrder {
    LogWord word = LogWord::none; ///< none: the line is a find
    std::string
        of; ///< of `on` the coupon, of `verdict` the criteria set, of `correct` the line as it should be
    int number = 0; ///< of `undo` and `correct` the find, of `on` and `finish` the exam; 0: not said
    std::optional<Exam> method; ///< of `by`, and of `finish` and `none` on either side of it
};
/// Throws InputError: a number that is none.
LogOrder log_order(std::string_view line);
/// A refusal of lines, with how exams are finished of which one of them says that they found nothing. Such an
/// exam may have finds on record: then they are told.
Refusal with_way_to_finish(const Refusal &refusal, const CouponState &coupon, const std::string &lines);
/// A line of help for each.
std::string_view log_orders_help();

/// What the word that `begun` begins may become, with `before` in front of it on the line: types of
/// imperfection and orders first, then keys; marks after `on`, sets after `verdict`. In natural order.
std::vector<std::string> ways_on(Office &office, std::string_view before, std::string_view begun);

/// The coupon that was registered after this one and has an open exam; empty if none has.
std::string next_to_log(Office &office, const std::string &after);

} // namespace beadbook
