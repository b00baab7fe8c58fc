// One row a method: whatever lists the methods, or asks what one can do, is made from the table.
#include "catch.hpp"
#include "cli/run.hpp"
#include "criteria/load.hpp"
#include "qualify/range_rules.hpp"
#include "records/codecs/facts.hpp"
#include "technique/finds.hpp"
#include "technique/practice.hpp"
#include "temporary.hpp"

#include <filesystem>
#include <functional>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string first_error(const std::vector<Issue> &issues) { return issues.empty() ? "" : issues[0].text; }

std::string thrown_by(const std::function<void()> &act) {
    try {
        act();
    } catch (const std::exception &e) {
        return e.what();
    }
    return "nothing";
}

const std::string methods_head = "title: t\nedition: e\nunits: in\n";

} // namespace

TEST_CASE("every method has its own name, words and a reason for what it sees") {
    CHECK(exam_count == method_table.size());
    CHECK(all_exams().size() == exam_count);
    CHECK(ExamSet().size() == exam_count);
    std::set<std::string> names;
    for (const Exam exam : all_exams()) {
        const Method &row = info(exam);
        INFO(row.name);
        CHECK(names.insert(std::string(row.name)).second);
        CHECK_FALSE(row.called.empty());
        CHECK((row.surface || row.volume));
        for (const auto &sight : row.sights) CHECK_FALSE(sight.why.empty());
        CHECK(exam_named(row.name) == exam);
        std::string lower(row.name);
        for (char &c : lower) c = static_cast<char>(std::tolower(c));
        CHECK(exam_named(" " + lower) == exam);
        for (const auto other : row.also)
            if (!other.empty()) {
                CHECK(names.insert(std::string(other)).second);
                CHECK(exam_named(other) == exam);
            }
    }
    CHECK(exam_named("FPI") == Exam::PT); // common practice, no source
    CHECK_FALSE(exam_named("XX"));
    CHECK_FALSE(exam_named(""));
    // The names that the program's own defaults and tests use.
    CHECK(name_of(Exam::VT) == "VT");
    CHECK(name_of(Exam::MT) == "MT");
    CHECK(name_of(Exam::PT) == "PT");
    CHECK(name_of(Exam::RT) == "RT");
    CHECK(stand_ins_for(Exam::MT) == std::vector<std::string>{"PT"});
}

TEST_CASE("whoever asks for a method names those of the table") {
    std::string expected;
    for (std::size_t i = 0; i < exam_count; ++i)
        expected += (i == 0 ? "" : i + 1 == exam_count ? " or " : ", ") + std::string(method_table[i].name);
    CHECK(exam_names_text() == expected);
    const std::string rule =
        "rules:\n  - {id: r, types: crack, exams: XX, allowed: none, clause: c, standing: {house: x}}\n";
    CHECK(first_error(load_criteria("set: s\n" + methods_head + "classes: [A]\n" + rule).issues) ==
          "'XX' is no exam; expected " + expected);
    CHECK_THAT(
        first_error(load_practice("practice: p\ntitle: t\nedition: e\nmethod: XX\nrules:\n  - {id: a, must: "
                                  "level is II, clause: c, standing: {house: x}}\n")
                        .issues),
        says("'XX' is no method; expected " + expected));
    const std::string comma = expected.substr(0, expected.rfind(" or ")) + ", " +
                              expected.substr(expected.rfind(" or ") + 4) + " or mechanical";
    CHECK_THAT(
        first_error(load_range_rules("rules: r\n" + methods_head +
                                     "variables: [joint]\nranges: [{id: a, of: joint, allows: any, clause: "
                                     "c, standing: {house: x}}]\nexaminations: [{id: e, one of: [XX], "
                                     "clause: c, standing: {house: x}}]\nvalidity: [{id: v, use every: 6 "
                                     "months, clause: c, standing: {house: x}}]\n")
                        .issues),
        says("'XX' is no examination; expected " + comma));
    CHECK_THAT(thrown_by([] {
                   codec::exam_from({{"method", "XX"}, {"date", "2026-11-25"}});
               }),
               says("'XX' is no method; expected " + expected));
    CHECK_THAT(thrown_by([] { CouponRecord().set("also", "XX"); }),
               says("'XX' is no exam; expected " + expected));
    const Program run;
    CHECK_THAT(run({"exam", "T-1", "XX"}).err, says("'XX' is no exam; expected " + expected));
    const std::string help = run.ok({"help", "exam"});
    for (const auto &method : method_table)
        CHECK_THAT(help, says(std::string(method.name) + " " + std::string(method.called)));
}

