#include "prompt/not_taken.hpp"

#include "facts/commented_find.hpp"
#include "facts/line_gist.hpp"
#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/log_words.hpp"
#include "operations/marks.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The number of a find, as it was meant: with letters that look like figures.
std::string number_meant(std::string_view word) {
    std::string out = lowered(word.starts_with('#') ? word.substr(1) : word);
    for (char &c : out) c = c == 'o' ? '0' : c == 'l' || c == 'i' ? '1' : c;
    return out;
}

} // namespace

std::optional<LinesNotTaken::Line> LinesNotTaken::read(const std::string &coupon, const std::string &line,
                                                       std::optional<Exam> by) {
    Line out{Kind::find, coupon, std::string(trimmed(line)), by, {}, {}};
    const auto words = words_of(out.line);
    switch (order_begun(line)) {
    case LogWord::none: return slip_of_log_word(line) ? std::nullopt : std::optional(std::move(out));
    case LogWord::nothing:
        return out.line.find('#') == out.line.npos ? std::nullopt : std::optional(std::move(out));
    case LogWord::correct: out.by.reset(); return out;
    case LogWord::move:
        out.kind = Kind::move;
        for (std::size_t i = 2; i + 1 < words.size() && out.of.empty(); ++i)
            if (same_word(words[i], "to")) out.of = words[i + 1];
        return out;
    case LogWord::on:
        if (words.size() > 1) out.of = words[1];
        [[fallthrough]];
    case LogWord::next:
    case LogWord::by: out.kind = Kind::way; return out;
    default: return std::nullopt;
    }
}

bool told_of_comment(const std::string &line, std::ostream &out) {
    if (!is_comment(line)) return false;
    if (const std::string why = why_no_comment(line); !why.empty()) throw InputError(why, 0);
    out << "  a comment, which is kept nowhere; a remark stands behind a find or behind none: none # WHAT\n";
    return true;
}

void LinesNotTaken::keep_begun() {
    if (!begun_) return;
    // Typed once more it is the same one.
    const bool again = std::any_of(lines_.begin(), lines_.end(), [&](const Line &one) {
        return one.coupon == begun_->coupon && one.line == begun_->line;
    });
    if (!again) lines_.push_back(std::move(*begun_));
    begun_.reset();
}

void LinesNotTaken::begin(const std::string &coupon, const std::string &line, std::optional<Exam> by) {
    keep_begun();
    begun_ = read(coupon, line, by);
}

void LinesNotTaken::done() { begun_.reset(); }

bool LinesNotTaken::bears(const Line &one, const CouponState &coupon, const std::vector<int> &exams) {
    const std::string &mark = coupon.record.id;
    if (one.kind != Kind::find)
        return !one.left_out.contains(mark) &&
               (one.left_out.empty() || one.coupon == mark || seen_alike(one.of, mark));
    if (one.coupon != mark) return false;
    if (!one.by) return true;
    if (std::any_of(exams.begin(), exams.end(),
                    [&](int exam) { return coupon.needed_exam(exam).method == *one.by; }))
        return true;
    // Of what is open it is asked when that is finished.
    const auto open = coupon.open_exams();
    return std::none_of(open.begin(), open.end(),
                        [&](const ExamRecord *exam) { return exam->method == *one.by; });
}

std::vector<std::string> LinesNotTaken::about(const CouponState &coupon,
                                              const std::vector<int> &exams) const {
    std::vector<std::string> out;
    for (const auto &one : lines_)
        if (bears(one, coupon, exams)) out.push_back(one.line);
    return out;
}

void LinesNotTaken::leave_out(const CouponState &coupon, const std::vector<int> &exams) {
    for (auto &one : lines_)
        if (bears(one, coupon, exams)) one.left_out.insert(coupon.record.id);
    std::erase_if(lines_, [](const Line &one) { return one.kind == Kind::find && !one.left_out.empty(); });
}

void LinesNotTaken::logged(const CouponState &coupon, const IndicationRecord &find) {
    const CouponRecord &record = coupon.record;
    const Exam method = coupon.needed_exam(find.exam).method;
    const auto line = record.facts().line;
    const auto told = std::find_if(lines_.rbegin(), lines_.rend(), [&](const Line &one) {
        return one.kind == Kind::find && one.coupon == record.id && (!one.by || *one.by == method) &&
               may_tell(one.line, find, line, record.fixed_unit());
    });
    if (told != lines_.rend()) lines_.erase(std::next(told).base());
    for (auto &one : lines_) one.followed = one.followed || one.coupon == record.id;
}

void LinesNotTaken::moved(const std::string &coupon, int find) {
    const auto told = std::find_if(lines_.rbegin(), lines_.rend(), [&](const Line &one) {
        const auto words = words_of(one.line);
        return one.kind == Kind::move && one.coupon == coupon && words.size() > 1 &&
               number_meant(words[1]) == std::to_string(find);
    });
    if (told != lines_.rend()) lines_.erase(std::next(told).base());
}

void LinesNotTaken::gone_on() {
    std::erase_if(lines_, [](const Line &one) { return one.kind == Kind::way && !one.followed; });
}

std::vector<std::string> LinesNotTaken::left() {
    keep_begun();
    std::vector<std::string> out;
    for (const auto &one : lines_)
        if (one.left_out.empty() && (one.kind != Kind::way || one.followed))
            out.push_back("'" + one.line + "' of coupon " + one.coupon + " " + fate(one.line));
    return out;
}

std::string LinesNotTaken::fate(const std::string &line) {
    return order_begun(line) == LogWord::none ? "was not logged" : "was not taken";
}

} // namespace beadbook
