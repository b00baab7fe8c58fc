#include "operations/coupon_lines.hpp"

#include "criteria/own_measure.hpp"
#include "criteria/provenance.hpp"
#include "operations/fingerprint.hpp"
#include "operations/looking_back.hpp"
#include "operations/told_class.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/line.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

constexpr std::size_t at_once = 1000; ///< lines in one transaction

/// Reasons that reject, of the class that the coupon is told by.
void take_reasons(const Judged &judged, CouponLine &into, std::set<int> &rejecting) {
    for (const auto &f : judged.judgement.classes[told_class(judged)].findings) {
        if (f.effect != Verdict::reject) continue;
        rejecting.insert(f.indications.begin(), f.indications.end());
        if (f.rule < 0) continue;
        into.rejected_by.push_back(judged.set->name + ": " +
                                   judged.set->rules[static_cast<std::size_t>(f.rule)].id);
    }
}

/// Whether every weld has some of it, so that only a limit makes an imperfection of it: a cap, a toe's angle;
/// or the set wants it measured.
bool of_every_weld(const CriteriaSet &set, TypeId type, Exam exam) {
    const OwnMeasure own = own_measure(Vocabulary::shipped(), type);
    if (own == OwnMeasure::height || own == OwnMeasure::angle) return true;
    const auto &rules = set.rules_for(type, exam);
    return std::any_of(rules.begin(), rules.end(),
                       [&](std::uint16_t rule) { return set.rules[rule].must_be_measured; });
}

/// Finds that are no imperfection: sizes of dimensions that reject nothing, and of what every weld has what
/// was measured and no reason speaks of. They held where a rule judged them.
struct Measured {
    std::set<int> held, unjudged;
};

/// Whether nothing that keeps the weld from being accepted is about the weld itself.
bool is_in_scope(const ClassJudgement &by) {
    return std::none_of(by.findings.begin(), by.findings.end(), [](const Finding &f) {
        return f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown;
    });
}

Measured measured_of(const CouponState &coupon, const Judged *judged, const std::set<int> &rejecting) {
    std::set<int> told, in_vain;
    bool in_scope = false;
    if (judged) {
        const ClassJudgement &by = judged->judgement.classes[told_class(*judged)];
        in_scope = is_in_scope(by);
        for (const auto &f : by.findings) // of one whose exam does not count nothing is said
            (f.kind == Finding::Kind::not_measured ? in_vain : told)
                .insert(f.indications.begin(), f.indications.end());
    }
    Measured out;
    for (const auto &find : coupon.indications) {
        const bool dimension = Vocabulary::shipped()[find.type].measured;
        const ExamRecord &exam = coupon.needed_exam(find.exam);
        if (dimension ? rejecting.contains(find.number)
                      : !judged || find.measures.empty() || told.contains(find.number) ||
                            !of_every_weld(*judged->set, find.type, exam.method))
            continue;
        const bool kept = in_scope && exam.done().counts && !told.contains(find.number) &&
                          !in_vain.contains(find.number) &&
                          !judged->set->rules_for(find.type, exam.method).empty();
        (kept ? out.held : out.unjudged).insert(find.number);
    }
    return out;
}

/// Whether it was judged by another file of people's own before: what it said then hangs on how that file
/// reads today, which no basis tells.
bool hangs_on_another_file(Office &office, const CouponState &coupon) {
    if (coupon.sought_changed == 0) return false;
    const std::string now = coupon.record.get("criteria");
    const auto history = office.book().history(coupon.record.id);
    return std::any_of(history.begin(), history.end(), [&](const Entry &entry) {
        if (entry.kind != "coupon" || is_withdrawal(entry)) return false;
        const std::string then = codec::coupon_from(codec::parsed(entry.body)).get("criteria");
        return then != now && means_file(then);
    });
}

std::optional<Ledger::KeptLine> worked_out(Office &office, const KeptLines &lines,
                                           const CouponState &coupon) {
    const CouponRecord &record = coupon.record;
    std::string basis = lines.basis(record.get("criteria"));
    if (basis.empty() || hangs_on_another_file(office, coupon)) return std::nullopt;
    return Ledger::KeptLine{record.id,
                            record.get("welder"),
                            record.get("cohort"),
                            record.get("class"),
                            std::move(basis),
                            codec::body_of(line_of(coupon, judge_with_cautions(office, coupon),
                                                   standing_of_grade(office, coupon)))};
}

/// An entry that cannot be read keeps nobody from writing on; who reads the coupon is told.
std::optional<Ledger::KeptLine> worked_out_or_not(Office &office, const KeptLines &lines,
                                                  const std::function<CouponState()> &coupon) {
    try {
        return worked_out(office, lines, coupon());
    } catch (const Refusal &) {
        return std::nullopt;
    }
}

void keep(Office &office, const std::vector<std::string> &marks) {
    const KeptLines lines(office);
    for (std::size_t from = 0; from < marks.size(); from += at_once) {
        Ledger::Transaction together(office.ledger());
        for (std::size_t i = from; i < std::min(from + at_once, marks.size()); ++i)
            if (const auto line = worked_out_or_not(office, lines, [&] { return office.coupon(marks[i]); }))
                office.ledger().keep_line(*line);
        together.commit();
    }
}

/// All lines, some at a time.
template <class Take>
void for_each_line(Ledger &ledger, Take take) {
    Ledger::LinesAsked asked;
    for (auto some = ledger.lines(asked); !some.empty(); some = ledger.lines(asked)) {
        for (const auto &line : some) take(line);
        asked.from = some.back().first;
    }
}

} // namespace

