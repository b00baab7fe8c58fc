#include "operations/log_sheet.hpp"

#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"
#include "operations/notes_by_mark.hpp"
#include "operations/sheet_reader.hpp"

#include <set>

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
        if (said.finds.empty()) exam.found = 0;
        if (!request_.again) check_new(writing_.coupon(coupon.mark), exam);
        auto recorded = record_exam(writing_, exam);
        const int number = recorded.value.number;
        SheetTaken::Part part{coupon.mark, std::move(recorded.value), {}};
        notes_.take(coupon.mark, std::move(recorded.notes));
        if (!said.finds.empty()) {
            auto logged =
                log_lines(writing_, {coupon.mark, number, placed(said.finds), request_.name, request_.sure});
            notes_.take(coupon.mark, std::move(logged.notes));
            part.found = std::move(logged.value.indications);
            part.exam = finish_exam(writing_, {coupon.mark, number, {}, true}).value;
        }
        taken_.parts.push_back(std::move(part));
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
    void check_new(const CouponState &state, const ExamRequest &exam) const {
        const Day day = exam.date.value_or(writing_.outside().today());
        for (const auto &one : state.exams)
            if (one.method == exam.method && one.date == day && same_word(one.examiner, exam.examiner)) {
                if (!one.finished)
                    throw refused(
                        "coupon " + exam.coupon + " has " + named({&one}) + " of " + print(day) + " by " +
                        exam.examiner +
                        ", and it is open: a sheet begins exams of its own; log under that one what "
                        "it found, and finish it");
                throw refused("coupon " + exam.coupon + " has " + named({&one}) + " of " + print(day) +
                              " by " + exam.examiner + " already")
                    .give("again");
            }
    }
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
