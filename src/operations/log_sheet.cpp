#include "operations/log_sheet.hpp"

#include "facts/exam_standing.hpp"
#include "facts/log_line.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"
#include "operations/notes_by_mark.hpp"
#include "operations/sheet_reader.hpp"

#include <algorithm>
#include <set>
#include <sstream>

namespace beadbook {
namespace {

/// The lines at their own numbers, so that mistakes name these.
std::string placed(const std::vector<std::pair<int, std::string>> &finds) {
    std::string out;
    int number = 1;
    for (const auto &[line, text] : finds) {
        out.append(static_cast<std::size_t>(line - number), '\n');
        out += text;
        number = line;
    }
    return out + "\n";
}

std::string without_blanks(std::string text) {
    std::erase(text, ' ');
    return text;
}

class Taking {
public:
    Taking(Writing &writing, const SheetRequest &request, SheetFaults &faults)
        : writing_(writing), request_(request), faults_(faults) {}

    void take(const SheetHead &head) {
        bool good = head.good;
        if (good && !head.coupons.empty() && trimmed(head.exam.examiner).empty()) {
            good = false;
            faults_.add(head.line, "who examined? this head names no examiner; write 'by' and the name into "
                                   "it, as in 'VT; by A. Field'");
        }
        for (const auto &coupon : head.coupons)
            for (const Exam method : head.methods) take(head, coupon, method, good);
        tell_refused(head.line);
    }