std::vector<ExamAtAGlance> exams_at_a_glance(const CouponState &coupon) {
    std::vector<ExamAtAGlance> out;
    for (const auto &exam : coupon.exams) out.push_back({exam.method, !exam.finished, exam.done().counts});
    return out;
}

CouponLine line_of(const CouponState &coupon, const JudgedOrNot &judged, const GradeStanding &grading) {
    CouponLine out;
    out.record = coupon.record;
    out.exams = exams_at_a_glance(coupon);
    // One that found more or less than it was finished with is to be opened and finished again.
    const bool pending = std::any_of(coupon.exams.begin(), coupon.exams.end(),
                                     [](const ExamRecord &exam) { return exam.pending; });
    out.unfinished = coupon.record.withdrawn.empty() && (coupon.exams.empty() || pending);
    out.indications = coupon.indications.size();
    std::set<int> rejecting;
    if (judged.judged) {
        out.verdict = judged.judged->verdict();
        out.own_file = own_file_mark(judged.judged->set->name, judged.judged->set->hash);
        out.cautions = judged.judged->with_cautions();
        out.written_beside = !judged.judged->said.empty();
        out.said_otherwise = judged.judged->said_otherwise;
        if (out.verdict == Verdict::reject) take_reasons(*judged.judged, out, rejecting);
    } else {
        out.why_not = coupon.record.get("criteria").empty() ? "no criteria" : judged.why_not;
    }
    const Vocabulary &vocabulary = Vocabulary::shipped();
    const WeldLine weld = coupon.record.facts().line;
    const Measured measured = measured_of(coupon, judged.judged ? &*judged.judged : nullptr, rejecting);
    for (const auto &find : coupon.found(vocabulary))
        out.finds.push_back({vocabulary[find.type].name, part_of(find.place, weld),
                             rejecting.contains(find.number), measured.held.contains(find.number),
                             measured.unjudged.contains(find.number)});
    out.grade = coupon.grade;
    out.grade_standing = grading;
    return out;
}

KeptLines::KeptLines(Office &office)
    : office_(office), of_all_(std::string(program_fingerprint()) + " " +
                               std::to_string(office.ledger().last_entry_of(Family::criteria))) {}

std::string KeptLines::basis(const std::string &criteria) const {
    if (!means_file(criteria)) return of_all_;
    try {
        return of_all_ + " " + office_.catalogue().criteria(criteria)->hash;
    } catch (const Refusal &) {
        return "";
    }
}

std::optional<CouponLine> KeptLines::read(const Ledger::Line &line) const {
    if (!line.basis.starts_with(of_all_)) return std::nullopt;
    CouponLine out = codec::line_from(line.body);
    if (line.basis != basis(out.record.get("criteria"))) return std::nullopt;
    return out;
}

void commit(Writing &writing) {
    const KeptLines lines(writing.office());
    std::vector<std::string> later;
    std::size_t kept = 0;
    for (const auto &mark : writing.touched())
        if (kept++ >= at_once)
            later.push_back(mark);
        else if (const auto line =
                     worked_out_or_not(writing.office(), lines, [&] { return writing.coupon(mark); }))
            writing.ledger().keep_line(*line);
    writing.commit();
    if (later.empty()) return;
    try {
        keep(writing.office(), later);
    } catch (const StoreError &) {
        return; // all is stored by now; lists judge these afresh
    }
}

std::string line_does_not_follow(const std::string &coupon) {
    return "what lists say of coupon " + coupon +
           " does not follow from what is on record: entries about it" + std::string(perhaps_cut_off) +
           "; 'refresh' works the list out again, and then nobody sees it here";
}

std::vector<std::string> false_lines(Office &office) {
    const KeptLines lines(office);
    std::vector<std::string> out;
    for_each_line(office.ledger(), [&](const Ledger::Line &line) {
        if (line.changed) return out.push_back(line.coupon);
        if (!lines.read(line)) return;
        const Ledger::Moment moment(office.ledger());
        const auto again = worked_out_or_not(office, lines, [&] { return office.coupon(line.coupon); });
        if (!again || again->body != line.body) out.push_back(line.coupon);
    });
    return out;
}

bool line_follows(Office &office, const CouponState &coupon) {
    const auto line = office.ledger().line(coupon.record.id);
    const auto kept = line ? KeptLines(office).read(*line) : std::nullopt;
    if (!kept) return true;
    const auto found = coupon.found(Vocabulary::shipped());
    const auto entry_of = [](const std::optional<Grade> &grade) { return grade ? grade->seq : 0; };
    return kept->exams.size() == coupon.exams.size() && kept->record.withdrawn == coupon.record.withdrawn &&
           entry_of(kept->grade) == entry_of(coupon.grade) &&
           std::equal(kept->finds.begin(), kept->finds.end(), found.begin(), found.end(),
                      [](const CouponLine::Find &one, const Indication &find) {
                          return one.imperfection == Vocabulary::shipped()[find.type].name;
                      });
}

void check_line_follows(Office &office, const CouponState &coupon) {
    if (!line_follows(office, coupon))
        throw StoreError(line_does_not_follow(coupon.record.id) + "; nothing is written about it");
}

Refreshed refresh_lines(Office &office) {
    Refreshed out{0, false_lines(office)};
    const auto marks = office.book().coupons();
    keep(office, marks);
    keep(office, out.were_false); // without the caution that the false one was there
    out.coupons = marks.size();
    return out;
}

} // namespace beadbook
