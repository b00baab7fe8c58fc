// The program as its three users run it: real processes, a real terminal's absence, a real file.
#include "catch.hpp"
#include "measure/text.hpp"
#include "temporary.hpp"

#include <cstdio>
#include <cstdlib>
#include <random>
#include <set>
#include <sys/wait.h>

using namespace beadbook::test;

namespace {

struct Ended {
    int code = 0;
    std::string out;
};

class Shell {
public:
    /// Runs a line of shell with `beadbook` and a record in its own folder; output and errors together.
    Ended operator()(const std::string &line) const {
        const std::string command = "export BEADBOOK_BOOK=" + folder_.file("book.db") +
                                    " BEADBOOK_USER='R. Quay'; cd " + folder_.file("") +
                                    "; beadbook() { " BEADBOOK_PROGRAM " \"$@\"; }; { " + line + "; } 2>&1";
        FILE *pipe = popen(("bash -c '" + escaped(command) + "'").c_str(), "r");
        Ended ended;
        char block[4096];
        for (std::size_t n; (n = std::fread(block, 1, sizeof block, pipe)) > 0;) ended.out.append(block, n);
        const int status = pclose(pipe);
        ended.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        return ended;
    }

    void write(const std::string &name, const std::string &text) const {
        write_file(folder_.file(name), text);
    }

private:
    static std::string escaped(const std::string &text) {
        std::string out;
        for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
        return out;
    }
    TemporaryFolder folder_;
};

/// Wherever the lines were wrapped.
bool has(const Ended &ended, const std::string &text) {
    std::string flat;
    for (const auto word : beadbook::words_of(ended.out)) flat += std::string(word) + " ";
    return ended.out.find(text) != std::string::npos || flat.find(text) != std::string::npos;
}

} // namespace

TEST_CASE("a technician registers, examines, logs from a pipe, judges, and mends a slip", "[journeys]") {
    const Shell sh;
    REQUIRE(sh("beadbook register T-7 --criteria ufgs-15216n --joint groove --form tube --seam girth "
               "--diameter 2in --thickness 0.065in --weld-thickness 0.065in --magnetic no --material '316L "
               "stainless steel'")
                .code == 0);
    REQUIRE(
        sh("beadbook exam T-7 VT --examiner 'A. Field' --level II --found none --condition 'light=1000 lx'")
            .code == 0);
    REQUIRE(sh("beadbook exam T-7 PT --examiner 'A. Field' --level II").code == 0);
    const Ended logged = sh("printf 'ri 0.10 at 11:50\\nri 0.19 at 3:30\\n' | beadbook log T-7 --finish");
    CHECK(logged.code == 0);
    CHECK(has(logged, "2 indications logged under exam 2"));
    const Ended judged = sh("beadbook judge T-7");
    CHECK(judged.code == 1);
    CHECK(has(judged, "size 0.19 in, limit 0.1875 in (3/16 in): over by 0.0025 in."));
    CHECK(has(judged, "read:"));
    CHECK(has(judged, "An aid, not the code"));
    CHECK_FALSE(has(judged, "\033[")); // no colour into a pipe
    CHECK(sh("beadbook correct T-7 2 'ri 0.18 at 3:30' --why 'read the scale wrong'").code == 0);
    CHECK(sh("beadbook judge T-7").code == 0);
    const Ended history = sh("beadbook history T-7");
    CHECK(has(history, "R. Quay"));
    CHECK(has(history, "read the scale wrong"));
}

TEST_CASE("an instructor sees the cohort, grades, and hands over a proof", "[journeys]") {
    const Shell sh;
    for (const char *id : {"A-1", "A-2"}) {
        REQUIRE(sh(std::string("beadbook register ") + id +
                   " --units mm --criteria iso-5817 --class C --welder L1 --joint groove --thickness 8 "
                   "--weld-length 200 --material steel --process GTAW")
                    .code == 0);
        REQUIRE(
            sh(std::string("beadbook exam ") + id + " VT --date 2026-11-20 --examiner 'A. Field' --level II")
                .code == 0);
    }
    REQUIRE(sh("beadbook log A-1 'undercut l 20 d 0.45 at 50 smooth' --finish").code == 0);
    REQUIRE(sh("beadbook log A-2 'undercut l 20 d 0.9 at 50 smooth' --finish").code == 0);
    const Ended all = sh("beadbook judge --all");
    CHECK(all.code == 1);
    CHECK(has(all, "A-1           B: reject  C: accept  D: accept"));
    CHECK(has(all, "A-2           B: reject  C: reject  D: accept"));
    CHECK(sh("beadbook grade A-1 passed").code == 0);
    CHECK(sh("beadbook grade A-2 passed").code == 3);
    CHECK(sh("beadbook grade A-2 failed --remark 'shorter arc'").code == 0);
    CHECK(has(sh("beadbook coupons | tr -s ' '"), "VT 1 reject failed"));
    CHECK(has(sh("beadbook verify --replay"), "all the same"));
    CHECK(sh("beadbook backup copy.db && beadbook coupons --book copy.db").code == 0);
    CHECK(sh("beadbook export csv indications --output found.csv && head -1 found.csv")
              .out.find("coupon,exam,number,type") != std::string::npos);
}

