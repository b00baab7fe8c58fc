#include "operations/keeping.hpp"

#include "case.hpp"
#include "catch.hpp"
#include "facts/coupon_weld.hpp"
#include "measure/sha256.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/judging.hpp"
#include "operations/logging.hpp"
#include "operations/moving.hpp"
#include "records/behind.hpp"
#include "records/codecs/bodies.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <nlohmann/json.hpp>
#include <set>

using namespace beadbook;
using namespace beadbook::test;

namespace {

using What = ReplayFault::What;

void examine(Writing &w, Exam method, const std::function<void(ExamRequest &)> &more = {}) {
    ExamRequest request;
    request.coupon = "T-1";
    request.method = method;
    if (more) more(request);
    record_exam(w, request);
}

/// A desk with a coupon, an exam, two finds and a stored verdict: A rejects, B accepts.
class Judged1 : public Desk {
public:
    Judged1() {
        write_file(file("set.yaml"),
                   head() + "rules:\n"
                            "  - {id: size, types: porosity, exams: RT, measure: size, at most: {A: 0.3 x T, "
                            "B: 0.6 x T}, clause: c1, standing: {house: x}}\n"
                            "  - {id: cracks, types: crack, exams: RT, allowed: none, clause: c2, standing: "
                            "{house: x}}\n");
        write([&](Writing &w) {
            register_coupon(
                w,
                {"T-1", {{"criteria", file("set.yaml")}, {"thickness", "0.1 in"}, {"weld-length", "8 in"}}});
            examine(w, Exam::RT);
            log_lines(w, {.coupon = "T-1", .text = "pore 0.05 at 1\npore 0.02 at 3\n"});
        });
        judge();
    }
    void judge() {
        write([](Writing &w) { judge_and_keep(w, "T-1"); });
    }
    std::string last_body() { return book.coupon("T-1").verdicts.back().body; }
    /// Adds an entry as it is, with its place in the chain.
    void add(const std::string &kind, const std::string &subject, const std::string &body) {
        write([&](Writing &w) {
            Entry e;
            e.kind = kind;
            e.subject = subject;
            e.body = body;
            if (kind == "qualification") e.number = 1;
            w.add(std::move(e));
        });
    }
    Replay replay() {
        const Verified v = verify(office, {true, ""});
        CHECK(v.chain.faults.empty());
        return v.replay.value();
    }
};

std::string replaced(std::string text, const std::string &from, const std::string &to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

void collect_texts(const nlohmann::json &json, std::set<std::string> &keys, std::set<std::string> &texts) {
    if (json.is_string()) texts.insert(json.get<std::string>());
    if (!json.is_structured()) return;
    for (const auto &[key, value] : json.items()) {
        if (json.is_object()) keys.insert(key);
        collect_texts(value, keys, texts);
    }
}

} // namespace

TEST_CASE("verify gives the number of entries and the head, and holds a noted head against it") {
    Judged1 desk;
    const Verified v = verify(desk.office, {});
    CHECK(v.holds());
    CHECK(v.chain.entries == 5);
    CHECK(v.chain.head == desk.book.ledger().head());
    CHECK_FALSE(v.replay);
    CHECK(verify(desk.office, {false, v.chain.head}).holds());
    desk.write([](Writing &w) { remark_on(w, "T-1", "one more"); });
    const Verified later = verify(desk.office, {false, v.chain.head});
    CHECK(later.holds()); // what came after it was only added
    CHECK(later.entries_after == 1);
    CHECK(verify(desk.office, {false, later.chain.head}).entries_after == 0);
    CHECK(verify(desk.office, {false, std::string(64, '0')}).entries_after == 6);
    const Verified stranger = verify(desk.office, {false, std::string(64, 'a')});
    CHECK_FALSE(stranger.holds());
    CHECK(stranger.other_head == std::string(64, 'a'));
    CHECK_FALSE(stranger.entries_after);
    CHECK(stranger.chain.faults.empty());
}

TEST_CASE("a broken chain is not replayed") {
    Judged1 desk;
    behind(desk.path(), "UPDATE entry SET who = 'x' WHERE seq = 2");
    const Verified v = verify(desk.office, {true, "head"});
    CHECK_FALSE(v.holds());
    REQUIRE(v.chain.faults.size() == 1);
    CHECK_THAT(v.chain.faults.front(), says("entry 2 does not hold"));
    CHECK_FALSE(v.replay);
}

TEST_CASE("every verdict comes out again from the coupon as it stood, whatever was changed later") {
    Judged1 desk;
    const auto step = [&](auto work) {
        desk.write(work);
        desk.judge();
    };
    step([](Writing &w) { correct_indication(w, "T-1", 1, "pore 0.025 at 1", "read wrong"); });
    step([](Writing &w) { withdraw_indication(w, "T-1", 2, "gone"); });
    step([](Writing &w) {
        change_coupon(w, {{"T-1", {{"thickness", "0.2 in"}, {"units", "mm"}}}, {}, "measured again"});
    });
    step([](Writing &w) { log_lines(w, {.coupon = "T-1", .text = "crack l 2 at 30"}); });
    step([](Writing &w) {
        examine(w, Exam::VT, [](ExamRequest &r) {
            r.conditions = {"light=50 fc"};
            r.practice = "asme-v-vt";
        });
        log_lines(w, {.coupon = "T-1", .exam = 1, .text = "pore 1 at 60"});
    });
    step([](Writing &w) {
        examine(w, Exam::RT, [](ExamRequest &r) {
            r.incomplete = "film spoilt";
            r.replaces = 1;
            r.why = "slip";
        });
    });
    step([](Writing &w) { change_coupon(w, {{"T-1", {}}, {"thickness"}, "not known"}); });
    const CouponState state = desk.office.coupon("T-1");
    CHECK(state.verdicts.size() >= 6);
    std::set<std::string> bodies;
    for (const auto &v : state.verdicts) bodies.insert(v.body);
    CHECK(bodies.size() >= 5); // they differ, so that a replay from the wrong state would show
    const Replay replay = desk.replay();
    CHECK(replay.verdicts == static_cast<std::int64_t>(state.verdicts.size()));
    CHECK(replay.faults.empty());
    // The same states as a fold from the start gives.
    for (const auto &v : state.verdicts) {
        const CouponState before = desk.office.coupon("T-1", v.seq);
        const auto set = desk.catalogue.kept_criteria(desk.book.ledger(), v.hash);
        const Judged again = judge_by(before, set);
        CHECK(again.judgement.classes.size() == v.classes.size());
        for (std::size_t c = 0; c < v.classes.size(); ++c)
            CHECK(name_of(again.judgement.classes[c].verdict) == v.classes[c].verdict);
    }
}

TEST_CASE("a verdict that does not follow is found, by its word and by its numbers") {
    Judged1 desk;
    const std::string body = desk.last_body();
    const auto fault_of = [&](const std::string &wrong) {
        Judged1 other;
        // The set lies in another folder, but its text and so its hash are the same.
        other.add("verdict", "T-1", wrong);
        const Replay replay = other.replay();
        CHECK(replay.verdicts == 2);
        REQUIRE(replay.faults.size() == 1);
        CHECK(replay.faults[0].subject == "T-1");
        CHECK(replay.faults[0].entry == 6);
        return replay.faults[0];
    };
    const ReplayFault word = fault_of(replaced(body, "\"verdict\":\"reject\"", "\"verdict\":\"accept\""));
    CHECK(word.what == What::verdict);
    CHECK(word.part == "A");
    CHECK(word.was == "accept");
    CHECK(word.now == "reject");
    CHECK_FALSE(word.other_engine);
    CHECK_FALSE(word.other_vocabulary);
    // 0.05 in is 1270000 nm.
    const ReplayFault number = fault_of(replaced(body, "1270000", "1270001"));
    CHECK(number.what == What::findings);
    CHECK(number.part == "A");
    CHECK(fault_of(replaced(body, "\"rule\":\"size\"", "\"rule\":\"cracks\"")).what == What::findings);
    CHECK(fault_of(replaced(body, "\"edition\":\"test\"", "\"edition\":\"best\"")).what == What::head);
    CHECK(fault_of(replaced(body, "\"form\":2", "\"form\":3")).what == What::unknown_form);
    // A class that the criteria do not have, and one that was left out.
    const std::string more = replaced(body, "\"class\":\"B\"", "\"class\":\"B\",\"x\":1");
    const ReplayFault extra = fault_of(nlohmann::json::parse(more).dump()); // its keys in order
    CHECK(extra.what == What::findings);
}

TEST_CASE("another engine or vocabulary is no fault by itself, and is told where a verdict differs") {
    const auto with_engine = [](const std::string &body) {
        nlohmann::json json = nlohmann::json::parse(body);
        json["engine"] = engine_number + 1;
        json["vocabulary"] = std::string(64, 'a');
        return json.dump();
    };
    Judged1 desk;
    const std::string body = desk.last_body();
    desk.add("verdict", "T-1", with_engine(body));
    CHECK(desk.replay().faults.empty());
    desk.add("verdict", "T-1",
             with_engine(replaced(body, "\"verdict\":\"reject\"", "\"verdict\":\"accept\"")));
    const Replay replay = desk.replay();
    REQUIRE(replay.faults.size() == 1);
    CHECK(replay.faults[0].what == What::verdict);
    CHECK(replay.faults[0].other_engine);
    CHECK(replay.faults[0].other_vocabulary);
}

TEST_CASE(
    "criteria and rules that are missing or no longer load are faults, and the rest is still replayed") {
    Judged1 desk;
    const std::string hash = nlohmann::json::parse(desk.last_body())["criteria"]["hash"];
    desk.add("verdict", "T-1", replaced(desk.last_body(), hash, std::string(64, 'f')));
    const std::string broken = "no set at all";
    desk.write([&](Writing &w) { w.ledger().keep_criteria(sha256(broken), "broken", broken); });
    desk.add("verdict", "T-1", replaced(desk.last_body(), std::string(64, 'f'), sha256(broken)));
    desk.add("verdict", "T-1", "{\"x\":1}"); // cannot be read
    desk.write([](Writing &w) { register_coupon(w, {"T-2", {}}); });
    desk.add("verdict", "T-2", replaced(Judged1().last_body(), "\"form\":2", "\"form\":0"));
    const Replay replay = desk.replay();
    REQUIRE(replay.faults.size() >= 4);
    CHECK(replay.verdicts == 5);
    CHECK(replay.faults[0].what == What::text_missing);
    CHECK(replay.faults[0].entry == 6);
    CHECK(replay.faults[1].what == What::text_broken);
    CHECK(replay.faults[2].what == What::unreadable);
    CHECK(replay.faults.back().what == What::unknown_form);
    CHECK(replay.faults.back().subject == "T-2");
}

TEST_CASE(
    "a stored verdict holds known keys, ids and numbers only, so that no reworded sentence can matter") {
    Judged1 desk;
    desk.write([](Writing &w) {
        log_lines(w,
                  {.coupon = "T-1",
                   .text = "crack l 0.2 at 5\nslag at 6\npore at 7\nscattered porosity l 0.1 w 0.05 at 4"});
        examine(w, Exam::PT, [](ExamRequest &r) { r.incomplete = "a sentence of a person"; });
    });
    desk.judge();
    for (const char *shipped : {"ufgs-15216n", "iso-5817", "mil-std-2219a", "cfr-46-56.70-15"})
        desk.write([&](Writing &w) { judge_and_keep(w, "T-1", {shipped, ""}); });
    std::set<std::string> keys, texts;
    for (const auto &v : desk.book.coupon("T-1").verdicts) {
        collect_texts(nlohmann::json::parse(v.body), keys, texts);
        const auto set = desk.catalogue.kept_criteria(desk.book.ledger(), v.hash);
        REQUIRE(set);
        // What the criteria themselves call their parts.
        for (const auto &rule : set->rules) texts.erase(rule.id);
        for (const auto &one : set->classes) texts.erase(one.id);
        for (const auto &one : set->required) texts.erase(one.id);
        for (const auto &one : set->relevance) texts.erase(one.id);
        for (const auto &one : set->scope) texts.erase(one.id);
        for (const auto &own : {set->name, set->edition, set->hash}) texts.erase(own);
    }
    const std::set<std::string> known_keys{
        "form",       "criteria",    "set",     "edition",      "hash",     "vocabulary", "engine",
        "classes",    "class",       "verdict", "kind",         "effect",   "findings",   "nearest",
        "rule",       "gap",         "limit",   "required",     "measured", "place",      "missing",
        "exams",      "indications", "scope",   "proof",        "compared", "gaps",       "exam",
        "called for", "judged",      "entry",   "not relevant", "by",       "own"};
    for (const auto &key : keys) {
        INFO(key);
        CHECK(known_keys.contains(key));
    }
    std::set<std::string> words{"accept",
                                "reject",
                                "cannot say",
                                "out of limit",
                                "not allowed",
                                "missing data",
                                "not covered",
                                "a person decides",
                                "exam missing",
                                "exam pending",
                                "not measured",
                                "within",
                                "outside scope",
                                "scope unknown",
                                "place",
                                "across",
                                "shape",
                                "table value",
                                "exact number",
                                "blank",
                                Vocabulary::shipped().hash()};
    for (std::size_t q = 0; q < quantity_count; ++q) words.emplace(info(static_cast<Quantity>(q)).name);
    for (std::size_t f = 0; f < fact_count; ++f) words.emplace(info(static_cast<Fact>(f)).name);
    for (std::size_t a = 0; a < attribute_count; ++a) words.emplace(info(static_cast<Attribute>(a)).name);
    for (std::size_t e = 0; e < exam_count; ++e) words.emplace(name_of(static_cast<Exam>(e)));
    CHECK(texts.size() > 10);
    for (const auto &text : texts) {
        INFO(text);
        const bool number = text.find_first_not_of("-0123456789/") == std::string::npos;
        CHECK((number || words.contains(text)));
    }
}

TEST_CASE("a stored range holds rule ids, the rules' words and exact edges only") {
    CouponRecord test;
    test.id = "Q-1";
    for (const auto &[field, value] : std::map<std::string, std::string>{{"joint", "groove"},
                                                                         {"form", "tube"},
                                                                         {"diameter", "2 in"},
                                                                         {"weld-thickness", "0.25 in"},
                                                                         {"process", "GTAW"},
                                                                         {"position", "6G"}})
        test.set(field, value);
    const std::set<std::string> known_keys{"variable", "in work with", "parts", "rule",
                                           "any",      "words",        "edges", "lacks"};
    for (const auto &name : shipped_range_rule_names()) {
        INFO(name);
        const auto rules = shipped_range_rules(name);
        QualificationRecord q;
        q.number = 1;
        q.test = test;
        q.welded = parse_day("2026-01-05");
        q.range = granted(range_of(*rules, welds_of(test).at(0)));
        REQUIRE_FALSE(q.range.empty());
        std::set<std::string> keys, texts, words{"over", "from", "under", "to"};
        collect_texts(nlohmann::json::parse(codec::body_of(q))["range"], keys, texts);
        for (const auto &rule : rules->rules) {
            words.insert(rule.id);
            words.insert(rule.words.begin(), rule.words.end());
            for (const auto &[word, allowed] : rule.by) words.insert(allowed.begin(), allowed.end());
        }
        for (const auto &variable : rules->variables) words.insert(variable.work.text);
        for (std::size_t t = 0; t < trait_count; ++t) {
            const auto trait = static_cast<Trait>(t);
            words.emplace(info(trait).name);
            words.insert("test " + std::string(info(trait).name));
            words.insert("work " + std::string(info(trait).name));
            if (!is_size(trait)) words.insert(welds_of(test).at(0).word(trait)); // as the test itself
        }
        for (const auto &key : keys) {
            INFO(key);
            CHECK(known_keys.contains(key));
        }
        for (const auto &text : texts) {
            INFO(text);
            CHECK((words.contains(text) || text.find_first_not_of("-0123456789/") == std::string::npos));
        }
    }
}

TEST_CASE("a backup is the whole record, verified, and never overwrites") {
    Judged1 desk;
    const BackedUp done = back_up(desk.office, desk.file("copy.db"));
    CHECK(done.copy.entries == 5);
    CHECK(done.copy.head == desk.book.ledger().head());
    Book copy(desk.file("copy.db"), Ledger::Mode::read);
    CHECK(copy.coupon("T-1").indications.size() == 2);
    CHECK_THROWS_AS(back_up(desk.office, desk.file("copy.db")), DataError); // the record itself is well
    CHECK_THROWS_AS(back_up(desk.office, desk.file("no/such/folder/copy.db")), DataError);
    behind(desk.path(), "UPDATE entry SET who = 'x' WHERE seq = 2");
    CHECK_THROWS_WITH(back_up(desk.office, desk.file("second.db")), says("does not verify: entry 2"));
    CHECK_FALSE(std::filesystem::exists(desk.file("second.db"))); // not in the way of the next one
}

TEST_CASE("a verdict on a coupon of which a find was moved to another exam comes out again") {
    Judged1 desk;
    const auto by_somebody = [](ExamRequest &r) {
        r.examiner = "A. Field";
        r.level = "II";
    };
    desk.write([&](Writing &w) {
        examine(w, Exam::RT, by_somebody);
        log_lines(w, {.coupon = "T-1", .exam = 2, .text = "crack l 0.1 at 5"});
        finish_exam(w, {"T-1", 2, {}, true});
        examine(w, Exam::RT, by_somebody);
        finish_exam(w, {"T-1", 3, 0});
    });
    desk.judge();
    desk.write([](Writing &w) { move_indication(w, {"T-1", 3, 3, "", "wrong line"}); });
    desk.judge();
    // Both exams contradict what is on record now, which is among the reasons.
    const CouponState state = desk.office.coupon("T-1");
    REQUIRE(state.verdicts.size() >= 2);
    CHECK(state.verdicts.back().body != state.verdicts[state.verdicts.size() - 2].body);
    CHECK(desk.replay().faults.empty());
}
