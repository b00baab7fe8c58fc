// From a graded coupon, or from a paper, to a qualification on record.
#include "cli/welder_shared.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "qualify/retest.hpp"
#include "report/plan_report.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace beadbook {
namespace {

/// Traits that different rules call by different words.
constexpr Trait rule_words[] = {Trait::transfer,    Trait::position,    Trait::progression,
                                Trait::rotated,     Trait::metal_group, Trait::filler_group,
                                Trait::filler_type, Trait::backing,     Trait::runs};
constexpr std::uintmax_t largest_document = 16u << 20;

/// Examinations that the rules ask of the test and that are not on record.
std::vector<std::string> missing_exams(const RangeRules &rules, const CouponState &coupon, const Weld &weld) {
    std::vector<std::string> out;
    for (const auto &exam : rules.exams) {
        if (passes(exam.test, weld) == Truth::no) continue;
        const bool done = std::any_of(exam.one_of.begin(), exam.one_of.end(), [&](const std::string &name) {
            if (name == "mechanical") return coupon.record.get("mechanical") == "passed";
            return std::any_of(coupon.exams.begin(), coupon.exams.end(), [&](const ExamRecord &e) {
                return e.done().counts && name_of(e.method) == name;
            });
        });
        if (!done)
            out.push_back("no " + exams_text(exam.one_of) + " on record [" +
                          authority(exam.clause, exam.standing) + "]");
    }
    return out;
}

Day day_of_test(const CouponState &coupon) {
    if (const auto welded = coupon.record.get("welded"); !welded.empty()) return parse_day(welded);
    return parse_day(coupon.grade->at.substr(0, 10));
}

/// Tests of one kind: the same process, joint, form and position.
bool same_kind(const Weld &a, const Weld &b) {
    return a.word(Trait::process) == b.word(Trait::process) && a.word(Trait::joint) == b.word(Trait::joint) &&
           a.word(Trait::form) == b.word(Trait::form) && a.word(Trait::position) == b.word(Trait::position);
}

/// The welder's graded tests of the kind and the training between them, oldest first, up to this coupon.
std::vector<Attempt> attempts_of(Book &book, const WelderState &welder, const CouponState &coupon,
                                 const Weld &weld) {
    std::vector<Attempt> out;
    const Day last = day_of_test(coupon);
    for (const auto &id : book.coupons()) {
        const CouponState other = book.coupon(id);
        if (!other.grade || id == coupon.record.id || other.record.get("welder") != welder.record.mark)
            continue;
        const auto welds = welds_of(other.record);
        if (std::none_of(welds.begin(), welds.end(), [&](const Weld &w) { return same_kind(w, weld); }))
            continue;
        const Day day = day_of_test(other);
        if (day > last || other.record.get("purpose") == "practice") continue;
        out.push_back(
            {other.grade->decision == "passed" ? Attempt::Kind::passed : Attempt::Kind::failed, day, id});
    }
    for (const auto &e : welder.events)
        if (e.kind == "training" && e.process == weld.word(Trait::process) && e.day <= last)
            out.push_back({Attempt::Kind::trained, e.day, ""});
    // On one day a failure comes first, then training, then what passed.
    const auto rank = [](const Attempt &a) {
        return a.kind == Attempt::Kind::failed ? 0 : a.kind == Attempt::Kind::trained ? 1 : 2;
    };
    std::stable_sort(out.begin(), out.end(), [&](const Attempt &a, const Attempt &b) {
        return std::pair(a.day, rank(a)) < std::pair(b.day, rank(b));
    });
    out.push_back({Attempt::Kind::passed, last, coupon.record.id});
    return out;
}

void check_words(const RangeRules &rules, const Weld &test) {
    for (std::size_t i = 0; i < word_traits; ++i)
        if (const auto trait = static_cast<Trait>(i); test.knows(trait))
            check_word(rules, trait, true, test.word(trait));
}

/// What the coupon's qualification rests on, as it stands now.
nlohmann::json evidence_of(const CouponState &coupon, const RetestState &retest) {
    nlohmann::json exams = nlohmann::json::array();
    for (const auto &e : coupon.exams) exams.push_back(e.to_json());
    const Grade &g = *coupon.grade;
    nlohmann::json out{
        {"grade",
         {{"class", g.class_id}, {"by", g.who}, {"at", g.at}, {"against verdict", g.against_verdict}}},
        {"exams", exams},
        {"coupons", retest.passed}};
    if (!g.remark.empty()) out["grade"]["remark"] = g.remark;
    if (!retest.why.empty()) out["retest after"] = retest.why;
    if (!coupon.verdicts.empty()) {
        const auto &v = coupon.verdicts.back();
        out["criteria"] = v.body.at("criteria");
        for (const auto &c : v.body.at("classes"))
            if (c.at("class") == g.class_id) out["verdict"] = c.at("verdict");
    }
    if (const auto mechanical = coupon.record.get("mechanical"); !mechanical.empty())
        out["mechanical"] = mechanical;
    return out;
}

std::string joined(const std::vector<std::string> &lines) {
    std::string out;
    for (const auto &line : lines) out += (out.empty() ? "" : "\n  ") + line;
    return out;
}

std::string way_of(const Args &args, const RangeRules &rules) {
    const std::string way = args.text("way", rules.validity.front().id);
    if (rules.way(way)) return way;
    std::vector<std::string> ids;
    for (const auto &w : rules.validity) ids.push_back(w.id);
    throw DataError("way: '" + shown(way) + "'; " + rules.name + " knows " + listed(ids, "and") +
                    did_you_mean(way, ids));
}

void tell(Session &session, const HeldQualification &held) {
    session.out << "welder " << held.mark << " holds " << title_of(held) << ": "
                << name_of(held.validity.state) << ", " << held.validity.reason << "\n  see 'beadbook record "
                << held.mark << " " << held.record.number << "'\n";
}

/// Words that only these rules use for what was welded. What the coupon says in words that the rules know is
/// not set aside here.
void take_rule_words(CouponRecord &test, const Args &args, const RangeRules &rules) {
    for (const Trait trait : rule_words) {
        const std::string field = field_of(trait);
        if (!args.has(field)) continue;
        const std::string own = test.get(field);
        const auto &known = rules.test_words[index_of(trait)];
        if (!own.empty() && own != args.text(field) &&
            (known.empty() || std::find(known.begin(), known.end(), own) != known.end()))
            throw DataError("coupon " + test.id + " says " + field + " '" + shown(own) +
                            "'; correct it with 'change " + test.id + "'");
        test.set(field, args.text(field));
    }
}

ExitCode run_qualify(const Args &args, Session &session) {
    const auto rules = needed_rules(args);
    Book book = open_book(args, session, Ledger::Mode::write);
    std::vector<int> numbers;
    std::string mark;
    book.ledger().transact([&] {
        CouponState coupon = book.coupon(args.at(0));
        take_rule_words(coupon.record, args, *rules);
        const std::string name = "coupon " + args.at(0);
        mark = coupon.record.get("welder");
        if (mark.empty())
            throw DataError(name + " names no welder: 'change " + args.at(0) +
                            " --welder MARK --why \"...\"'");
        Welders welders(book.ledger());
        const WelderState welder = welders.welder(mark);
        if (!coupon.grade || coupon.grade->decision != "passed")
            throw DataError(name + (coupon.grade ? " was graded failed" : " is not graded") +
                            "; only a coupon that was graded passed qualifies");
        if (coupon.record.get("welded").empty())
            throw DataError(name + ": on which day was it welded? the qualification begins then: 'change " +
                            args.at(0) + " --welded DAY --why \"...\"'");
        if (coupon.record.get("purpose") == "practice")
            throw DataError(name +
                            " was welded for practice; a test is registered as one before it is welded");
        if (coupon.record.get("mechanical") == "failed")
            throw DataError(name + ": its mechanical tests failed");
        if (parse_day(coupon.record.get("welded")) > session.today())
            throw DataError(name + " is said to be welded on " + coupon.record.get("welded") +
                            ", which is to come");
        const auto welds = welds_of(coupon.record);
        for (std::size_t part = 0; part < welds.size(); ++part) {
            check_words(*rules, welds[part]);
            for (const auto &q : welder.qualifications)
                if (q.test.id == args.at(0) && q.rules == rules->name && q.part == part)
                    throw DataError(name + " qualified by " + rules->name + " already, #" +
                                    std::to_string(q.number));
            QualificationRecord record;
            record.rules = rules->name;
            record.rules_hash = rules->hash;
            record.way = way_of(args, *rules);
            record.test = coupon.record;
            record.part = part;
            record.welded = parse_day(coupon.record.get("welded"));
            const RetestState retest =
                retest_state(rules->retest, attempts_of(book, welder, coupon, welds[part]));
            record.overridden = missing_exams(*rules, coupon, welds[part]);
            if (!retest.satisfied())
                record.overridden.push_back(retest.why + ": " + std::to_string(retest.needed) +
                                            " coupons must pass, " + std::to_string(retest.passed.size()) +
                                            " did [" + authority(retest.from) + "]");
            record.override_why = checked_text(args.text("override"), "override");
            if (!record.overridden.empty() && record.override_why.empty())
                throw DataError(name + " does not qualify by " + rules->name + ":\n  " +
                                joined(record.overridden) +
                                "\nIf the governing rules allow it all the same, give --override \"reason\"; "
                                "it is kept on the record");
            if (record.overridden.empty()) record.override_why.clear();
            record.evidence = evidence_of(coupon, retest);
            record.range = range_json(range_of(*rules, welds[part]), coupon.record.unit());
            book.ledger().keep_criteria(rules->hash, rules->name, rules->text);
            numbers.push_back(welders.add(mark, std::move(record), stamp_of(args, session)));
        }
    });
    const WelderState welder = Welders(book.ledger()).welder(mark);
    for (const int number : numbers) tell(session, held_by(book, welder, number, session.today()));
    return ExitCode::done;
}

std::string read_document(const std::string &path) {
    std::error_code failed;
    const auto size = std::filesystem::file_size(path, failed);
    std::ifstream in(path, std::ios::binary);
    if (failed || !in) throw DataError(path + ": the document cannot be read");
    if (size == 0 || size > largest_document) throw DataError(path + ": a document has 1 byte to 16 MiB");
    std::string bytes(static_cast<std::size_t>(size), '\0');
    in.read(bytes.data(), static_cast<std::streamsize>(size));
    if (in.gcount() != static_cast<std::streamsize>(size))
        throw DataError(path + ": the document cannot be read");
    return bytes;
}

ExitCode run_carry(const Args &args, Session &session) {
    if (!args.has("document"))
        throw UsageError("a qualification is carried in with its paper: --document FILE");
    const auto rules = needed_rules(args);
    CouponRecord test;
    test.id = "carried-in";
    take_coupon_fields(test, args);
    if (test.get("welded").empty()) throw UsageError("on which day was the test welded? give --welded DAY");
    const std::string bytes = read_document(args.text("document"));
    Book book = open_book(args, session, Ledger::Mode::write);
    std::vector<int> numbers;
    book.ledger().transact([&] {
        Welders welders(book.ledger());
        const auto welds = welds_of(test);
        for (std::size_t part = 0; part < welds.size(); ++part) {
            check_words(*rules, welds[part]);
            QualificationRecord record;
            record.rules = rules->name;
            record.rules_hash = rules->hash;
            record.way = way_of(args, *rules);
            record.test = test;
            record.part = part;
            record.welded = parse_day(test.get("welded"));
            const std::string file = std::filesystem::path(args.text("document")).filename();
            record.document = book.ledger().keep_document(checked_text(file, "document"), bytes);
            record.range = range_json(range_of(*rules, welds[part]), test.unit());
            book.ledger().keep_criteria(rules->hash, rules->name, rules->text);
            numbers.push_back(welders.add(args.at(0), std::move(record), stamp_of(args, session)));
        }
    });
    const WelderState welder = Welders(book.ledger()).welder(args.at(0));
    for (const int number : numbers) tell(session, held_by(book, welder, number, session.today()));
    return ExitCode::done;
}

std::vector<Option> rules_options() {
    return options(Option{"rules", "RULES", "rules for welders: a shipped name or a file"},
                   Option{"way", "WAY", "how it stays valid, where the rules know several ways"});
}

} // namespace

