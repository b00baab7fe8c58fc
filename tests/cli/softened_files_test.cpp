// Files of one's own that are softened between one command and the next, and perhaps put back.
#include "catch.hpp"
#include "cli/run.hpp"
#include "command_file.hpp"
#include "criteria/shipped.hpp"
#include "temporary.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

class OwnFiles {
public:
    Run say(const std::string &line) const { return run(shell_words(line)); }
    /// All that the command prints, its lines joined.
    std::string told(const std::string &line) const {
        const Run done = say(line);
        std::string out;
        for (const char c : done.out + " " + done.err) {
            if (c == '\n' || c == ' ') {
                if (!out.empty() && out.back() != ' ') out += ' ';
            } else {
                out += c;
            }
        }
        INFO(line << "\n" << out);
        CHECK(done.code <= 5);
        return out;
    }
    void all(const std::vector<std::string> &lines) const {
        for (const auto &line : lines) {
            const Run done = say(line);
            INFO(line << "\n" << done.out << done.err);
            CHECK((done.code == 0 || done.code == 1 || done.code == 5));
        }
    }
    std::string file(const std::string &name) const { return run.file(name); }
    void write(const std::string &name, const std::string &text) const { write_file(file(name), text); }

private:
    Program run;
};

/// Writes the one place of a text otherwise.
void put(std::string &text, const std::string &was, const std::string &now) {
    REQUIRE(text.find(was) != std::string::npos);
    text.replace(text.find(was), was.size(), now);
}

std::string criteria_text(const std::string &set, const std::string &at_most) {
    return "set: " + set +
           "\ntitle: t\nedition: one\nunits: in\nclasses: [A]\nscope: not read\nrules:\n"
           "  - {id: r, types: gas pore, exams: VT, measure: size, at most: " +
           at_most + ", clause: '1', standing: {house: x}}\n";
}

/// S-1 with a pore of 0.08 in, by s.yaml.
void examined_by_own_file(const OwnFiles &bench) {
    bench.write("s.yaml", criteria_text("shopz", "0.05 in"));
    bench.all(
        {"enrol L1 --name \"D. Spar\"",
         "register S-1 --welder L1 --class A --joint groove --material steel --process GTAW --thickness "
         "0.25in --weld-length 8in --criteria " +
             bench.file("s.yaml"),
         "exam S-1 VT --examiner \"A. Field\" --level II", "log S-1 \"gas pore 0.08 at 1\" --finish"});
}

std::string practice_text(const std::string &density) {
    return "practice: shop-rt\ntitle: t\nedition: one\nsource: house\nmethod: RT\nrules:\n"
           "  - {id: density, must: density at least " +
           density + ", repeat: again, clause: '1', standing: {house: x}}\n";
}

std::string rules_text(const std::string &coupons, const std::string &most) {
    return "rules: shop-w\ntitle: t\nedition: one\nsource: house\nunits: in\nquantities: {T: thinner "
           "member}\n"
           "words:\n  process: [GTAW, SMAW]\nvariables: [process, thickness]\nranges:\n"
           "  - {id: process, of: process, allows: same, clause: '1', standing: {house: x}}\n"
           "  - {id: thickness, of: thickness, allows: from 0.67 x T to " +
           most +
           " x T, clause: '2', standing: {house: x}}\n"
           "validity:\n  - {id: years, lasts: 2 years, clause: '6', standing: {house: x}}\n"
           "retest:\n  immediate: {coupons: " +
           coupons + ", clause: '7', standing: {house: x}}\n";
}

/// Q-1 with an RT that its practice does not call valid; returns the words that name the practice.
std::string not_valid_by_own_practice(const OwnFiles &bench) {
    bench.write("pr.yaml", practice_text("2"));
    const std::string by = " --practice " + bench.file("pr.yaml");
    bench.all({"register Q-1 --criteria asme-ix-tests --class \"test coupon\" --joint groove --form plate "
               "--thickness 0.25in --weld-length 8in --material steel --process GTAW",
               "exam Q-1 VT --examiner \"A. Field\" --level II --found none",
               "exam Q-1 RT --examiner \"A. Field\" --level II --condition density=1 --found none" + by});
    return by;
}

} // namespace

