#include "prompt/prompt.hpp"

#include "facts/plausibility.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/finishing.hpp"
#include "operations/log_words.hpp"
#include "operations/logging.hpp"
#include "operations/moving.hpp"
#include "prompt/exam_meant.hpp"
#include "prompt/live_verdicts.hpp"
#include "prompt/not_taken.hpp"
#include "report/exam_document.hpp"
#include "terminal/command_text.hpp"
#include "terminal/line_editor.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <utility>

namespace beadbook {
namespace {

const std::string undone(undone_at_prompt), corrected(corrected_at_prompt);

/// One sitting: what was typed is stored at once, line by line.
class LogPrompt {
public:
    using Next = std::function<std::optional<std::string>(const std::string &sign)>; ///< asks for a line

    LogPrompt(Call &call, const std::string &coupon, int exam, Next next)
        : call_(call), session_(call.session()), next_(std::move(next)) {
        go_to(coupon, exam);
    }

    std::optional<std::string> next_line() {
        if (held_back_) return std::exchange(held_back_, std::nullopt);
        return next_(sign());
    }
    std::string left_open() { return still_open(call_.office(), seen_); }
    std::size_t logged() const { return logged_; }
    std::string sign() const { return coupon_ + (chosen_ ? " " + names_of(by_, ",") : "") + "> "; }

    std::vector<std::string> not_logged() { return not_taken_.left(); }

    /// False when the sitting is over.
    bool take(const std::string &line) {
        not_taken_.begin(coupon_, line, method_of(line));
        const bool goes_on = carry_out(line);
        not_taken_.done();
        return goes_on;
    }

private:
    bool carry_out(const std::string &line) {
        if (told_of_comment(line, session_.out)) return true;
        const LogOrder order = log_order(line);
        bool ask_next = false; // what the verdict asks for, where nothing that was finished asks for more
        switch (order.word) {
        case LogWord::done: return false;
        case LogWord::help: session_.out << log_orders_help(); return true;
        case LogWord::list: list(); return true;
        case LogWord::on:
            go_to(order.of, exam_gone_to(call_.office(), order));
            not_taken_.gone_on();
            return true;
        case LogWord::next: go_on(); return true;
        case LogWord::by:
            exam_ = meant(order);
            by_ = order.methods;
            chosen_ = true;
            not_taken_.gone_on();
            return true;
        case LogWord::verdict: session_.out << live_verdicts(call_, coupon_, true, order.of); return true;
        case LogWord::finish: ask_next = finish_some(meant(order)); break;
        case LogWord::nothing: ask_next = finish({meant(order)}, 0, order.why); break;
        case LogWord::all: finish_and_go_on(); return true;
        case LogWord::undo: undo(order.number); break;
        case LogWord::reopen: reopen(order); break;
        case LogWord::correct: correct(order, line); break;
        case LogWord::withdraw: withdraw(order.number, order.why); break;
        case LogWord::move: move(order); break;
        case LogWord::none: log(line); break;
        }
        session_.out << live_verdicts(call_, coupon_, ask_next);
        return true;
    }

    /// What a line did, to be undone.
    struct Deed {
        std::string coupon;
        int find = 0;              ///< that was logged; 0: exams were finished
        std::vector<int> exams;    ///< that were finished
        std::string for_good = {}; ///< what else it did, and how that is mended: a word undoes it not
    };

