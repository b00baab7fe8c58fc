#include "cli/shared.hpp"

#include "measure/text.hpp"
#include "report/explain.hpp"
#include "report/judgement_json.hpp"

namespace beadbook {
namespace {

std::vector<Option> criteria_options() {
    return options(Option{"criteria", "SET", "another set than the coupon's: a name or a file"},
                   Option{"class", "CLASS", "the class that decides the exit code (default the coupon's)"});
}

/// Stores the judgement unless the last one says the same.
void keep(Book &book, const CouponState &coupon, const Judged &judged, const Stamp &stamp) {
    nlohmann::json body = judgement_json(judged.view(), judged.judgement);
    if (!coupon.verdicts.empty() && coupon.verdicts.back().body == body) return;
    book.add_verdict(coupon.record.id, *judged.set, std::move(body), stamp);
}

/// The record, opened for what the call means to do, and its work: in one transaction unless nothing is kept.
template <class Work>
void on_book(const Args &args, Session &session, Work work) {
    const bool record = !args.flag("no-record");
    Book book = open_book(args, session, record ? Ledger::Mode::write : Ledger::Mode::read);
    if (record)
        book.ledger().transact([&] { work(book, true); });
    else
        work(book, false);
}

ExitCode judge_one(const Args &args, Session &session, const std::string &id) {
    Judged judged;
    std::optional<std::size_t> sought;
    on_book(args, session, [&](Book &book, bool record) {
        const CouponState coupon = book.coupon(id);
        judged = judge_coupon(coupon, CriteriaShelf().of(args, coupon));
        sought = class_of(args, coupon, *judged.set);
        if (record) keep(book, coupon, judged, stamp_of(args, session));
    });
    if (args.flag("json")) {
        nlohmann::json out = judgement_json(judged.view(), judged.judgement);
        out["coupon"] = id;
        session.out << out.dump(2) << "\n";
    } else {
        session.out << "Coupon " << id << " by " << judged.set->title << " (" << judged.set->edition << ")\n"
                    << explain_judgement(judged.view(), judged.judgement, session.paint()) << "\n"
                    << caution;
    }
    return code_of(judged.judgement, sought);
}

ExitCode judge_all(const Args &args, Session &session) {
    CriteriaShelf shelf;
    nlohmann::json list = nlohmann::json::array();
    bool rejected = false, open = false;
    on_book(args, session, [&](Book &book, bool record) {
        for (const auto &id : book.coupons()) {
            const CouponState coupon = book.coupon(id);
            const auto set = shelf.of(args, coupon);
            const Judged judged = judge_coupon(coupon, set);
            if (record) keep(book, coupon, judged, stamp_of(args, session));
            const ExitCode code = code_of(judged.judgement, class_of(args, coupon, *set));
            rejected = rejected || code == ExitCode::rejected;
            open = open || code == ExitCode::cannot_say;
            if (args.flag("json")) {
                nlohmann::json one = judgement_json(judged.view(), judged.judgement);
                one["coupon"] = id;
                list.push_back(std::move(one));
                continue;
            }
            session.out << padded(id, 12);
            for (std::size_t c = 0; c < judged.judgement.classes.size(); ++c)
                session.out << "  " << set->classes[c].id << ": "
                            << session.paint().verdict(judged.judgement.classes[c].verdict);
            session.out << "\n";
        }
    });
    if (args.flag("json"))
        session.out << list.dump(2) << "\n";
    else
        session.out << "\n" << caution;
    return rejected ? ExitCode::rejected : open ? ExitCode::cannot_say : ExitCode::done;
}

ExitCode run_judge(const Args &args, Session &session) {
    if (args.flag("all") == !args.positional().empty()) throw UsageError("give one COUPON or --all");
    return args.flag("all") ? judge_all(args, session) : judge_one(args, session, args.at(0));
}

ExitCode run_why(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    const CouponState coupon = book.coupon(args.at(0));
    const Judged judged = judge_coupon(coupon, CriteriaShelf().of(args, coupon));
    const auto sought = class_of(args, coupon, *judged.set);
    if (!sought)
        throw DataError("which class? coupon " + args.at(0) + " names none; give --class " +
                        listed(judged.set->class_names(), "or"));
    session.out << session.paint().strong("Coupon " + args.at(0))
                << (coupon.record.get("welder").empty() ? "" : ", welded by " + coupon.record.get("welder"))
                << "\n"
                << explain_to_welder(judged.view(), judged.judgement, *sought, session.paint());
    if (coupon.grade)
        session.out << "\nGraded " << coupon.grade->decision << " for class " << coupon.grade->class_id
                    << " by " << coupon.grade->who
                    << (coupon.grade->remark.empty() ? "" : ": " + coupon.grade->remark) << "\n";
    for (const auto &remark : coupon.remarks)
        session.out << "Remark by " << remark.who << ": " << remark.text << "\n";
    session.out << "\n" << caution;
    return code_of(judged.judgement, sought);
}

ExitCode run_grade(const Args &args, Session &session) {
    Grade grade;
    grade.decision = args.at(1);
    if (grade.decision != "passed" && grade.decision != "failed")
        throw UsageError("'" + shown(grade.decision) + "' is no grade; expected passed or failed");
    grade.remark = args.text("remark");
    Book book = open_book(args, session, Ledger::Mode::write);
    Verdict verdict = Verdict::cannot_say;
    book.ledger().transact([&] {
        const CouponState coupon = book.coupon(args.at(0));
        const Judged judged = judge_coupon(coupon, CriteriaShelf().of(args, coupon));
        const auto sought = class_of(args, coupon, *judged.set);
        if (!sought) throw DataError("which class? give --class " + listed(judged.set->class_names(), "or"));
        verdict = judged.judgement.classes[*sought].verdict;
        grade.class_id = judged.set->classes[*sought].id;
        grade.against_verdict = (grade.decision == "passed") != (verdict == Verdict::accept);
        if (grade.against_verdict && trimmed(grade.remark).empty())
            throw DataError("the verdict for class " + grade.class_id + " is '" +
                            std::string(name_of(verdict)) + "'; to grade it " + grade.decision +
                            " all the same, say why: --remark \"...\"");
        keep(book, coupon, judged, stamp_of(args, session));
        book.add_grade(args.at(0), grade, stamp_of(args, session));
    });
    session.out << "coupon " << args.at(0) << " graded " << grade.decision << " for class " << grade.class_id
                << " (verdict: " << name_of(verdict) << ")\n";
    return ExitCode::done;
}

} // namespace

Command judge_command() {
    return {"judge",
            "[COUPON]",
            "judge a coupon against every class; the verdict is kept",
            "Each reason names the indication, what was measured, the limit, its clause and standing, and by "
            "how much.",
            "beadbook judge T-7 --class B",
            0,
            1,
            options(Option{"all", "", "every coupon, one line each"},
                    Option{"no-record", "", "judge only, keep nothing"}, criteria_options(), by_option(),
                    json_option()),
            run_judge};
}

Command why_command() {
    return {"why", "COUPON",           "explain the verdict to the welder: where, why, cause and remedy",
            "",    "beadbook why T-7", 1,
            1,     criteria_options(), run_why};
}

Command grade_command() {
    return {"grade",
            "COUPON passed|failed",
            "the instructor's decision on a coupon, with a remark",
            "A grade that differs from the verdict needs a remark and is marked as such.",
            "beadbook grade T-7 failed --remark \"shorter arc at the toes, then weld it again\"",
            2,
            2,
            options(criteria_options(), Option{"remark", "TEXT", "for the welder"}, by_option()),
            run_grade};
}

} // namespace beadbook