TEST_CASE("own criteria that are softened and called otherwise in their place pass nothing in silence") {
    const OwnFiles bench;
    examined_by_own_file(bench);
    bench.all({"judge S-1"});
    bench.write("s.yaml", criteria_text("shopq", "0.1 in"));
    const std::string rejected = "it was rejected by s.yaml before its criteria text was changed";
    CHECK_THAT(bench.told("judge S-1"), says("reject, went by another text of its file, which called itself "
                                             "shopz (one): the file was changed since"));
    CHECK_THAT(bench.told("coupons"), says("accept, with cautions"));
    CHECK_THAT(bench.told("grade S-1 passed --by \"I. Teach\""),
               says(rejected + " (rule r of text ") && says("; #1); to pass it after that, say why"));
    CHECK_THAT(bench.told("judge S-1"), says("Caution, " + rejected + " (rule r of text "));
    CHECK_THAT(bench.told("grade S-1 passed --by \"I. Teach\" --remark \"the drawing says 0.1\""),
               says("passed"));
}

TEST_CASE("a verdict by other criteria than its own does not tell that a coupon was rejected") {
    const OwnFiles bench;
    bench.write("s.yaml", criteria_text("shopz", "0.1 in"));
    bench.write("other.yaml", criteria_text("shopo", "0.05 in"));
    bench.all({"register S-1 --class A --joint groove --material steel --process GTAW --thickness 0.25in "
               "--weld-length 8in --criteria " +
                   bench.file("s.yaml"),
               "exam S-1 VT --examiner \"A. Field\" --level II", "log S-1 \"gas pore 0.08 at 1\" --finish",
               "judge S-1 --criteria " + bench.file("other.yaml"), "judge S-1"});
    CHECK_THAT(bench.told("judge S-1"), !says("another text"));
    CHECK_THAT(bench.told("coupons"), !says("with cautions"));
    bench.all({"grade S-1 passed --by \"I. Teach\"", "verify --replay"});
}

TEST_CASE("what was graded failed is told to have failed by the criteria of that time") {
    const OwnFiles bench;
    examined_by_own_file(bench);
    bench.all({"grade S-1 failed --by \"I. Teach\""});
    bench.write("s.yaml", criteria_text("shopq", "0.1 in"));
    CHECK_THAT(bench.told("welder L1"), says("it failed by shopz, class A"));
}

TEST_CASE("an exam that counts only since its own practice was softened says so") {
    const OwnFiles bench;
    const std::string by = not_valid_by_own_practice(bench);
    CHECK_THAT(bench.told("judge Q-1"), says("not valid"));
    bench.write("pr.yaml", practice_text("0.5"));
    bench.all({"exam Q-1 RT --replaces 2 --why \"read over again\" --found none" + by});
    CHECK_THAT(bench.told("judge Q-1"), says("Exam 2 was recorded as text of practice shop-rt"));
    CHECK_THAT(bench.told("coupons"), says("accept, with cautions"));
    CHECK_THAT(bench.told("history Q-1"), says("text of practice shop-rt"));
}

TEST_CASE("an exam that is made again by another text of its practice says so") {
    const OwnFiles bench;
    const std::string by = not_valid_by_own_practice(bench);
    bench.all({"exam Q-1 RT --examiner \"A. Field\" --level II --condition density=2 --found none" + by});
    CHECK_THAT(bench.told("judge Q-1"), !says("another text of practice"));
    bench.write("pr.yaml", practice_text("0.5"));
    bench.all({"exam Q-1 RT --examiner \"A. Field\" --level II --condition density=1 --found none" + by});
    CHECK_THAT(bench.told("judge Q-1"),
               says("exam 4 (RT) is held against another text of practice shop-rt than exam 2 (RT)"));
}