TEST_CASE("a welder reads where, why, the cause and the remedy", "[journeys]") {
    const Shell sh;
    sh("beadbook register A-2 --units mm --criteria iso-5817 --class C --welder L1 --joint groove "
       "--thickness 8 --weld-length 200 --material steel --process GTAW");
    sh("beadbook exam A-2 VT --date 2026-11-20 --examiner 'A. Field' --level II; "
       "beadbook log A-2 'undercut l 20 d 0.9 at 50 smooth' --finish");
    const Ended why = sh("beadbook why A-2");
    CHECK(why.code == 1);
    CHECK(has(why, "Coupon A-2, welded by L1"));
    CHECK(has(why, "Where on the weld\n                    #1"));
    CHECK(has(why, "depth 0.9 mm, limit 0.5 mm (lesser of 0.1 x t and 0.5 mm, t = 8 mm): over by 0.4 mm."));
    CHECK(has(why, "usually too hot, a long arc"));
    CHECK(has(why, "Change: less current"));
    CHECK(has(why, "It meets class D."));
}

TEST_CASE("a closed pipe, a read-only folder and an unreadable record end cleanly", "[journeys]") {
    const Shell sh;
    sh("beadbook register A-1");
    CHECK(sh("beadbook criteria show iso-5817 | head -1; exit ${PIPESTATUS[0]}").code < 128);
    CHECK(sh("beadbook coupons > /dev/full").code == 4);
    CHECK(sh("beadbook register A-2 --book /proc/nothing/book.db").code == 4);
    CHECK(sh("head -c 3000 book.db > cut.db; beadbook coupons --book cut.db").code == 4);
    CHECK(has(sh("beadbook --version"), "beadbook 0."));
}

TEST_CASE("an instructor plans, grades, qualifies, and prints what a welder holds", "[journeys]") {
    const Shell sh;
    REQUIRE(sh("printf \"rules: mil-std-1595a\\nunits: in\\nwork:\\n  - {id: frame, joint: groove, form: "
               "sheet, process: GTAW, metal group: "
               "steel, thickness: 0.040 to 0.090, position: [F, H]}\\n  - {id: skin, joint: groove, form: "
               "sheet, process: GTAW, metal group: "
               "steel, thickness: 0.25, position: F}\\n\" > work.yaml")
                .code == 0);
    const Ended plan = sh("beadbook plan work.yaml");
    CHECK(plan.code == 5); // nobody here knows what accepts a test weld by these rules
    CHECK(has(plan, "2 coupons to weld"));
    CHECK(has(plan, "Whether they would qualify cannot be said: not known here: which examinations"));
    REQUIRE(sh("beadbook enrol L1 --name 'J. Reef'").code == 0);
    REQUIRE(sh("beadbook register Q-1 --criteria mil-std-2219a --class B --welder L1 --joint groove --form "
               "sheet --process GTAW --metal-group "
               "steel --thickness 0.045in --position 2G --magnetic yes --welded $(date -d '20 days ago' +%F)")
                .code == 0);
    for (const std::string exam : {"VT", "MT"})
        REQUIRE(sh("beadbook exam Q-1 " + exam + " --examiner 'A. Field' --level II --found none").code == 0);
    CHECK(has(sh("beadbook qualify Q-1 --rules mil-std-1595a"), "is not graded"));
    REQUIRE(sh("beadbook grade Q-1 passed --remark 'fine root'").code == 0);
    REQUIRE(sh("beadbook qualify Q-1 --rules mil-std-1595a").code == 0);
    const Ended may = sh("beadbook may L1 work.yaml");
    CHECK(has(may, "cannot say: frame, by #1; not known: which examinations a test weld needs"));
    CHECK(has(may, "Covered already: frame"));
    CHECK(has(may, "thickness 0.25 in: this test allows from 0.03015 in to 0.18 in"));
    CHECK(has(may, "1 coupon to weld"));
    CHECK(has(sh("beadbook due --days 365"), "L1 #1 GTAW by mil-std-1595a valid"));
    REQUIRE(sh("beadbook record L1 1 --html page.html && grep -q 'J. Reef' page.html").code == 0);
    CHECK(sh("beadbook verify --replay").code == 0);
}

