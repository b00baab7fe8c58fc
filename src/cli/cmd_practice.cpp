// Practices for examinations: list, show, check a file; whether exams were valid; which method finds what.
#include "cli/shared.hpp"

#include "measure/text.hpp"
#include "report/plan_report.hpp"
#include "technique/finds.hpp"

namespace beadbook {
namespace {

ExitCode list_practices(const Args &args, Session &session) {
    nlohmann::json list = nlohmann::json::array();
    for (const auto &name : shipped_practice_names()) {
        const auto p = shipped_practice(name);
        if (args.flag("json"))
            list.push_back({{"practice", name},
                            {"method", name_of(p->method)},
                            {"title", p->title},
                            {"edition", p->edition},
                            {"hash", p->hash}});
        else
            session.out << padded(name, 18) << name_of(p->method) << "  " << p->title << " (" << p->edition
                        << ")\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

ExitCode show_practice(const Args &args, Session &session) {
    const auto p = open_practice(args.at(1));
    if (args.flag("json")) {
        nlohmann::json rules = nlohmann::json::array();
        for (const auto &r : p->rules) {
            nlohmann::json one{{"id", r.id},
                               {"must", r.must.text},
                               {"clause", r.clause},
                               {"standing", name_of(r.standing.kind)},
                               {"source", r.standing.source}};
            for (const auto &w : r.when) one["when"].push_back(w.text);
            if (r.warning) one["warning"] = true;
            rules.push_back(std::move(one));
        }
        session.out << nlohmann::json{{"practice", p->name}, {"method", name_of(p->method)},
                                      {"title", p->title},   {"edition", p->edition},
                                      {"hash", p->hash},     {"rules", rules},
                                      {"gaps", p->gaps}}
                           .dump(2)
                    << "\n";
        return ExitCode::done;
    }
    session.out << p->title << " (" << p->edition << "), " << name_of(p->method) << "\n" << p->source << "\n";
    if (!p->notes.empty()) session.out << p->notes << "\n";
    for (const auto &r : p->rules) {
        std::string when;
        for (const auto &w : r.when) when += (when.empty() ? "where " : " and ") + w.text;
        session.out << "  " << (when.empty() ? "" : when + ": ") << r.must.text
                    << (r.warning ? " (else a warning)" : "") << "  [" << r.clause << "; "
                    << name_of(r.standing.kind) << ": " << r.standing.source << "]\n";
        if (!r.reading.empty()) session.out << "    our reading: " << r.reading << "\n";
    }
    for (const auto &gap : p->gaps)
        session.out << (&gap == &p->gaps.front() ? "Known gaps:\n" : "") << "  - " << gap << "\n";
    session.out << "\n" << caution;
    return ExitCode::done;
}

ExitCode check_practice(const Args &args, Session &session) {
    const std::string text = read_input(args.at(1), session);
    const LoadedPractice loaded = load_practice(text);
    for (const auto &issue : loaded.issues) session.err << print(issue, args.at(1), text);
    if (!loaded.practice) return ExitCode::bad_data;
    session.out << args.at(1) << ": " << loaded.practice->rules.size() << " rules hold\n";
    return ExitCode::done;
}

ExitCode run_practice(const Args &args, Session &session) {
    const std::string &verb = args.at(0);
    if (verb == "list" && args.positional().size() == 1) return list_practices(args, session);
    if (verb == "show" && args.positional().size() == 2) return show_practice(args, session);
    if (verb == "check" && args.positional().size() == 2) return check_practice(args, session);
    if (verb == "conditions" && args.positional().size() == 1) {
        for (const auto &c : condition_infos()) {
            std::vector<std::string> methods;
            for (const Exam m : c.methods) methods.emplace_back(name_of(m));
            session.out << padded(c.name, 18) << (methods.empty() ? "all methods" : listed(methods)) << ": "
                        << c.help << (c.words.empty() ? "" : " (" + listed(c.words, "or") + ")") << "\n";
        }
        return ExitCode::done;
    }
    throw UsageError("expected list, conditions, show PRACTICE or check FILE");
}

const char *word_for(Truth truth) {
    return truth == Truth::yes ? "valid" : truth == Truth::no ? "not valid" : "cannot say";
}

ExitCode run_valid(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    const CouponState coupon = book.coupon(args.at(0));
    const Coupon facts = coupon.record.facts();
    nlohmann::json list = nlohmann::json::array();
    Truth all = Truth::yes;
    for (const auto &exam : coupon.exams) {
        const std::string name = "Exam " + std::to_string(exam.number) + ", " +
                                 std::string(name_of(exam.method)) + " of " + exam.date;
        if (exam.practice.empty()) {
            if (!args.flag("json"))
                session.out << name << ": names no practice, so its conditions are not judged\n";
            continue;
        }
        const auto practice = book.practice_of(exam);
        if (!practice) throw StoreError("the text of practice " + exam.practice + " is not in this record");
        const ExamCheck check = check_exam(*practice, exam.conditions_told(), parse_day(exam.date), facts);
        all = both(all, check.valid);
        if (args.flag("json")) {
            nlohmann::json findings = nlohmann::json::array();
            for (const auto &f : check.findings)
                findings.push_back({{"rule", f.rule},
                                    {"holds", f.holds == Truth::yes  ? "yes"
                                              : f.holds == Truth::no ? "no"
                                                                     : "cannot say"},
                                    {"warning", f.warning},
                                    {"text", f.text}});
            list.push_back({{"exam", exam.number},
                            {"method", name_of(exam.method)},
                            {"practice", exam.practice},
                            {"hash", exam.practice_hash},
                            {"valid", word_for(check.valid)},
                            {"findings", findings}});
            continue;
        }
        session.out << session.paint().strong(name + " by " + practice->title + ": " + word_for(check.valid))
                    << "\n";
        for (const auto &f : check.findings)
            session.out << "  " << (f.warning && f.holds != Truth::yes ? "warning: " : "") << f.text << "\n";
    }
    if (coupon.exams.empty() && !args.flag("json")) session.out << "no exam is on record\n";
    if (args.flag("json"))
        session.out << list.dump(2) << "\n";
    else
        session.out << "\n" << caution;
    return all == Truth::yes ? ExitCode::done : all == Truth::no ? ExitCode::rejected : ExitCode::cannot_say;
}

/// What the coupon's criteria require in its class, where both are known.
void tell_required(const CouponRecord &record, const Coupon &facts, Session &session) {
    if (record.get("criteria").empty() || record.get("class").empty()) return;
    const auto set = open_criteria(record.get("criteria"));
    const auto index = set->class_index(record.get("class"));
    if (!index) return;
    session.out << "Required in class " << record.get("class") << " of " << set->name << ":\n";
    for (const auto &exam : required_exams(*set, *index, facts))
        session.out << "  " << exams_text(exam.one_of) << ": " << exam.why << "\n";
    session.out << "\n";
}

ExitCode run_methods(const Args &args, Session &session) {
    CouponRecord record;
    if (!args.positional().empty())
        record = open_book(args, session, Ledger::Mode::read).coupon(args.at(0)).record;
    take_coupon_fields(record, args);
    const Coupon facts = record.facts();
    if (!args.flag("json")) tell_required(record, facts, session);
    const Vocabulary &v = Vocabulary::shipped();
    std::vector<std::string> wanted = args.all("look-for");
    if (wanted.empty())
        wanted = {"crack",    "incomplete fusion", "incomplete penetration",
                  "porosity", "inclusion",         "undercut"};
    nlohmann::json list = nlohmann::json::array();
    for (const auto &word : wanted) {
        const auto type = v.find(word);
        if (!type)
            throw DataError("'" + shown(word) + "' is no type of imperfection" +
                            did_you_mean(word, v.names()));
        if (!args.flag("json")) session.out << session.paint().strong(v[*type].name) << "\n";
        for (const auto &f : finds(v, *type, facts)) {
            const char *grade = f.grade == Finds::Grade::well     ? "finds it"
                                : f.grade == Finds::Grade::partly ? "partly"
                                                                  : "cannot";
            if (args.flag("json"))
                list.push_back({{"imperfection", v[*type].name},
                                {"method", name_of(f.method)},
                                {"finds", grade},
                                {"why", f.why}});
            else
                session.out << "  " << name_of(f.method) << "  " << grade << ": " << f.why << "\n";
        }
    }
    if (args.flag("json"))
        session.out << list.dump(2) << "\n";
    else
        session.out << "\n" << caution;
    return ExitCode::done;
}

} // namespace

Command practice_command() {
    return {"practice",
            "list | conditions | show PRACTICE | check FILE",
            "practices that exams are held against: list, show, check a file of your own",
            "criteria/technique/README.md tells the language.",
            "beadbook practice show asme-v-pt",
            1,
            2,
            {json_option()},
            run_practice};
}

Command valid_command() {
    return {"valid",
            "COUPON",
            "whether its exams were valid by their practices: each condition with the reason",
            "Ends with 0 if all are valid, 1 if one is not, 5 if a condition is missing. An exam that is not "
            "valid\n"
            "fulfils no requirement, so the verdict is 'cannot say'; what it found still counts.",
            "beadbook valid T-7",
            1,
            1,
            {json_option()},
            run_valid};
}

Command methods_command() {
    return {"methods",
            "[COUPON]",
            "which methods can find which imperfections on this coupon, and why",
            "",
            "beadbook methods --joint fillet --magnetic no --look-for crack --look-for porosity",
            0,
            1,
            options(Option{"look-for", "TYPE", "an imperfection; may be repeated", 0, true},
                    coupon_field_options(), json_option()),
            run_methods};
}

} // namespace beadbook
