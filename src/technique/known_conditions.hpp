#pragma once

#include "criteria/vocabulary.hpp"
#include "language/names.hpp"
#include "measure/day.hpp"

#include <algorithm>
#include <map>
#include <vector>

namespace beadbook {

/// A technique condition that exams may record: how it is written and for which methods it matters.
struct ConditionInfo {
    enum class Kind : std::uint8_t { amount, word, day };
    std::string name;
    Kind kind = Kind::word;
    Dimension dimension = Dimension::number; ///< Kind::amount
    std::vector<std::string> words;          ///< Kind::word; empty: any text
    std::vector<Exam> methods;               ///< empty: all
    bool is_of(Exam method) const {
        return methods.empty() || std::find(methods.begin(), methods.end(), method) != methods.end();
    }
    std::string help;
    bool each_time = false; ///< read or measured on each exam, so that the last one's value says nothing
    std::vector<Exam> needs_some =
        {}; ///< methods that without any of it are none; common practice, no source
    std::string least = {}, most = {}; ///< what somebody would believe at first sight, if it is bounded
    std::string never_nought = {};     ///< why no apparatus gives none of it; empty: it may
    bool before_exam = false;          ///< Kind::day: of the last time before an exam
    bool through = false;              ///< Kind::day: the last on which something holds, told as "until"
    std::string undone_by = {},
                undone_why = {}; ///< a word by which nobody examined, unless a practice rules it
    std::string undone_beside = {},
                undone_word = {};          ///< only where another condition says so, if one is named
    std::string not_over = {};             ///< Kind::amount: another one of which it is the lower end
    std::string oldest = {};               ///< Kind::day: how long before an exam somebody would believe it
    std::vector<std::string> of_tube = {}; ///< words that only a tube makes possible
};
const std::vector<ConditionInfo> &condition_infos();
/// Null for a name of people's own.
const ConditionInfo *condition_info(std::string_view name);

/// A condition's value, read.
struct ConditionValue {
    ConditionInfo::Kind kind = ConditionInfo::Kind::word;
    std::string text; ///< as typed
    Exact amount;     ///< in the base unit of its dimension
    Day day;
};

/// Why nobody would believe the value of a known condition at first sight ("dwell 10 h: ..."); empty if it is
/// believable. Common practice, no source; no exam is judged by it.
std::string unbelievable(const ConditionInfo &info, const std::string &text);
/// The same of a word beside the coupon's form (empty: not said), and of a day beside that of the exam.
std::string unbelievable_of_form(const ConditionInfo &info, const std::string &text, const std::string &form);
std::string unbelievably_old(const ConditionInfo &info, const std::string &text, Day examined);

/// Why the exam was none by one of its conditions, if no practice rules that; empty if it may have been one.
std::string undone(const ConditionInfo &info, const std::map<std::string, std::string> &conditions);
/// How two of them contradict each other, whatever a practice says: the lower end of a range above its upper
/// one. Empty if they agree. Throws InputError.
std::string contradicted(const ConditionInfo &info, const std::map<std::string, std::string> &conditions);

/// Why the value of a known condition cannot be: a nought that no apparatus gives, or a word for none, by
/// which a practice's limit would hold as if it had been read; empty if it can be. Common practice, no
/// source.
std::string impossible(const ConditionInfo &info, const ConditionValue &value);

/// What a practice may speak of: the known conditions, and of the coupon joint, form, magnetic, thickness and
/// diameter. Slots count each kind of name on its own.
const Names &practice_names();

/// The value as a person is told it: "until 2028-05-01" of a certificate.
std::string told_value(const std::string &name, const std::string &value);

/// Reads what was written for a known condition. Throws InputError: not of its kind, not one of its words.
ConditionValue read_condition_value(const ConditionInfo &info, const std::string &text);

} // namespace beadbook