    void go_to(const std::string &coupon, int exam) {
        const CouponState state = call_.office(Ledger::Mode::write).coupon(coupon);
        if (exam > 0) state.needed_exam(exam);
        const auto open = state.open_exams();
        const auto of_method = [&](const ExamRecord *one) {
            return !by_.empty() && one->method == by_.front();
        };
        const auto chosen = std::find_if(open.begin(), open.end(), of_method);
        const bool by_method = exam == 0 && std::count_if(open.begin(), open.end(), of_method) == 1;
        if (by_method) exam = (*chosen)->number;
        if (exam == 0 && open.size() == 1) exam = open.front()->number;
        if (exam == 0 && open.empty()) throw none_open_to_log(state);
        coupon_ = coupon;
        if (std::find(seen_.begin(), seen_.end(), coupon) == seen_.end()) seen_.push_back(coupon);
        exam_ = exam;
        chosen_ = by_method;
        session_.out << greeting_of(call_.office(), call_.actor(), state, exam);
    }
    /// Of other methods than the sitting's nothing is said: what they found may be logged by somebody else.
    void finish_and_go_on() {
        const auto methods = chosen_ ? by_ : std::vector<Exam>();
        const bool ask_next = finish(exams_of_sitting(call_.office().coupon(coupon_), methods, exam_), {});
        const CouponState state = call_.office().coupon(coupon_);
        if (const auto open = state.open_exams(); !open.empty())
            session_.out << "  coupon " << coupon_ << " still open: exam " << named(open) << "; "
                         << ways_to_finish(state) << "\n";
        session_.out << live_verdicts(call_, coupon_, ask_next);
        const std::string next = next_to_log(call_.office(), coupon_, methods);
        if (!next.empty())
            go_to(next, 0);
        else if (!methods.empty())
            session_.out << "  no coupon behind " << coupon_ << " has an open " << names_of(methods, " or ")
                         << "\n";
    }
    int meant(const LogOrder &order) { return exam_meant(call_.office().coupon(coupon_), exam_, order); }
    void go_on() {
        const std::string next = next_to_log(call_.office(), coupon_);
        if (next.empty()) throw refused("no coupon behind " + coupon_ + " has an open exam");
        go_to(next, 0);
        not_taken_.gone_on();
    }
    /// That it found none is said by that word.
    bool finish_some(int number) {
        const CouponState state = call_.office().coupon(coupon_);
        if (const ExamRecord *exam = state.exam(number);
            exam && !exam->finished && state.finds_of(number) == 0)
            throw InputError(
                "exam " + named({exam}) + ": none was logged; type '" +
                (state.open_exams().size() > 1 ? std::string(name_of(exam->method)) + " " : std::string()) +
                "none' if none was found");
        return finish({number}, {});
    }
    /// By which method a line was found; nothing where the line and the sitting leave that open.
    std::optional<Exam> method_of(const std::string &line) {
        if (const auto said = method_begun(line)) return said;
        if (exam_ == 0) return std::nullopt;
        return call_.office().coupon(coupon_).needed_exam(exam_).method;
    }
    /// What is neither yes nor no answers nothing: it is the next line.
    bool is_meant() {
        const auto answer = next_("  yes or no: ");
        const std::string_view word = answer ? trimmed(*answer) : std::string_view();
        if (same_word(word, "yes") || same_word(word, "y")) return true;
        if (answer && !word.empty() && !same_word(word, "no") && !same_word(word, "n")) held_back_ = *answer;
        return false;
    }
    /// What `entering` makes of a line, as it is meant where that is asked.
    template <class Entering>
    auto stored(const Entering &entering, const char *otherwise = "not logged") {
        const auto store = [&](bool sure) {
            return call_.write([&](Writing &w) { return entering(w, sure); });
        };
        try {
            return store(false);
        } catch (const Unsure &e) {
            session_.out << "  " << visible(e.what()) << "\n";
            if (!is_meant()) throw InputError(otherwise);
            return store(true);
        }
    }
    /// What was typed as a find of these exams and not logged may be one.
    void ask_of_not_taken(const std::vector<int> &exams) {
        const CouponState state = call_.office().coupon(coupon_);
        for (const auto &line : not_taken_.about(state, exams)) {
            session_.out << "  '" << visible(line) << "' " << LinesNotTaken::fate(line)
                         << "; is the exam finished without it?\n";
            if (!is_meant()) throw InputError("not finished; log what was found");
        }
        not_taken_.leave_out(state, exams);
    }
    /// These are all that the exams found. True: each of them counts, as far as an entry could mend it.
    bool finish(const std::vector<int> &exams, std::optional<int> found, const std::string &remark = "") {
        ask_of_not_taken(exams);
        const auto finish_them = [&](Writing &w, bool sure) {
            Done<std::vector<ExamFinishedNow>> out;
            FinishRequest request{
                .coupon = coupon_, .found = found, .as_logged = !found, .remark = remark, .sure = sure};
            for (const int exam : exams) {
                request.exam = exam;
                auto one = finish_exam(w, request);
                out.value.push_back({coupon_, std::move(one.value)});
                add_notes(out.notes, std::move(one.notes));
            }
            return out;
        };
        const auto done = stored(finish_them, "not finished; log what was found");
        for (const auto &one : done.value) session_.out << text(document_of(one), session_.paint());
        // Of who finishes each exam of the sitting, once.
        for (const auto &note : done.notes)
            if (told_.insert(note).second) tell_notes({note});
        deeds_.push_back({coupon_, 0, exams});
        std::string next;
        for (const int exam : exams) next += next_for_exam(call_, coupon_, exam);
        session_.out << next;
        return next.empty();
    }
    void tell_notes(const std::vector<std::string> &notes) {
        for (const auto &note : notes) session_.out << "  note: " << visible(note) << "\n";
    }
    void list() {
        const CouponState state = call_.office().coupon(coupon_);
        for (const auto &i : state.indications) session_.out << find_shown(state, i) << "\n";
    }
    void undo(int number) {
        if (deeds_.empty() && number == 0)
            throw InputError(
                "nothing of this sitting is left to undo; 'withdraw N WHY' takes back an older find");
        const auto meant = [&](const Deed &one) {
            return number == 0 || (one.find == number && one.coupon == coupon_);
        };
        const auto at = std::find_if(deeds_.rbegin(), deeds_.rend(), meant);
        if (at == deeds_.rend())
            throw InputError("#" + std::to_string(number) + " was not logged in this sitting" +
                             (call_.office().coupon(coupon_).indication(number)
                                  ? "; 'withdraw " + std::to_string(number) + " WHY' takes it back"
                                  : ""));
        const Deed deed = *at;
        if (!deed.for_good.empty())
            throw InputError("the last line " + deed.for_good +
                             "; 'undo N' takes back another find of this sitting");
        const std::string of = deed.coupon == coupon_ ? "" : " of coupon " + deed.coupon;
        const CouponState before = call_.office().coupon(deed.coupon);
        const IndicationRecord *find = before.indication(deed.find);
        const std::string was = find ? ": " + visible(print_log_line(*find)) : "";
        const auto done = call_.write([&](Writing &w) {
            if (deed.find > 0) return withdraw_indication(w, deed.coupon, deed.find, undone);
            for (const int exam : deed.exams) reopen_exam(w, deed.coupon, exam, undone);
            return Done<int>{};
        });
        if (deed.find > 0) {
            session_.out << "  #" << deed.find << of << " withdrawn" << was << "\n";
            --logged_;
        }
        for (const int exam : deed.exams) session_.out << "  exam " << exam << of << " is open again\n";
        tell_notes(done.notes);
        deeds_.erase(std::next(at).base());
        if (deed.coupon != coupon_) go_to(deed.coupon, 0);
    }
    /// The lines that follow are of the exam.
    void reopen(const LogOrder &order) {
        const int number = finished_meant(call_.office().coupon(coupon_), exam_, order);
        call_.write([&](Writing &w) { return reopen_exam(w, coupon_, number, order.why); });
        exam_ = number;
        deeds_.push_back(
            {coupon_, 0, {}, "opened exam " + std::to_string(number) + " again: finish it, if it was right"});
        session_.out << "  exam " << named({call_.office().coupon(coupon_).exam(number)})
                     << " is open again\n";
    }
    /// A find that went is nothing of this sitting to undo any more.
    void forget(int number) {
        logged_ -= std::erase_if(
            deeds_, [&](const Deed &one) { return one.coupon == coupon_ && one.find == number; });
    }
    void withdraw(int number, const std::string &why) {
        const auto done =
            call_.write([&](Writing &w) { return withdraw_indication(w, coupon_, number, why); });
        forget(number);
        deeds_.push_back(
            {coupon_, 0, {}, "withdrew #" + std::to_string(number) + ": log it again, if it was right"});
        session_.out << "  #" << number << " withdrawn; it stays in the history\n";
        tell_notes(done.notes);
    }
    void move(const LogOrder &order) {
        MoveRequest request{coupon_, order.find, order.number, order.of, order.why};
        if (order.method)
            request.exam =
                exam_by(call_.office().coupon(order.of.empty() ? coupon_ : order.of), *order.method);
        const auto done = stored(
            [&](Writing &w, bool sure) {
                request.sure = sure;
                return move_indication(w, request);
            },
            "not moved");
        if (done.value.coupon != coupon_) forget(order.find);
        not_taken_.moved(coupon_, order.find);
        deeds_.push_back(
            {coupon_, 0, {}, "moved #" + std::to_string(order.find) + ": move it back, if it was right"});
        session_.out << text(document_of(done.value), session_.paint());
        tell_notes(done.notes);
    }
    /// Of what was finished a reason is asked; before that it is a slip of the sitting.
    std::string why_corrected(int number) {
        const CouponState state = call_.office().coupon(coupon_);
        if (!state.needed_exam(state.needed_indication(number).exam).finished) return corrected;
        const auto why = next_("  its exam is finished; why is it corrected? ");
        if (!why || trimmed(*why).empty()) throw InputError("not corrected; a reason is needed");
        return std::string(trimmed(*why));
    }
    void correct(const LogOrder &order, const std::string &line) {
        const int number = order.number;
        check_line(order.of, line.rfind(order.of));
        const std::string why = why_corrected(number);
        const auto done = stored([&](Writing &w, bool sure) {
            return correct_indication(w, coupon_, number, order.of, why, sure);
        });
        taken(done.value);
        deeds_.push_back(
            {coupon_, 0, {}, "corrected #" + std::to_string(number) + ": correct it again, if it was right"});
        session_.out << "  #" << number << " " << visible(print_log_line(done.value.indications.front()))
                     << "; the old line is kept\n";
        tell_notes(done.notes);
    }
    /// A line is read by itself first, for the column of a mistake.
    void check_line(const std::string &line, std::size_t column) {
        const CouponRecord record = call_.office().coupon(coupon_).record;
        try {
            read_log_line(line, record.facts().line, record.fixed_unit());
        } catch (const InputError &e) {
            throw InputError(e.what(), e.column + column);
        }
    }
    void taken(const Logged &done) {
        const CouponState state = call_.office().coupon(coupon_);
        for (const auto &find : done.indications) not_taken_.logged(state, find);
    }
    void log(const std::string &line) {
        const CouponState state = call_.office().coupon(coupon_);
        // A line may say its method, whichever was chosen.
        const auto said = method_begun(line);
        const ExamRecord *meant = state.exam(exam_);
        const bool free = exam_ == 0 || (chosen_ && said && *said != by_.front());
        if (free ? state.open_exams().empty() : meant && meant->finished)
            throw InputError(
                "the exam is finished; 'on COUPON' goes to the next, 'undo' opens it if it was finished just "
                "now, 'reopen WHY' at any time, 'done' leaves");
        check_line(line, 0);
        const Done<Logged> done = stored([&](Writing &w, bool sure) {
            return log_lines(w, {coupon_, free ? 0 : exam_, line, "line", sure});
        });
        for (const auto now = call_.office().coupon(coupon_); const auto &i : done.value.indications) {
            deeds_.push_back({coupon_, i.number, {}});
            ++logged_;
            session_.out << find_shown(now, i) << "\n";
        }
        taken(done.value);
        tell_notes(done.notes);
    }

