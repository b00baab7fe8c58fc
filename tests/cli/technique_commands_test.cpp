#include "catch.hpp"
#include "run.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook::test;

namespace {

void tube_coupon(const Program &run) {
    run.ok({"register",   "T-1",  "--criteria",    "mil-hdbk-1890-table-3",
            "--class",    "2",    "--joint",       "groove",
            "--form",     "tube", "--thickness",   "0.150in",
            "--diameter", "2in",  "--weld-length", "8in",
            "--magnetic", "yes",  "--material",    "steel",
            "--process",  "GTAW"});
}

const std::vector<std::string> good_vt{
    "--practice",     "asme-v-vt",      "--condition",  "light=120 fc",          "--condition",
    "distance=20 in", "--condition",    "angle=45 deg", "--condition",           "vision=2026-06-01",
    "--condition",    "vision test=J1", "--condition",  "certificate=2026-12-31"};

std::vector<std::string> exam_words(const std::string &method, const std::vector<std::string> &more) {
    std::vector<std::string> out{"exam",    "T-1", method,    "--examiner", "A. Field",
                                 "--level", "II",  "--found", "none"};
    out.insert(out.end(), more.begin(), more.end());
    return out;
}

} // namespace

TEST_CASE("an exam that was not valid makes the verdict cannot say, and the reason says what to repeat") {
    const Program run;
    tube_coupon(run);
    auto dim = good_vt;
    dim[3] = "light=60 fc";
    CHECK_THAT(run.ok(exam_words("VT", dim)),
               says("not valid: light 60 fc: at least 100 fc or 1076 lx is asked "
                    "[T-952, read]; examine again with more"));
    run.ok(exam_words("MT", {}));
    run.ok(exam_words("RT", {}));
    const Run judged = run({"judge", "T-1"});
    CHECK(judged.code == 5);
    CHECK_THAT(judged.out, says("the VT does not count: not valid: light 60 fc"));
    CHECK(run({"valid", "T-1"}).code == 1);
    CHECK_THAT(run.ok({"show", "T-1"}), says("by practice asme-v-vt: not valid"));
    // Examined again with enough light.
    auto replace = good_vt;
    replace.insert(replace.end(), {"--replaces", "1", "--why", "examined again"});
    run.ok(exam_words("VT", replace));
    CHECK(run({"judge", "T-1"}).code == 0);
    CHECK(run({"valid", "T-1"}).out.find("light 120 fc: at least 100 fc or 1076 lx holds") !=
          std::string::npos);
    CHECK_THAT(run.ok({"verify", "--replay"}), says("all the same"));
    // A missing condition is cannot say: another examiner has not the eyes of the first.
    auto third = std::vector<std::string>(good_vt.begin(), good_vt.begin() + 4);
    third.insert(third.end(), {"--replaces", "1", "--why", "slip", "--examiner", "B. Quay"});
    auto other = exam_words("VT", third);
    other.erase(other.begin() + 3, other.begin() + 5); // the examiner of all the others
    CHECK_THAT(run.ok(other), says("cannot be called valid without vision, vision test and certificate"));
    CHECK(run({"valid", "T-1"}).code == 5);
    CHECK(run({"judge", "T-1"}).code == 5);
}

TEST_CASE("conditions are checked as they are given; names of one's own are kept") {
    const Program run;
    tube_coupon(run);
    CHECK_THAT(run(exam_words("VT", {"--condition", "light=bright"})).err,
               says("condition light: 'bright' does not begin with a number"));
    CHECK_THAT(run(exam_words("VT", {"--condition", "distance=20 lb"})).err,
               says("'20 lb' is a weight; expected a length"));
    CHECK_THAT(run(exam_words("MT", {"--condition", "technique=yolk"})).err, says("did you mean 'yoke'?"));
    CHECK_THAT(run(exam_words("VT", {"--condition", "vision=2026-02-30"})).err,
               says("no day of the calendar"));
    CHECK_THAT(run(exam_words("PT", {"--practice", "asme-v-vt"})).err, says("is for VT, not for PT"));
    CHECK_THAT(run(exam_words("PT", {"--practice", "asme-v-tp"})).err,
               says("there is no practice 'asme-v-tp'"));
    CHECK(run(exam_words("PT", {"--ask"})).code == 2);
    const Run own = run(exam_words("VT", {"--condition", "ligth=60 fc", "--condition", "bench=4"}));
    CHECK(own.code == 0);
    CHECK_THAT(own.err, says("did you mean 'light'?"));
    CHECK_THAT(run.ok({"show", "T-1"}), says("bench: 4"));
    CHECK(run.ok({"show", "T-1"}).find("Exam 2") ==
          std::string::npos); // nothing of the refused ones is stored
}

