#pragma once

#include "operations/selection.hpp"
#include "operations/taken_back.hpp"
#include "operations/writing.hpp"
#include "records/described_since.hpp"

namespace beadbook {

/// By which criteria and class; empty: the coupon's own.
struct JudgeRequest {
    std::string criteria, class_id;
    /// The coupon's own.
    bool own() const { return criteria.empty() && class_id.empty(); }
};

/// A coupon's facts as the judge took them, beside the judgement.
struct Judged {
    std::string mark;
    std::shared_ptr<const CriteriaSet> set;
    Coupon coupon;
    std::vector<ExamDone> exams;
    std::vector<ExamRecord> exam_records; ///< behind `exams`: who, when, entitled how
    std::vector<Indication> indications;
    Unit unit = Unit::inch; ///< that people typed
    Judgement judgement;
    bool own = false;                  ///< by the criteria that the coupon names
    std::optional<std::size_t> sought; ///< the class sought, by index; nothing if none is named
    std::string mechanical = {};       ///< passed, failed, or empty; no verdict goes by it
    Stamp mechanical_said = {};        ///< by whom, and when
    std::string withdrawn = {};        ///< why the coupon was taken back: nothing is said of it then
    /// The day of a verdict on record that went by another text of the set under the same edition: somebody
    /// changed the file in place. Empty: there is none.
    std::string by_other_text = {}, said_by_other_text = {}; ///< with its verdict of the class sought
    /// What the coupon's own file called its set and edition then, where that is another: "shop (one)".
    std::string other_text_called = {};
    // Where somebody looked back (operations/looking_back.hpp):
    std::vector<TakenBack> taken_back = {};
    std::vector<std::string> gone = {}; ///< what may have kept it from passing, before somebody changed it
    std::string rejected_by_text = {};  ///< of an accept: by which other text of its criteria, in words
    std::vector<std::string> said_otherwise = {}; ///< fields of the weld, since it was examined; of an accept
    /// What people wrote beside it, each with what it is about: no verdict goes by words.
    std::vector<std::string> said = {};
    std::vector<Assurance> sure = {}; ///< what was set aside as meant so
    /// What stood against it before, here or on the record that it comes from; and what was measured of its
    /// finds that no rule reads.
    std::vector<std::string> against = {};

    /// Of the class sought; without one: accept if any class accepts, else cannot say if any is open.
    Verdict verdict() const;
    bool accepts_any() const; ///< class
    /// No verdict goes by them, and none stands against them.
    bool bends_failed() const { return mechanical == "failed"; }
    Verdict outcome() const { return *outcome_of(verdict(), bends_failed()); }
    /// What is against it, and what speaks against the equipment of its exams, each with its exam.
    std::vector<std::string> cautions() const;
    /// Whether an accept does not stand plain.
    bool with_cautions() const { return !gone.empty() || !sure.empty() || !cautions().empty(); }
};

/// Judges a coupon against every class of its criteria. Throws DataError: it names none, or not that class.
Judged judge_coupon(Office &office, const CouponState &coupon, const JudgeRequest &request = {});
/// The same by a set at hand: replay, and plans.
Judged judge_by(const CouponState &coupon, std::shared_ptr<const CriteriaSet> set);

/// Keeps the verdict by criteria that are not shipped where they reject the coupon: their file may read
/// otherwise tomorrow, and it was rejected all the same. To be called after whatever may make a reject, as
/// soon as a find is on record: an exam need not be finished to find a crack.
void keep_what_may_go(Writing &writing, const std::string &mark);
/// The same of a request that is refused: what such criteria say then is kept though nothing else is, unless
/// it is accept; also by others than the coupon's own, if they are asked for.
void keep_if_refused(Writing &writing, const std::string &mark, const JudgeRequest &by = {});
/// Judges and keeps the verdict, unless the last one says the same.
Done<Judged> judge_and_keep(Writing &writing, const std::string &mark, const JudgeRequest &request = {});
/// The same, and nothing is kept.
Done<Judged> judge_without_keeping(Office &office, const std::string &mark, const JudgeRequest &request = {});

/// A coupon that could not be judged keeps the others from nothing: it says why.
struct JudgedOrNot {
    std::string mark;
    std::optional<Judged> judged;
    std::string why_not;
};
/// Judges a coupon; a refusal is told in the result. Throws StoreError.
JudgedOrNot judge_or_tell(Office &office, const CouponState &coupon, const JudgeRequest &request = {});
/// All coupons, or those that were asked for, each handed on as it comes.
void judge_all(Office &office, const JudgeRequest &request, const std::function<void(JudgedOrNot)> &take,
               const Selection &of = {});
/// The same, and each verdict that is new is stored: some coupons in one transaction, in which `store` runs
/// what it is given, and these handed on once it is committed. A million fit into no memory at once, and what
/// waits to be read or written waits for a few only. Where it is broken off, what was handed on is on record.
void judge_and_keep_all(Office &office, const JudgeRequest &request,
                        const std::function<void(JudgedOrNot)> &take, const Selection &of,
                        const std::function<void(const std::function<void(Writing &)> &)> &store);

/// A welder's page: the judgement of one class (operations/told_class) with the grade and the remarks.
struct Explained {
    Judged judged;
    std::string welder;
    std::string welder_name; ///< as enrolled today; empty: the welder is not
    std::optional<Grade> grade;
    GradeStanding grading; ///< of the grade
    std::vector<Remark> remarks;
    std::vector<std::string> mechanical_asked_by = {}; ///< rules that ask mechanical tests, if there are none
    std::vector<DescribedSince> described_since =
        {}; ///< changes of the coupon after its grade, else after its last verdict
};
/// Changes of a coupon after its grade, else after the last verdict that is kept; none before either.
std::vector<DescribedSince> described_after(const std::vector<Entry> &history, const CouponState &coupon);
Explained explain(Office &office, const std::string &mark, const JudgeRequest &request = {});

struct GradeRequest {
    std::string mark;
    bool passed = false;
    std::string remark;
    JudgeRequest by;
};
struct Graded {
    std::string mark;
    Grade grade;
    Verdict verdict = Verdict::cannot_say; ///< of the class it was graded for
    std::string own_file = {};             ///< as own_file_mark says it; empty: by a shipped set
};
/// Judges, keeps the verdict, and grades. A grade against the verdict, or a pass
/// against failed mechanical tests, needs a remark. Notes: mechanical tests that rules ask and nobody made.
Done<Graded> grade_coupon(Writing &writing, const GradeRequest &request);

} // namespace beadbook