    Call &call_;
    Session &session_;
    Next next_;
    std::optional<std::string> held_back_; ///< a line that was read as an answer, and is none
    std::string coupon_;
    std::vector<std::string> seen_; ///< coupons of this sitting, in order
    int exam_ = 0;
    std::vector<Exam> by_; ///< methods of the sitting; lines that name none are of the first
    bool chosen_ = false;  ///< the exam was chosen by them
    LinesNotTaken not_taken_;
    std::set<std::string> told_; ///< notes on finishing of this sitting
    std::vector<Deed> deeds_;    ///< of this sitting, the last one at the end
    std::size_t logged_ = 0;
};

} // namespace

void log_by_prompt(Call &call, const std::string &coupon, int exam) {
    Session &session = call.session();
    LineEditor lines(session, [&](std::string_view before, std::string_view begun) {
        return ways_on(call.office(), before, begun);
    });
    LogPrompt prompt(call, coupon, exam, [&](const std::string &sign) { return lines.next(sign); });
    while (const auto line = prompt.next_line()) {
        if (trimmed(*line).empty()) continue;
        try {
            if (!prompt.take(*line)) break;
        } catch (const InputError &e) {
            // Under the word, which stands behind the sign.
            session.out << std::string(prompt.sign().size() + e.column, ' ') << "^ " << visible(e.what())
                        << "\n";
        } catch (const Refusal &e) {
            // A busy record too: what was logged is stored, and the line can be typed again.
            session.out << "  " << visible(e.what())
                        << (e.remedies().empty() ? "" : "; at the command line: ")
                        << commands_text(e.remedies(), " or ") << "\n";
        }
    }
    session.out << "\n"
                << prompt.logged() << (prompt.logged() == 1 ? " indication" : " indications") << " logged"
                << prompt.left_open() << "\n";
    for (const auto &line : prompt.not_logged()) session.out << visible(line) << "\n";
}

} // namespace beadbook