TEST_CASE("an exam that is withdrawn, and made again by a softened practice, is told beside the accept") {
    const OwnFiles bench;
    bench.write("pr.yaml", practice_text("2"));
    const std::string by = " --practice " + bench.file("pr.yaml");
    const std::string thin =
        "exam Q-1 RT --examiner \"A. Field\" --level II --condition density=1 --found none";
    bench.all({"register Q-1 --criteria asme-ix-tests --class \"test coupon\" --joint groove --form plate "
               "--thickness 0.25in --weld-length 8in --material steel --process GTAW",
               "exam Q-1 VT --examiner \"A. Field\" --level II --found none", thin + by,
               "withdraw Q-1 exam 2 --why \"made again\""});
    bench.write("pr.yaml", practice_text("0.5"));
    bench.all({thin + by});
    CHECK_THAT(bench.told("judge Q-1"), says("not to be called valid by its practice"));
    CHECK_THAT(bench.told("coupons"), says("accept, with cautions"));
}

TEST_CASE("what is held by own rules that were softened for it, and put back, says so wherever it is told") {
    const OwnFiles bench;
    bench.write("r.yaml", rules_text("2", "2"));
    const std::string rules = " --rules " + bench.file("r.yaml");
    const auto coupon = [&](const std::string &mark, const std::string &day, const std::string &grade) {
        bench.all(
            {"register " + mark +
                 " --welder L1 --criteria asme-ix-tests --class \"test coupon\" --joint groove --form plate "
                 "--thickness 0.25in --weld-length 8in --material steel --process GTAW --welded " +
                 day,
             "exam " + mark + " VT,RT --examiner \"A. Field\" --level II --found none --date " + day,
             "grade " + mark + " " + grade + " --by \"I. Teach\" --remark \"as it looks\""});
    };
    bench.all({"enrol L1 --name \"D. Spar\""});
    coupon("Q-1", "2026-11-01", "failed");
    coupon("Q-2", "2026-11-02", "passed");
    CHECK_THAT(bench.told("qualify Q-2 --by \"I. Teach\"" + rules), says("2 coupons must pass, 1 did"));
    bench.write("r.yaml", rules_text("1", "8"));
    bench.all({"qualify Q-2 --by \"I. Teach\"" + rules});
    CHECK_THAT(bench.told("welder L1"), !says("was changed under the same edition"));
    bench.write("r.yaml", rules_text("2", "2"));
    const std::string changed = "the text of shop-w was changed under the same edition since";
    CHECK_THAT(bench.told("welder L1"), says(changed));
    CHECK_THAT(bench.told("due --days 3650"), says(changed));
    bench.write("w.yaml", "units: in\nwork:\n  - {id: line, process: GTAW, thickness: 1}\n");
    const std::string may = bench.told("may L1 " + bench.file("w.yaml") + rules);
    CHECK_THAT(may, says(changed));
    CHECK_THAT(may, says("by shop-w edition one (own file"));
    bench.all({"verify --replay"});
}

