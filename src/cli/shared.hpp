#pragma once

#include "cli/command.hpp"
#include "criteria/load.hpp"
#include "qualify/work.hpp"
#include "report/sentence.hpp"

namespace beadbook {

/// --book, else BEADBOOK_BOOK, else beadbook/book.db in the user's data folder.
std::string book_path(const Args &args, const Session &session);
Book open_book(const Args &args, const Session &session, Ledger::Mode mode);

/// Who acts: --by, else BEADBOOK_USER, else the login name.
Stamp stamp_of(const Args &args, const Session &session);

Option by_option();
Option json_option();
Option why_option();

/// One option for each field of a coupon, and taking what was given.
std::vector<Option> coupon_field_options();
void take_coupon_fields(CouponRecord &coupon, const Args &args);

/// A day given by an option, else today. Throws InputError.
Day day_of(const Args &args, const Session &session, const std::string &option);

/// A practice for an examination: shipped, or a file. Throws DataError with every mistake of the file.
std::shared_ptr<const Practice> open_practice(const std::string &name);

/// Rules for welders: a shipped set by name, or a file. Throws DataError with every mistake of the file.
std::shared_ptr<const RangeRules> open_range_rules(const std::string &name);
/// Those of --rules. Throws UsageError without it.
std::shared_ptr<const RangeRules> needed_rules(const Args &args);

/// A file of the shop's work, or "-"; `rules` stands in for the rules that it names, if not empty. Throws
/// DataError with every mistake of the file.
Work open_work(const std::string &path, const std::string &rules, Session &session);

/// A whole file that is UTF-8 text of at most 64 MiB. Throws DataError.
std::string read_file(const std::string &path);

/// A whole file, or standard input for "-". Throws DataError as read_file does.
std::string read_input(const std::string &path, Session &session);

/// A shipped set by name, or a file with a slash or .yaml in its name. Throws DataError with every mistake of
/// the file; warnings go to the session's error stream only in 'criteria check'.
std::shared_ptr<const CriteriaSet> open_criteria(const std::string &name);
bool criteria_is_file(const std::string &name);

/// Sets by name, each read once however many coupons name it.
class CriteriaShelf {
public:
    std::shared_ptr<const CriteriaSet> take(const std::string &name);
    /// The set a coupon is judged by: --criteria, else the coupon's own.
    std::shared_ptr<const CriteriaSet> of(const Args &args, const CouponState &coupon);

private:
    std::map<std::string, std::shared_ptr<const CriteriaSet>> sets_;
};

/// --class, else the coupon's; nothing if neither. Throws DataError for a class the set lacks.
std::optional<std::size_t> class_of(const Args &args, const CouponState &coupon, const CriteriaSet &set);

/// A coupon's facts in the form the judge takes; keeps them alive beside the judgement.
struct Judged {
    std::shared_ptr<const CriteriaSet> set;
    Coupon coupon;
    std::vector<ExamDone> exams;
    std::vector<Indication> indications;
    Unit unit = Unit::inch;
    Judgement judgement;

    Case view() const { return {*set, coupon, exams, indications, unit}; }
};
Judged judge_coupon(const CouponState &state, std::shared_ptr<const CriteriaSet> set);

/// The exit code that tells a verdict. Without a class sought: accepted if it makes any class at all, else
/// cannot say if any class is open, else rejected.
ExitCode code_of(const Judgement &judgement, std::optional<std::size_t> class_index);

/// A whole number from 1 in a command's words. Throws UsageError.
int whole_number(const std::string &text, std::string_view what);

} // namespace beadbook
