#include "cli/shared.hpp"

#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "records/exchange.hpp"
#include "records/welder_record.hpp"

#include <iomanip>

namespace beadbook {
namespace {

/// The verdict in one word, or why there is none.
std::string verdict_word(const CouponState &coupon, const Args &args, CriteriaShelf &shelf) {
    try {
        const Judged judged = judge_coupon(coupon, shelf.of(args, coupon));
        const ExitCode code = code_of(judged.judgement, class_of(args, coupon, *judged.set));
        return code == ExitCode::done ? "accept" : code == ExitCode::rejected ? "reject" : "cannot say";
    } catch (const DataError &) {
        return "no criteria";
    }
}

std::string cut(std::string text, std::size_t width) {
    // By characters, not bytes, so that a name is never cut inside one.
    std::size_t seen = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if ((static_cast<unsigned char>(text[i]) & 0xC0) == 0x80) continue;
        if (++seen > width) return text.substr(0, i);
    }
    return text + std::string(width - seen, ' ');
}

ExitCode run_coupons(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    nlohmann::json list = nlohmann::json::array();
    CriteriaShelf shelf;
    if (!args.flag("json"))
        session.out << cut("coupon", 12) << " " << cut("welder", 14) << " " << cut("joint", 7) << " "
                    << cut("form", 6) << " " << cut("class", 9) << " " << cut("exams", 12) << " "
                    << cut("found", 6) << " " << cut("verdict", 11) << " grade\n";
    for (const auto &id : book.coupons()) {
        const CouponState c = book.coupon(id);
        if (args.has("welder") && c.record.get("welder") != args.text("welder")) continue;
        std::string exams;
        for (const auto &e : c.exams) exams += (exams.empty() ? "" : " ") + std::string(name_of(e.method));
        const std::string verdict = verdict_word(c, args, shelf);
        const std::string grade =
            c.grade ? c.grade->decision + (c.grade->against_verdict ? " (against the verdict)" : "") : "";
        if (args.flag("json")) {
            list.push_back({{"id", id},
                            {"fields", c.record.to_json()["fields"]},
                            {"exams", c.exams.size()},
                            {"indications", c.indications.size()},
                            {"verdict", verdict},
                            {"grade", grade}});
            continue;
        }
        session.out << cut(id, std::max<std::size_t>(12, id.size())) << " " << cut(c.record.get("welder"), 14)
                    << " " << cut(c.record.get("joint"), 7) << " " << cut(c.record.get("form"), 6) << " "
                    << cut(c.record.get("class"), 9) << " " << cut(exams, 12) << " "
                    << cut(std::to_string(c.indications.size()), 6) << " " << cut(verdict, 11) << " " << grade
                    << "\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

ExitCode run_show(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    const CouponState c = book.coupon(args.at(0));
    if (args.flag("json")) {
        nlohmann::json out = exchange_json(c);
        for (const auto &v : c.verdicts)
            out["verdicts"].push_back({{"entry", v.seq}, {"at", v.at}, {"by", v.who}, {"verdict", v.body}});
        for (const auto &r : c.remarks)
            out["remarks"].push_back({{"text", r.text}, {"at", r.at}, {"by", r.who}});
        if (c.grade)
            out["grade"] = {{"decision", c.grade->decision},
                            {"class", c.grade->class_id},
                            {"remark", c.grade->remark},
                            {"at", c.grade->at},
                            {"by", c.grade->who},
                            {"against verdict", c.grade->against_verdict}};
        session.out << out.dump(2) << "\n";
        return ExitCode::done;
    }
    session.out << "Coupon " << c.record.id << "\n";
    for (const auto &field : coupon_fields())
        if (const std::string value = c.record.get(field.name); !value.empty())
            session.out << "  " << std::left << std::setw(16) << field.name << value << "\n";
    for (const auto &e : c.exams) {
        session.out << "Exam " << e.number << ": " << name_of(e.method) << " on " << e.date
                    << (e.examiner.empty() ? "" : " by " + e.examiner)
                    << (e.level.empty() ? "" : ", level " + e.level)
                    << (e.procedure.empty() ? "" : ", procedure " + e.procedure)
                    << (e.incomplete.empty() ? "" : "; does not count: " + e.incomplete) << "\n";
        if (!e.practice.empty())
            session.out << "  by practice " << e.practice << ": " << (e.invalid.empty() ? "valid" : e.invalid)
                        << "\n";
        for (const auto &[name, value] : e.conditions) session.out << "  " << name << ": " << value << "\n";
        if (!e.note.empty()) session.out << "  note: " << e.note << "\n";
        bool any = false;
        for (const auto &i : c.indications) {
            if (i.exam != e.number) continue;
            session.out << "  #" << i.number << " " << print_log_line(i) << "\n";
            any = true;
        }
        if (!any) session.out << "  nothing found\n";
    }
    for (const auto &r : c.remarks)
        session.out << "Remark by " << r.who << " at " << r.at << ": " << r.text << "\n";
    if (!c.verdicts.empty()) {
        const auto &v = c.verdicts.back();
        session.out << "Last verdict, " << v.at << " by " << v.who << ", "
                    << v.body["criteria"]["set"].get<std::string>() << ":";
        for (const auto &k : v.body["classes"])
            session.out << " " << k["class"].get<std::string>() << " " << k["verdict"].get<std::string>()
                        << ";";
        session.out << "\n";
    }
    if (c.grade)
        session.out << "Grade: " << c.grade->decision << " for class " << c.grade->class_id << " by "
                    << c.grade->who << (c.grade->remark.empty() ? "" : ": " + c.grade->remark) << "\n";
    return ExitCode::done;
}

ExitCode run_history(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    nlohmann::json list = nlohmann::json::array();
    for (const auto &e :
         args.flag("welder") ? Welders(book.ledger()).history(args.at(0)) : book.history(args.at(0))) {
        if (args.flag("json")) {
            nlohmann::json one{{"entry", e.seq}, {"at", e.at},     {"by", e.who},
                               {"kind", e.kind}, {"body", e.body}, {"hash", e.hash}};
            if (e.supersedes) one["supersedes"] = *e.supersedes, one["reason"] = e.reason;
            list.push_back(std::move(one));
            continue;
        }
        session.out << e.seq << "  " << e.at << "  " << e.who << "  " << e.kind;
        if (e.exam) session.out << " exam " << *e.exam;
        if (e.number) session.out << " #" << *e.number;
        if (e.body.contains("withdrawn")) session.out << " withdrawn";
        if (e.supersedes) session.out << "  (instead of entry " << *e.supersedes << ": " << e.reason << ")";
        session.out << "\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

} // namespace

Command coupons_command() {
    return {"coupons",
            "",
            "all coupons at a glance, with verdict and grade",
            "",
            "beadbook coupons --welder W3",
            0,
            0,
            options(Option{"welder", "NAME", "only this welder's"}, json_option()),
            run_coupons};
}

Command show_command() {
    return {"show",
            "COUPON",
            "one coupon: what is known, exams, indications, verdict, grade",
            "",
            "beadbook show T-7",
            1,
            1,
            {json_option()},
            run_show};
}

Command history_command() {
    return {"history",
            "COUPON",
            "every entry ever made about a coupon, or a welder: who, when, why",
            "",
            "beadbook history T-7",
            1,
            1,
            options(Option{"welder", "", "the word is a welder's mark"}, json_option()),
            run_history};
}

} // namespace beadbook