TEST_CASE("the prompt asks what the practice needs, and takes no for an answer") {
    const Program run;
    tube_coupon(run);
    const std::string out = run.ok(exam_words("VT", {"--practice", "asme-v-vt", "--ask"}),
                                   "20 in\nfar\n45 deg\n120 fc\n2026-06-01\nJ1\n2026-12-31\n\n");
    CHECK_THAT(out, says("distance (from the eye to the surface): "));
    CHECK_THAT(out, says("'far' does not begin with a number"));
    CHECK(run({"valid", "T-1"}).code == 0);
    // The input ends, by Ctrl-D say: half of the answers are no exam.
    const std::string before = run.ok({"show", "T-1"});
    const Run ended = run(exam_words("VT", {"--practice", "asme-v-vt", "--ask"}), "20 in\n\n\n");
    CHECK(ended.code == 3);
    CHECK_THAT(ended.err, says("the input ended before everything was answered: no exam was recorded"));
    CHECK(run.ok({"show", "T-1"}) == before);
    run.ok(exam_words("VT", {"--practice", "asme-v-vt", "--ask"}), "20 in\n\n\n\n\n\n\n\n\n");
    CHECK(run({"valid", "T-1"}).code == 5);
}

TEST_CASE("an exam's practice travels with an export, and is kept where it is shipped") {
    const Program from, to;
    tube_coupon(from);
    from.ok(exam_words("VT", good_vt));
    const std::string json = from.ok({"export", "json"});
    to.ok({"import", "json"}, json);
    CHECK(to.ok({"export", "json"}) == json);
    CHECK(to({"valid", "T-1"}).code == 0);
    // Of a practice whose text is not here nothing can be said.
    auto foreign = nlohmann::json::parse(json);
    foreign["coupons"][0]["id"] = "T-2";
    foreign["coupons"][0]["exams"][0]["practice"] = "somebody-elses";
    foreign["coupons"][0]["exams"][0]["practice hash"] = std::string(64, 'a');
    to.ok({"import", "json"}, foreign.dump());
    CHECK_THAT(to.ok({"show", "T-2"}), says("the text of practice somebody-elses"));
}

TEST_CASE("compute, practice and methods on the command line") {
    const Program run;
    CHECK_THAT(run.ok({"compute"}), says("coil-low"));
    CHECK_THAT(run.ok({"compute", "head-shot"}), says("beadbook compute head-shot diameter=1.5in"));
    const std::string out = run.ok({"compute", "head-shot", "diameter=1.5in"});
    CHECK_THAT(out, says("I = D x (A/in)"));
    CHECK_THAT(out, says("diameter 1.5in; rule 500 A/in;"));
    CHECK_THAT(out, says("current: 750 A"));
    const auto json = nlohmann::json::parse(run.ok({"compute", "head-shot", "diameter=1.5in", "--json"}));
    CHECK(json["results"]["current"] == "750 A");
    CHECK_THAT(run({"compute", "hed-shot"}).err, says("did you mean 'head-shot'?"));
    CHECK(run({"compute", "hed-shot"}).code == 2);
    CHECK(run({"compute", "head-shot", "diameter=1.5A"}).code == 3);
    CHECK_THAT(run.ok({"practice", "list"}), says("to-33b-1-1-mt"));
    CHECK_THAT(run.ok({"practice", "conditions"}), says("technique"));
    CHECK_THAT(run.ok({"practice", "show", "asme-v-pt"}),
               says("where temperature from 40 F below 50 F: dwell at least 10 min"));
    write_file(run.file("p.yaml"), "practice: p\n");
    CHECK(run({"practice", "check", run.file("p.yaml")}).code == 3);
    CHECK(run({"practice", "frob"}).code == 2);
    CHECK_THAT(run.ok({"methods", "--magnetic", "no", "--joint", "fillet", "--look-for", "crack"}),
               says("MT  cannot: the metal is not magnetic"));
    CHECK_THAT(run.ok({"methods", "--joint", "fillet", "--look-for", "porosity"}),
               says("RT  cannot: a fillet's thickness varies across the image"));
    CHECK_THAT(run.ok({"methods", "--joint", "groove", "--look-for", "porosity"}), says("RT  finds it"));
    CHECK_THAT(run.ok({"methods", "--look-for", "crack"}),
               says("is the metal magnetic? the coupon does not say"));
    tube_coupon(run);
    CHECK_THAT(run.ok({"methods", "T-1"}), says("Required in class 2 of mil-hdbk-1890-table-3:"));
    const Run slip = [&] {
        run.ok({"change", "T-1", "--process", "GMAW", "--why", "known now"});
        run.ok({"exam", "T-1", "RT"});
        return run({"log", "T-1", "tungsten 0.03 at 2"});
    }();
    CHECK(slip.code == 0);
    CHECK_THAT(slip.err, says("#1: a tungsten inclusion, but GMAW has no tungsten electrode; a slip?"));
    CHECK_THAT(run({"methods", "--look-for", "cruck"}).err, says("did you mean 'crack'?"));
}
