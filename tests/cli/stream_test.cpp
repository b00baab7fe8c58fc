// Coupons judged from standard input, by one process and by many.
#include "catch.hpp"
#include "cli/json.hpp"
#include "cli/run.hpp"
#include "temporary.hpp"

#include <cstdlib>
#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Lines of forty coupons, of which every fourth has a crack.
std::string forty(const Program &run) {
    std::string coupons = "coupon,criteria,class,joint,thickness,weld-length,magnetic,material,process\n",
                exams = "coupon,exam,method,date,examiner,level,found,finished on,finished by\n",
                finds = "coupon,exam,type,size,at\n";
    for (int n = 1; n <= 40; ++n) {
        const std::string mark = "C-" + std::to_string(n);
        coupons += mark + ",mil-hdbk-1890-table-3,2,groove,0.150 in,8 in,yes,steel,GTAW\n";
        const char *const methods[] = {"VT", "MT", "RT"};
        for (int e = 0; e < 3; ++e)
            exams += mark + "," + std::to_string(e + 1) + "," + methods[e] + ",2026-11-02,A. Field,II," +
                     (e == 2 && n % 4 == 0 ? "1" : "0") + ",2026-11-02,A. Field\n";
        if (n % 4 == 0) finds += mark + ",3,crack,0.1 in,3 in\n";
    }
    const std::pair<const char *, std::string> tables[] = {
        {"coupons", coupons}, {"exams", exams}, {"indications", finds}};
    for (const auto &[table, csv] : tables) run.ok({"import", "csv", table}, csv);
    return run.ok({"export", "lines"});
}

/// Marks and verdicts, in the order of the lines.
std::string told(const std::string &lines) {
    std::string out;
    std::istringstream in(lines);
    for (std::string line; std::getline(in, line);) {
        const auto one = nlohmann::json::parse(line);
        out += one["coupon"].get<std::string>() + " " + one["verdict"].get<std::string>() + "\n";
    }
    return out;
}

} // namespace

TEST_CASE("a line in is a line out, and the worst of them is the exit code") {
    const Program run;
    const std::string lines = forty(run);
    const Run all = run({"judge", "--stream"}, lines);
    CHECK(all.code == 1);
    const std::string verdicts = told(all.out);
    CHECK(std::count(verdicts.begin(), verdicts.end(), '\n') == 40);
    CHECK(verdicts.starts_with("C-1 accept\nC-2 accept\nC-3 accept\nC-4 reject\n"));
    CHECK(run({"judge", "--stream"}, lines.substr(0, lines.find('\n'))).code == 0);
    for (const char *none : {"", "\n \n"}) CHECK(run({"judge", "--stream"}, none).code == 5); // none to judge

    const Run bad = run({"judge", "--stream"}, "{}\n\n" + lines.substr(0, lines.find('\n')));
    CHECK(bad.code == 3);
    CHECK(bad.out.starts_with("{\"error\":\"a coupon needs an \\\"id\\\" that is text\",\"line\":1}\n"));
    CHECK_THAT(bad.out, says("\"line\":3,"));
    CHECK(run({"judge", "T-1", "--stream"}, lines).code == 2);
    CHECK(run({"judge", "--stream", "--cohort", "x"}, lines).code == 2);
}

TEST_CASE("many processes share a stream, and give the same in the same order") {
    const Program run;
    const std::string lines = forty(run);
    write_file(run.file("lines"), lines);
    const std::string command = "parallel --will-cite --pipe -k -N 3 -j 2 " BEADBOOK_PROGRAM
                                " judge --stream <'" +
                                run.file("lines") + "' >'" + run.file("out") + "'";
    // How many of its jobs did not end with 0: those with a crack.
    CHECK(WEXITSTATUS(std::system(command.c_str())) == 10);
    CHECK(told(read_file(run.file("out"))) == told(run({"judge", "--stream"}, lines).out));
}