TEST_CASE("the schema for editors knows the methods of the table") {
    const auto schema = nlohmann::json::parse(read_file(BEADBOOK_SOURCE "/criteria/criteria.schema.json"));
    CHECK(schema["definitions"]["exam"]["enum"].get<std::vector<std::string>>() == exam_names());
}

TEST_CASE("each method answers for each imperfection, and says what the coupon does not tell") {
    const Vocabulary &v = Vocabulary::shipped();
    for (std::size_t t = 0; t < v.size(); ++t) {
        const auto all = finds(v, static_cast<TypeId>(t), {});
        REQUIRE(all.size() == exam_count);
        for (std::size_t e = 0; e < exam_count; ++e) {
            const Method &row = method_table[e];
            CHECK(all[e].method == static_cast<Exam>(e));
            CHECK((all[e].why.find("is the metal magnetic?") == std::string::npos) ==
                  row.needs_magnetic.empty());
            CHECK((all[e].why.find("groove or fillet?") == std::string::npos) == row.not_on_fillets.empty());
        }
    }
}

TEST_CASE("no source but the table and the conditions of exams hangs on which method it is") {
    const std::regex named("Exam::(MT|PT|RT)\\b|VT, MT|VT\\|MT|\"(MT|PT|RT)\"");
    std::size_t looked_at = 0;
    for (const auto &entry : std::filesystem::recursive_directory_iterator(BEADBOOK_SOURCE "/src")) {
        const std::string name = entry.path().filename().string();
        if (!entry.is_regular_file() || name == "methods.hpp" || name == "known_conditions.cpp") continue;
        INFO(entry.path().string());
        CHECK_FALSE(std::regex_search(read_file(entry.path().string()), named));
        ++looked_at;
    }
    CHECK(looked_at > 100);
}

TEST_CASE("a rule, a relevance and a merge clause must say for which methods they speak") {
    const auto issues_of = [](const std::string &parts) {
        const std::string text = "set: s\n" + methods_head + "classes: [A]\n" + parts;
        std::string out;
        for (const auto &issue : load_criteria(text).issues) out += print(issue, "f.yaml", text);
        return out;
    };
    const std::string rule =
        "rules:\n  - {id: r, types: crack, exams: VT, allowed: none, clause: c, standing: {house: x}}\n";
    const std::string asked = "'exams' is missing; list the methods that it speaks of: " + exam_names_text();
    CHECK_THAT(
        issues_of("rules:\n  - {id: r, types: crack, allowed: none, clause: c, standing: {house: x}}\n"),
        says("f.yaml:7:5: error: rules.r.exams: " + asked));
    CHECK_THAT(issues_of(rule +
                         "relevance:\n  - {id: a, types: any, ignore: size under 1 in, clause: c, standing: "
                         "{house: x}}\n"),
               says("f.yaml:9:5: error: relevance.exams: " + asked));
    CHECK_THAT(issues_of(rule +
                         "merge:\n  - {id: a, types: any, when: gap under 1 in, clause: c, standing: {house: "
                         "x}}\n"),
               says("f.yaml:9:5: error: merge.exams: " + asked));
    // A gap may speak of all: it can only make a verdict 'cannot say'.
    CHECK(issues_of(rule + "scope: not read\nrequired exams: [{id: done, one of: VT, clause: c, standing: "
                           "{house: x}}]\ngaps:\n  - {text: not read, types: any}\n")
              .empty());
}
