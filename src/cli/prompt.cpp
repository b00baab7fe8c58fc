#include "cli/prompt.hpp"

#include "cli/line_editor.hpp"
#include "criteria/vocabulary.hpp"
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

/// The verdict of every class, and of the one that is sought the first thing that keeps it open.
std::string live_verdicts(Call &call, const std::string &coupon) {
    Office &office = call.office();
    try {
        const Judged judged = judge_coupon(office, office.coupon(coupon));
        Document doc;
        doc.line(Words("  ") + verdicts_in_a_line(judged, " | "));
        const std::size_t k = judged.sought.value_or(judged.judgement.classes.size() - 1);
        const ClassJudgement &one = judged.judgement.classes[k];
        if (one.verdict != Verdict::accept && !one.findings.empty())
            doc.line(Words("  " + judged.set->classes[k].id + ": " +
                               sentence(case_of(judged), k, one.findings.front()),
                           Tone::quiet));
        return text(doc, call.session().paint());
    } catch (const Refusal &e) {
        return std::string("  (") + visible(e.what()) + ")\n";
    }
}

constexpr const char *prompt_help =
    "  a line is one find: type, sizes, place: gas pore 0.045 at 3.2 | undercut l 3/8 d 0.010 at 4:00 root\n"
    "  list          what is on record of this coupon\n"
    "  undo [N]      take back the last find of this sitting, or its find N\n"
    "  verdict       every class as it stands\n"
    "  finish        these are all that the exam found\n"
    "  none          the exam found nothing\n"
    "  on COUPON [N] go to another coupon, and its exam N\n"
    "  done          leave; the exam stays open (also Ctrl-D)\n";

/// One sitting: what was typed is stored at once, line by line.
class LogPrompt {
public:
    LogPrompt(Call &call, const std::string &coupon, int exam) : call_(call), session_(call.session()) {
        go_to(coupon, exam);
    }

    std::size_t logged() const { return logged_; }
    std::string sign() const { return coupon_ + "> "; }

    /// False when the sitting is over.
    bool take(const std::string &line) {
        const auto words = words_of(line);
        const std::string_view first = words.front();
        const auto alone = [&](std::string_view word) { return words.size() == 1 && first == word; };
        if (alone("done") || alone("quit")) return false;
        if (alone("help")) {
            session_.out << prompt_help;
        } else if (alone("list")) {
            list();
        } else if (alone("finish") || alone("none")) {
            finish(first == "none");
        } else if (first == "on" && words.size() > 1 && words.size() < 4) {
            go_to(std::string(words[1]), words.size() == 3 ? whole_number(std::string(words[2]), "exam") : 0);
        } else if (alone("verdict")) {
            session_.out << live_verdicts(call_, coupon_);
        } else {
            if (first == "undo" && words.size() < 3)
                undo(words.size() == 2 ? whole_number(std::string(words[1]), "find") : 0);
            else
                log(line);
            session_.out << live_verdicts(call_, coupon_);
        }
        return true;
    }

private:
    void go_to(const std::string &coupon, int exam) {
        const CouponState state = call_.office(Ledger::Mode::write).coupon(coupon);
        if (exam > 0) state.needed_exam(exam);
        if (exam == 0 && state.open_exams().size() == 1) exam = state.open_exams().front()->number;
        if (exam == 0 && state.open_exams().empty())
            throw refused("no exam of coupon " + coupon + " is open").mend({"exam", {coupon}, {}});
        coupon_ = coupon;
        exam_ = exam;
        over_ = false;
        mine_.clear();
        session_.out
            << "coupon " << coupon << ", "
            << (exam > 0 ? "exam " + named({state.exam(exam)})
                         : "open: " + named(state.open_exams()) + ", a line begins with its method")
            << "; one indication a line, e.g. 'gas pore 0.045 at 3.2'; also: help, list, undo, finish "
               "(these are all), none, on COUPON, done\n";
    }
    /// These are all that the exam found.
    void finish(bool none) {
        FinishRequest all{coupon_, exam_, {}, !none};
        if (none) all.found = 0;
        const auto done = call_.write([&](Writing &w) { return finish_exam(w, all); });
        session_.out << text(document_of(ExamFinishedNow{coupon_, done.value}), session_.paint())
                     << live_verdicts(call_, coupon_);
        over_ = true;
        mine_.clear();
    }
    void list() {
        for (const auto &i : call_.office().coupon(coupon_).indications)
            session_.out << "  #" << i.number << " " << visible(print_log_line(i)) << "\n";
    }
    void undo(int number) {
        if (mine_.empty()) throw InputError("nothing of this sitting is left to undo");
        const auto at = number == 0 ? std::prev(mine_.end()) : std::find(mine_.begin(), mine_.end(), number);
        if (at == mine_.end())
            throw InputError("#" + std::to_string(number) + " was not logged in this sitting");
        call_.write([&](Writing &w) { return withdraw_indication(w, coupon_, *at, "undone at the prompt"); });
        session_.out << "  #" << *at << " withdrawn\n";
        mine_.erase(at);
        --logged_;
    }
    void log(const std::string &line) {
        if (over_) throw InputError("the exam is finished; 'on COUPON' goes to the next, 'done' leaves");
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
            ++logged_;
            session_.out << "  #" << i.number << " " << visible(print_log_line(i)) << "\n";
        }
        for (const auto &note : done.notes) session_.out << "  note: " << visible(note) << "\n";
    }

    Call &call_;
    Session &session_;
    std::string coupon_;
    int exam_ = 0;
    bool over_ = false; ///< its exam is finished
    std::vector<int> mine_;
    std::size_t logged_ = 0;
};

/// Types of imperfection at the beginning of a line, marks after `on`.
std::vector<std::string> ways_on(Call &call, std::string_view before, std::string_view begun) {
    std::vector<std::string> all;
    const auto words = words_of(before);
    if (words.empty()) {
        all = Vocabulary::shipped().names();
        for (const char *word : {"help", "list", "undo", "verdict", "finish", "none", "on", "done"})
            all.emplace_back(word);
    } else if (words.front() == "on") {
        all = call.office().book().coupons();
    } else {
        // A name of several words goes on.
        for (const auto &name : Vocabulary::shipped().names())
            if (name.size() > before.size() && name.compare(0, before.size(), before) == 0)
                all.push_back(name.substr(before.size()));
        for (const char *word :
             {"at", "from", "to", "length", "width", "depth", "height", "size", "face", "root"})
            all.emplace_back(word);
    }
    std::vector<std::string> out;
    for (auto &word : all)
        if (word.compare(0, begun.size(), begun) == 0) out.push_back(std::move(word));
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

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
    LogPrompt prompt(call, coupon, exam);
    LineEditor lines(session, [&](std::string_view before, std::string_view begun) {
        return ways_on(call, before, begun);
    });
    while (const auto line = lines.next(prompt.sign())) {
        if (trimmed(*line).empty()) continue;
        try {
            if (!prompt.take(*line)) break;
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