TEST_CASE("a plan that is too hard to settle says what is proven, and what went wrong", "[journeys]") {
    // 200 positions of the work, and 300 of tests that each give nine of them: no shop has such rules.
    std::string tests, works, gives;
    std::mt19937 random(7);
    for (int w = 0; w < 200; ++w) works += (w == 0 ? "W" : ", W") + std::to_string(w);
    for (int t = 0; t < 300; ++t) {
        tests += (t == 0 ? "T" : ", T") + std::to_string(t);
        gives += (t == 0 ? "T" : ", T") + std::to_string(t) + ": [W" + std::to_string(t % 200);
        std::set<unsigned long> others;
        while (others.size() < 8)
            if (const auto other = random() % 200; other != static_cast<unsigned>(t) % 200)
                others.insert(other);
        for (const auto other : others) gives += ", W" + std::to_string(other);
        gives += "]";
    }
    const Shell sh;
    sh.write("hard.yaml",
             "rules: hard\ntitle: t\nedition: e\nunits: in\nwords:\n  position: {test: [" + tests +
                 "], work: [" + works +
                 "]}\nvariables: [position]\nranges:\n  - {id: p, of: position, by test: {" + gives +
                 "}, clause: c, standing: {house: x}}\nexaminations:\n  - {id: v, one of: VT, clause: c, "
                 "standing: "
                 "{house: x}}\naccepted by:\n  - {criteria: c, clause: c, standing: {house: x}}\n"
                 "validity:\n  - {id: v, lasts: 2 years, "
                 "clause: c, standing: {house: x}}\n");
    sh.write("work.yaml", "rules: hard.yaml\nunits: in\nwork:\n  - {id: a, position: [" + works + "]}\n");
    sh.write("broken", "#!/bin/sh\nexit 3\n");
    const Ended broken = sh("chmod +x broken; BEADBOOK_SOLVER=./broken beadbook plan work.yaml");
    CHECK(broken.code == 0);
    CHECK(has(broken, "Best found, at least "));
    CHECK(has(broken, "The solver failed (exit code 3); this is the best plan found without it."));
    CHECK_FALSE(has(broken, "proven"));
    // The real one is found beside beadbook.
    const Ended real = sh("beadbook plan work.yaml");
    CHECK(real.code == 0);
    CHECK(has(real, "Best found, at least "));
    CHECK_FALSE(has(real, "missing"));
}

TEST_CASE("a PDF is made by the first converter that is there, and what goes wrong is told", "[journeys]") {
    const Shell sh;
    REQUIRE(sh("beadbook register T-1").code == 0);
    // A converter that takes a page and a file, as weasyprint does.
    sh.write("good", "#!/bin/sh\ngrep -q 'Coupon T-1' \"$1\" && printf '%%PDF-1.7 made\\n' >\"$2\"\n");
    sh.write("bad", "#!/bin/sh\necho first >&2; echo 'no font' >&2; exit 3\n");
    sh.write("odd", "#!/bin/sh\necho hello >\"$2\"\n");
    const auto with = [&](const std::string &converter, const std::string &file) {
        return sh("mkdir -p bin temporary; cp " + converter +
                  " bin/weasyprint; printf '#!/bin/sh\\nexit 4\\n' >bin/chromium; chmod +x bin/*; "
                  "TMPDIR=$PWD/temporary PATH=$PWD/bin:$PATH " +
                  "beadbook print coupon T-1 --pdf " + file);
    };
    CHECK(with("good", "a.pdf").code == 0);
    CHECK(has(sh("cat a.pdf"), "%PDF-1.7 made"));
    const Ended failed = with("bad", "b.pdf");
    CHECK(failed.code == 3);
    CHECK(has(failed, "weasyprint made no PDF; it said: no font; chromium made no PDF"));
    CHECK(has(with("odd", "c.pdf"), "weasyprint made something else than a PDF; chromium made no PDF"));
    CHECK(sh("ls b.pdf c.pdf").code != 0);
    CHECK(with("good", "a.pdf").code == 3);   // never written over
    CHECK(sh("ls -A temporary").out.empty()); // nothing is left behind
}
