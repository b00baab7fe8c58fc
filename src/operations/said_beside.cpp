#include "operations/said_beside.hpp"

#include "facts/commented_find.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>
#include <span>

namespace beadbook {
namespace {

constexpr std::string_view note_rule = "note-like-a-find";

std::string told_of(const CouponState &coupon, const WhySaid &why) {
    const std::string number = "#" + std::to_string(why.number);
    if (why.kind == "exam") {
        const ExamRecord *exam = coupon.exam(why.exam);
        return (exam ? title_of(*exam) : "exam " + std::to_string(why.exam)) + ", why";
    }
    if (why.kind == "indication") return number + ", why";
    if (why.kind == "photo") return "photo " + std::to_string(why.number) + ", why";
    return "the coupon, why";
}

class WordsHeld {
public:
    WordsHeld(std::span<const IndicationRecord> logged, std::vector<Unlikely> &against)
        : logged_(logged), against_(against) {}

    /// What is said of the exam as it stands may also take back the word none.
    enum class Of { now, then };
    void hold(std::string_view rule, const std::string &what, const std::string &text, Of of = Of::now) {
        const bool all = logged_.empty() && of == Of::now && note_tells_find(text);
        const std::string told = all ? text : find_told_beside(text, logged_);
        if (told.empty()) return;
        against_.push_back(
            {std::string(rule),
             "the " + what + " '" + shown(told) + "' reads like a find, and " +
                 (logged_.empty() ? "the exam is said to have found none" : "none like it is logged") +
                 "; is it one?"});
    }

private:
    std::span<const IndicationRecord> logged_;
    std::vector<Unlikely> &against_;
};

void hold_conditions(const ExamRecord &exam, std::vector<Unlikely> &against) {
    const auto hold = [&](const std::string &what, const std::string &text) {
        if (note_tells_find(text))
            against.push_back(
                {std::string(note_rule), "the " + what + " '" + shown(text) +
                                             "' reads like a find, and no verdict goes by it; is it one?"});
    };
    hold("procedure", exam.procedure);
    for (const auto &[name, value] : exam.conditions)
        if (!condition_info(name)) hold("condition " + shown(name), value);
}

/// Each once, with what it is about.
struct Sayings {
    std::vector<std::string> all;

    bool has(const std::string &said) const { return std::find(all.begin(), all.end(), said) != all.end(); }
    void take(const std::string &about, const std::string &text) {
        std::string said = about + ": " + text;
        if (!text.empty() && !has(said)) all.push_back(std::move(said));
    }
};

void take_entries(const CouponState &coupon, Sayings &out) {
    for (const auto &remark : coupon.remarks) out.take("remark by " + remark.stamp.who, remark.text);
    for (const auto &why : coupon.whys) out.take(told_of(coupon, why), said_in_reason(why.text));
}

void take_carried_reasons(const CouponState &coupon, Sayings &out) {
    for (const auto &exam : coupon.exams)
        if (exam.finished) out.take(title_of(exam) + ", why", exam.finished->why);
    for (const auto &find : coupon.indications)
        if (find.moved_from) out.take("#" + std::to_string(find.number) + ", why", find.moved_from->why);
}

} // namespace

std::vector<std::string> said_beside(const CouponState &coupon) {
    Sayings out;
    out.take("the coupon", coupon.record.get("note"));
    for (const auto &exam : coupon.exams) out.take(title_of(exam), exam.note);
    for (const auto &find : coupon.indications) out.take("#" + std::to_string(find.number), find.remark);
    for (const auto &photo : coupon.photos)
        if (photo.withdrawn.empty()) out.take("photo " + std::to_string(photo.number), photo.remark);
    take_entries(coupon, out);
    // What came with a file has no entry of its own here.
    take_carried_reasons(coupon, out);
    return std::move(out.all);
}

std::vector<std::string> said_and_left(const CouponState &coupon) {
    Sayings out, along;
    take_entries(coupon, out);
    take_carried_reasons(coupon, along);
    std::erase_if(out.all, [&](const std::string &one) { return along.has(one); });
    return std::move(out.all);
}

std::string said_beside_words(const std::vector<std::string> &said) {
    return said.empty() ? "" : "written beside it, and judged by nobody: " + joined(said, "; ");
}

void hold_words_against_finds(const CouponState &coupon, const ExamRecord &exam, int number,
                              std::optional<int> found, const std::string &why,
                              std::vector<Unlikely> &against) {
    std::vector<IndicationRecord> logged;
    for (const auto &find : coupon.indications)
        if (find.exam == number) logged.push_back(find);
    if (found) {
        WordsHeld words(logged, against);
        words.hold(note_rule, "note", exam.note);
        words.hold(why_like_a_find, "reason", why);
        for (const auto &one : coupon.whys)
            if (one.kind == "exam" && one.exam == number)
                words.hold(why_like_a_find, "reason", said_in_reason(one.text), WordsHeld::Of::then);
    }
    hold_conditions(exam, against);
}

void hold_words_against_none(const ExamRecord &exam, std::optional<int> found,
                             std::vector<Unlikely> &against) {
    if (found == 0) {
        WordsHeld words({}, against);
        words.hold(note_rule, "note", exam.note);
        if (exam.finished) words.hold(why_like_a_find, "reason", exam.finished->why);
    }
    hold_conditions(exam, against);
}

std::vector<Unlikely> with_why(std::vector<Unlikely> found, const std::string &why,
                               const std::vector<IndicationRecord> &finds) {
    WordsHeld(finds, found).hold(why_like_a_find, "reason", why);
    return found;
}

} // namespace beadbook