/// One for each word that the rules may have of their own.
std::vector<Option> word_options() {
    std::vector<Option> out;
    for (const Trait trait : rule_words)
        out.push_back(
            {field_of(trait), "WORD", "what these rules call it, where the coupon has another word or none"});
    return out;
}

Command qualify_command() {
    return {
        "qualify",
        "COUPON",
        "qualify the coupon's welder by a coupon that was graded passed",
        "Each process of the coupon is qualified by itself. Where the rules ask for examinations that are\n"
        "not on record, or for more coupons after a failed one, it is refused; --override sets that aside "
        "and\n"
        "keeps the reason.",
        "beadbook qualify T-7 --rules asme-ix",
        1,
        1,
        options(rules_options(), word_options(), Option{"override", "TEXT", "why a rule is set aside"},
                by_option()),
        run_qualify};
}

Command carry_command() {
    return {"carry",
            "WELDER",
            "carry a qualification in from elsewhere, with its paper",
            "The options say what was welded in that test. Continuity since then is logged with 'used'.",
            "beadbook carry L1 --rules asme-ix --document paper.pdf --welded 2026-03-02 --process SMAW "
            "--joint groove --form plate --position 3G",
            1,
            1,
            options(rules_options(), Option{"document", "FILE", "the paper; it is kept in the record"},
                    coupon_field_options(), by_option()),
            run_carry};
}

} // namespace beadbook