TEST_CASE("rules for welders of one's own, softer than shipped ones, say so beside what they grant",
          "[cli]") {
    const OwnFiles bench;
    std::string text(shipped_file("welder/asme-ix.yaml"));
    put(text, "rules: asme-ix", "rules: our-ix");
    bench.write("same.yaml", text);
    put(text, "rules: our-ix", "rules: my-ix");
    put(text, "use every: 6 months", "use every: 60 months");
    put(text, "    coupons: 2\n    clause: QW-321.2", "    coupons: 1\n    clause: QW-321.2");
    bench.write("mine.yaml", text);
    bench.all(
        {"enrol L1 --name \"J. Reef\"",
         "register G-1 --criteria asme-ix-tests --class \"test coupon\" --welder L1 --joint groove "
         "--joint-form butt --form tube --seam girth --diameter 2in --thickness 0.065in --weld-thickness "
         "full --magnetic no --process GTAW --material \"stainless steel\" --position 6G --metal-group P8 "
         "--filler-group F6 --backing without --progression up --welded 2026-11-10",
         "exam G-1 VT,RT --examiner \"A. Field\" --level II --date 2026-11-11 --found none",
         "grade G-1 passed --by \"I. Teach\"",
         "qualify G-1 --rules " + bench.file("same.yaml") + " --by \"I. Teach\""});
    CHECK_THAT(bench.told("welder L1"), !says("looser"));
    const auto looser = says(
        "looser than the shipped asme-ix: retest of 1 coupon, not 2; used every 60 months, not 6 months");
    CHECK_THAT(bench.told("qualify G-1 --rules " + bench.file("mine.yaml") + " --by \"I. Teach\""), looser);
    CHECK_THAT(bench.told("welder L1"), looser);
    CHECK_THAT(bench.told("record L1 2"), looser);
    CHECK_THAT(bench.told("rules check " + bench.file("mine.yaml")), looser);
    CHECK_THAT(bench.told("rules check " + bench.file("mine.yaml") + " --json"), looser);
    CHECK_THAT(bench.told("rules check " + bench.file("same.yaml")), !says("looser"));
    CHECK_THAT(bench.told("record L1 1"), !says("looser"));

    text = shipped_file("welder/asme-ix.yaml");
    put(text, "rules: asme-ix", "rules: wide-ix");
    put(text, "by test: {1G: F, 2G: [F, H], 5G: [F, V, O], 6G",
        "by test: {1G: [F, V], 2G: [F, H], 5G: [F, V, O], 6G");
    put(text, "  - {of: backing, work: {joint: groove}}",
        "  - {of: backing, work: {joint: groove, form: tube}}");
    put(text, "    one of: [RT, mechanical]\n    test: {joint: groove}",
        "    one of: [RT, mechanical]\n    test: {joint: groove, form: plate}");
    bench.write("wide.yaml", text);
    CHECK_THAT(bench.told("qualify G-1 --rules " + bench.file("wide.yaml") + " --by \"I. Teach\""),
               says("otherwise than in the shipped asme-ix: what limits backing; range 'position-pipe'; of "
                    "which tests examination 'inside' is asked"));
}

TEST_CASE("a class that takes over a looser one under the name of a stricter is held against that name",
          "[cli]") {
    const OwnFiles bench;
    bench.write("own.yaml", "set: ours\ntitle: t\nedition: one\nextends: iso-5817\nclasses: {B: C, C: D}\n");
    CHECK_THAT(bench.told("criteria check " + bench.file("own.yaml")),
               says("class B: ") && says("looser than in the shipped iso-5817: "));
    bench.all(
        {"register S-1 --class B --joint groove --joint-form butt --form plate --thickness 3mm --material "
         "steel --process GTAW --criteria " +
             bench.file("own.yaml"),
         "exam S-1 VT --examiner \"A. Field\" --level II",
         "log S-1 \"undercut l 5 d 0.2 at 30 mm smooth\" --finish"});
    CHECK_THAT(bench.told("judge S-1"), says("class B: ") && says("looser than in the shipped iso-5817: "));
}

TEST_CASE("a check of criteria says what they allow beyond the shipped set that they look like", "[cli]") {
    const OwnFiles bench;
    std::string text(shipped_file("aws-d1.1-visual.yaml"));
    put(text, "set: aws-d1.1-visual", "set: our-visual");
    bench.write("same.yaml", text);
    put(text, "welder test: 1/32 in}", "welder test: 1/20 in}");
    bench.write("ours.yaml", text);
    const auto looser =
        says("class welder test: 1 limit looser than in the shipped aws-d1.1-visual: undercut-test");
    CHECK_THAT(bench.told("criteria check " + bench.file("ours.yaml")), looser && !says("class cyclic:"));
    CHECK_THAT(bench.told("criteria check " + bench.file("ours.yaml") + " --json"), looser);
    CHECK_THAT(bench.told("criteria check " + bench.file("same.yaml")), !says("looser"));
    CHECK_THAT(bench.told("criteria check aws-d1.1-visual"), !says("looser"));
}
