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
    reopen,
    correct,
    withdraw,
    move,
    verdict,
    finish,
    nothing,
    all,
    next,
    on,
    by, ///< methods alone: the lines that follow are of the first one's exam
    done
};

/// One such line: `undo 3`, `MT none`, `on T-8 2`, `reopen MT one more find`.
struct LogOrder {
    LogWord word = LogWord::none; ///< none: the line is a find
    /// Of `on` and `move` the coupon, of `verdict` the criteria set, of `correct` the line as it should be.
    std::string of;
    int number = 0; ///< of `undo`, `correct` and `withdraw` the find, of others the exam; 0: not said
    std::optional<Exam>
        method; ///< of `finish` and `none` on either side of it, of `by`, `on`, `move` and `reopen`
    std::vector<Exam> methods{}; ///< of `by` all of them
    int find = 0;                ///< of `move`
    std::string why{};           ///< of `withdraw`, `move` and `reopen`; of `none` the remark behind it
};
/// Throws InputError: a number that is none, a remark that may not stand behind `none`.
LogOrder log_order(std::string_view line);
/// The word that a line begins with, whether the rest of it is understood or not; none: it reads as a find.
LogWord order_begun(std::string_view line);
/// Whether a line is a slip of one of the words, alone or with a number, and can hide no find: `udno`.
bool slip_of_log_word(std::string_view line);
/// The method that the first line of a text begins with.
std::optional<Exam> method_begun(std::string_view text);
/// Refuses lines before they are read: the exam of that number is finished, or none is open. `method` is that
/// of the first line. Throws Refusal.
void check_one_to_log(const CouponState &coupon, int number, const std::string &who,
                      std::optional<Exam> method);
/// A refusal of lines, with how exams are finished of which one of them says that they found nothing. Such an
/// exam may have finds on record: then they are told.
Refusal with_way_to_finish(const Refusal &refusal, const CouponState &coupon, const std::string &lines);
/// Refuses lines that tell a find of an exam and that it found none. `name` is of their file, if they are
/// one.
void check_none_alone(const CouponState &coupon, const std::vector<int> &none,
                      const std::vector<IndicationRecord> &found, const std::string &name);
/// A line of help for each.
std::string_view log_orders_help();

/// What the word that `begun` begins may become, with `before` in front of it on the line: types of
/// imperfection and orders first, then keys; marks after `on`, sets after `verdict`. In natural order.
std::vector<std::string> ways_on(Office &office, std::string_view before, std::string_view begun);

/// The coupon that was registered after this one and has an open exam, by one of the methods if any are
/// named; empty if none has.
std::string next_to_log(Office &office, const std::string &after, const std::vector<Exam> &methods = {});

} // namespace beadbook