    bool any() const { return !taken_.parts.empty(); }
    Done<SheetTaken> done() && {
        std::set<std::string> coupons;
        for (const auto &part : taken_.parts) coupons.insert(part.coupon);
        return {std::move(taken_), notes_.told(coupons.size())};
    }

private:
    void take(const SheetHead &head, const SheetCoupon &coupon, Exam method, bool good) {
        const auto said = coupon.said.find(method);
        if (said == coupon.said.end() || !said->second.anything()) {
            const std::string name(name_of(method));
            faults_.add(coupon.line, coupon.mark + ": what did " + name + " find? say '" + coupon.mark + " " +
                                         name + " none', or its finds");
            return;
        }
        const auto &finds = said->second.finds;
        faults_.guard(finds.empty() ? coupon.line : finds.front().first, [&] {
            if (lines_are_good(writing_.coupon(coupon.mark).record, said->second) && good)
                enter(head, coupon, method, said->second);
        });
    }
    void enter(const SheetHead &head, const SheetCoupon &coupon, Exam method, const SheetSaid &said) {
        ExamRequest exam = head.exam;
        exam.coupon = coupon.mark;
        exam.method = method;
        if (const auto own = head.practices.find(method); own != head.practices.end())
            exam.practice = own->second;
        if (!said.incomplete.empty()) exam.incomplete = said.incomplete;
        if (!said.remark.empty()) exam.note += (exam.note.empty() ? "" : "; ") + said.remark;
        exam.sure = request_.sure;
        if (!request_.again) exam.replaces = begun(writing_.coupon(coupon.mark), exam);
        const bool goes_on = exam.replaces > 0;
        if (goes_on) go_on_with(writing_.coupon(coupon.mark).needed_exam(exam.replaces), exam);
        if (said.finds.empty() && !goes_on) exam.found = 0;
        Done<ExamRecord> recorded;
        ++tried_;
        try {
            recorded = record_exam(writing_, exam);
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            refused_.push_back({said.finds.empty() ? coupon.line : said.finds.front().first, e.what(),
                                e.missing() ? e.field() : ""});
            return;
        }
        const int number = recorded.value.number;
        if (goes_on) notes_.take(coupon.mark, {title_of(recorded.value) + " was open, and is gone on with"});
        SheetTaken::Part part{coupon.mark, std::move(recorded.value), {}};
        notes_.take(coupon.mark, std::move(recorded.notes));
        if (!said.finds.empty()) {
            Done<Logged> logged;
            try {
                logged = log_lines(writing_,
                                   {coupon.mark, number, placed(said.finds), request_.name, request_.sure});
            } catch (const Refusal &e) {
                if (e.kind() == Refusal::Kind::record) throw;
                tell_at_lines(e, said.finds.front().first);
                return;
            }
            notes_.take(coupon.mark, std::move(logged.notes));
            part.found = std::move(logged.value.indications);
        }
        if (!said.finds.empty() || goes_on) {
            FinishRequest finish{.coupon = coupon.mark, .exam = number, .sure = request_.sure};
            if (said.finds.empty())
                finish.found = 0;
            else
                finish.as_logged = true;
            try {
                part.exam = finish_exam(writing_, finish).value;
            } catch (const Unsure &e) {
                refused_.push_back(
                    {said.finds.empty() ? coupon.line : said.finds.front().first, e.what(), e.field()});
                return;
            }
        }
        taken_.parts.push_back(std::move(part));
    }
    /// What is wrong with several lines names their places itself.
    void tell_at_lines(const Refusal &refusal, int line) {
        const std::string place = request_.name + ":";
        std::istringstream all{std::string(refusal.what())};
        for (std::string one; std::getline(all, one);) {
            const std::size_t end = one.find_first_not_of("0123456789", place.size());
            if (one.starts_with(place) && end != one.npos && end > place.size() &&
                one.substr(end, 2) == ": ") {
                line = std::stoi(one.substr(place.size(), end - place.size()));
                one.erase(0, end + 2);
            }
            faults_.add(line, one, refusal.missing() ? refusal.field() : "");
        }
    }
    /// What every exam of the head is refused for is a mistake of the head.
    void tell_refused(int head) {
        const bool of_head = tried_ > 1 && refused_.size() == tried_ &&
                             std::all_of(refused_.begin(), refused_.end(), [&](const NotRecorded &one) {
                                 return one.what == refused_.front().what;
                             });
        for (const auto &one : refused_) faults_.add(of_head ? head : one.line, one.what, one.lacking);
        refused_.clear();
        tried_ = 0;
    }
    /// What the open exam says stays where the sheet says nothing else; where it does, one of them is wrong.
    void go_on_with(const ExamRecord &open, ExamRequest &exam) const {
        if (const auto both = said_otherwise(open, exam); !both.empty() && !request_.sure)
            throw Unsure("is that meant? " + title_of(open) +
                         " is open and the sheet goes on with it, but it says " + joined(both, "; "));
        exam.why = by_a_sheet;
        exam.date = open.date;
        if (!exam.note.empty() && !open.note.empty() && exam.note != open.note)
            exam.note = open.note + "; " + exam.note;
    }
    /// "light 900 lx, and the sheet light 1200 lx".
    static std::vector<std::string> said_otherwise(const ExamRecord &open, const ExamRequest &exam) {
        std::vector<std::string> out;
        const auto hold = [&](const std::string &name, const std::string &was, const std::string &is) {
            if (!was.empty() && !is.empty() && !same_word(without_blanks(was), without_blanks(is)))
                out.push_back(name + " " + was + ", and the sheet " + name + " " + is);
        };
        if (!same_level(open.level, exam.level)) hold("level", open.level, exam.level);
        hold("practice", open.practice, exam.practice);
        hold("procedure", open.procedure, exam.procedure);
        ExamRecord said;
        for (const auto &condition : exam.conditions) add_condition(said, condition);
        for (const auto &[name, value] : said.conditions)
            if (const auto was = open.conditions.find(name); was != open.conditions.end())
                hold(name, was->second, value);
        if (!open.equipment.empty() && !exam.equipment.empty()) {
            std::vector<std::string> used;
            for (const auto &one : open.equipment) used.push_back(one.serial);
            hold("equipment", joined(used, ", "), joined(exam.equipment, ", "));
        }
        return out;
    }
    bool lines_are_good(const CouponRecord &coupon, const SheetSaid &said) {
        const std::size_t before = faults_.count();
        const WeldLine weld = coupon.facts().line;
        for (const auto &[line, text] : said.finds) {
            try {
                read_log_line(text, weld, coupon.fixed_unit());
            } catch (const InputError &e) {
                faults_.add(line, e.what(), "", e.column + 1);
            }
        }
        return faults_.count() == before;
    }
    /// The open exam of that method, day and person, which the sheet goes on with; 0: there is none. Throws
    /// Refusal: there are several, or a finished one.
    int begun(const CouponState &state, const ExamRequest &exam) const {
        const Day day = exam.date.value_or(writing_.outside().today());
        std::vector<const ExamRecord *> open, finished;
        for (const auto &one : state.exams)
            if (one.method == exam.method && one.date == day && same_word(one.examiner, exam.examiner))
                (one.finished ? finished : open).push_back(&one);
        if (open.size() == 1) return open.front()->number;
        const std::string of = " of " + print(day) + " by " + exam.examiner;
        if (open.size() > 1)
            throw refused(
                "coupon " + exam.coupon + " has " + named(open) + of +
                ", and they are open: which is meant? log under that one what it found, and finish it");
        if (!finished.empty())
            throw refused("coupon " + exam.coupon + " has " + named({finished.front()}) + of + " already")
                .give("again");
        return 0;
    }
    struct NotRecorded {
        int line;
        std::string what, lacking;
    };
    std::vector<NotRecorded> refused_; ///< exams of the head at hand
    std::size_t tried_ = 0;
    SheetTaken taken_;
    NotesByMark notes_;
    Writing &writing_;
    const SheetRequest &request_;
    SheetFaults &faults_;
};

} // namespace

Done<SheetTaken> take_sheet(Writing &writing, const SheetRequest &request) {
    SheetFaults faults(request.name);
    const auto heads = read_sheet(
        request, [&](const std::string &mark) { return writing.book().knows_coupon(mark); }, faults);
    Taking taking(writing, request, faults);
    for (const auto &head : heads) taking.take(head);
    faults.check();
    if (!taking.any())
        throw refused(
            "the sheet" + (request.name == "-" ? "" : " " + shown(request.name)) +
            " names no exam of a coupon; expected a head such as 'VT MT; by A. Field; level II', and "
            "below it lines such as 'T-1 VT none'");
    return std::move(taking).done();
}

} // namespace beadbook
