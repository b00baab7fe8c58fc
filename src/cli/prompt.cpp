#include "cli/prompt.hpp"

#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/finishing.hpp"
#include "operations/judging.hpp"
#include "operations/logging.hpp"
#include "report/exam_document.hpp"
#include "report/judgement_document.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

std::string live_verdicts(Call &call, const std::string &coupon) {
    Office &office = call.office();
    try {
        return text(Document{}.line(Words("  ") +
                                    verdicts_in_a_line(judge_coupon(office, office.coupon(coupon)), " | ")),
                    call.session().paint());
    } catch (const Refusal &e) {
        return std::string("  (") + visible(e.what()) + ")\n";
    }
}

/// One sitting: what was typed is stored at once, line by line.
class LogPrompt {
public:
    LogPrompt(Call &call, std::string coupon, int exam)
        : call_(call), coupon_(std::move(coupon)), exam_(exam), session_(call.session()) {}

    std::size_t logged() const { return mine_.size(); }

    void take(const std::string &line) {
        const std::string_view word = trimmed(line);
        if (word == "list") return list();
        if (word == "undo")
            undo();
        else
            log(line);
        session_.out << live_verdicts(call_, coupon_);
    }

    /// These are all that the exam found.
    void finish() {
        const FinishRequest all{coupon_, exam_, {}, true};
        const auto done = call_.write([&](Writing &w) { return finish_exam(w, all); });
        session_.out << text(document_of(ExamFinishedNow{coupon_, done.value}), session_.paint());
    }

private:
    void list() {
        for (const auto &i : call_.office().coupon(coupon_).indications)
            session_.out << "  #" << i.number << " " << visible(print_log_line(i)) << "\n";
    }
    void undo() {
        if (mine_.empty()) throw InputError("nothing of this sitting is left to undo");
        call_.write([&](Writing &w) {
            withdraw_indication(w, coupon_, mine_.back(), "undone at the prompt");
            return 0;
        });
        session_.out << "  #" << mine_.back() << " withdrawn\n";
        mine_.pop_back();
    }
    void log(const std::string &line) {
        const CouponRecord record = call_.office().coupon(coupon_).record;
        // Read by itself first, for the column of a mistake.
        read_log_line(line, record.facts().line, record.fixed_unit());
        LogRequest request{coupon_, exam_, line, "line"};
        const auto store = [&] { return call_.write([&](Writing &w) { return log_lines(w, request); }); };
        Done<Logged> done;
        try {
            done = store();
        } catch (const Unsure &e) {
            session_.out << "  " << visible(e.what()) << "\n  yes or no: " << std::flush;
            std::string answer;
            std::getline(session_.in, answer);
            const std::string_view word = trimmed(answer);
            if (word != "yes" && word != "y") throw InputError("not logged");
            request.sure = true;
            done = store();
        }
        for (const auto &i : done.value.indications) {
            mine_.push_back(i.number);
            session_.out << "  #" << i.number << " " << visible(print_log_line(i)) << "\n";
        }
        for (const auto &note : done.notes) session_.out << "  note: " << visible(note) << "\n";
    }

    Call &call_;
    std::string coupon_;
    int exam_;
    Session &session_;
    std::vector<int> mine_;
};

} // namespace

void ask_conditions(Call &call, ExamRequest &request) {
    std::istream &in = call.session().in;
    std::ostream &out = call.json() ? call.session().err : call.session().out;
    out << "conditions"
        << (request.practice.empty() ? "" : " by " + call.catalogue().practice(request.practice)->title)
        << "; Enter leaves one out\n";
    std::set<std::string> skipped;
    for (;;) {
        const auto wanted = conditions_to_ask(call.office(), request);
        const auto next = std::find_if(wanted.begin(), wanted.end(),
                                       [&](const auto &name) { return !skipped.contains(name); });
        if (next == wanted.end()) return;
        const ConditionInfo &info = *condition_info(*next);
        out << info.name << " (" << info.help << (info.words.empty() ? "" : ": " + listed(info.words, "or"))
            << "): " << std::flush;
        std::string answer;
        if (!std::getline(in, answer)) return;
        if (trimmed(answer).empty()) {
            skipped.insert(info.name);
            continue;
        }
        try {
            ExamRecord trial;
            add_condition(trial, info.name + "=" + answer);
            request.conditions.push_back(info.name + "=" + answer);
        } catch (const DataError &e) {
            out << "  " << visible(e.what()) << "\n";
        }
    }
}

void log_by_prompt(Call &call, const std::string &coupon, int exam) {
    Session &session = call.session();
    const CouponState state = call.office(Ledger::Mode::write).coupon(coupon);
    if (exam == 0 && state.open_exams().size() == 1) exam = state.open_exams().front()->number;
    session.out << "coupon " << coupon << ", "
                << (exam > 0 ? "exam " + named({state.exam(exam)})
                             : "open: " + named(state.open_exams()) + ", a line begins with its method")
                << "; one indication a line, e.g. 'gas pore 0.045 at 3.2'; also: list, undo, finish (these "
                   "are all), done\n";
    LogPrompt prompt(call, coupon, exam);
    for (std::string line; session.out << "> " << std::flush, std::getline(session.in, line);) {
        const std::string_view word = trimmed(line);
        if (word == "done" || word == "quit") break;
        if (word.empty()) continue;
        try {
            if (word == "finish") {
                prompt.finish();
                break;
            }
            prompt.take(line);
        } catch (const InputError &e) {
            session.out << "  " << std::string(e.column, ' ') << "^ " << visible(e.what()) << "\n";
        } catch (const Refusal &e) {
            // A busy record too: what was logged is stored, and the line can be typed again.
            session.out << "  " << visible(e.what()) << "\n";
        }
    }
    session.out << "\n"
                << prompt.logged() << (prompt.logged() == 1 ? " indication" : " indications") << " logged\n";
}

} // namespace beadbook
