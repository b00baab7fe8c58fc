#include "large_record.hpp"

#include "temporary.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <vector>

namespace beadbook::bench {
namespace {

using namespace beadbook::test;

constexpr int templates = 40;     ///< coupons in the record that is multiplied
constexpr int in_a_file = 40'000; ///< coupons: a file that is imported must not be too large

/// In CSV, as a spreadsheet would bring them.
void write_tables(const std::string &folder, int finds_each) {
    std::string plain =
        "coupon,criteria,class,joint,thickness,weld-length,magnetic,material,process,welder,cohort\n";
    std::string exams = "coupon,exam,method,date,examiner,level,found,finished on,finished by\n";
    std::string finds = "coupon,exam,number,type,size,at\n";
    for (int n = 0; n < templates; ++n) {
        const std::string mark = "C-" + std::to_string(n);
        const std::string of = ",2026-01-10,A. Field,II,", by = ",2026-01-10,A. Field\n";
        plain += mark + ",mil-hdbk-1890-table-3,2,groove,0.150 in,8 in,yes,steel,GTAW,L0,class-" +
                 std::to_string(n) + "\n";
        // Where there are several finds, they are of the method that the set speaks of.
        exams += mark + ",1," + (finds_each > 1 ? "RT" : "VT") + of + std::to_string(finds_each) + by;
        if (n % 4 != 0)
            exams += mark + ",2,MT" + of + "0" + by + mark + ",3," + (finds_each > 1 ? "VT" : "RT") + of +
                     "0" + by;
        for (int find = 1; find <= finds_each; ++find)
            finds += mark + ",1," + std::to_string(find) + ",gas pore,0.0" +
                     std::to_string(find == 1 ? 1 + n % 9 : 1) + " in," + std::to_string(2 + find) + " in\n";
    }
    write_file(folder + "coupons.csv", plain);
    write_file(folder + "exams.csv", exams);
    write_file(folder + "indications.csv", finds);
}

/// The coupons from one number to another.
void multiply(const std::string &from, const std::string &to, int first, int last) {
    std::vector<nlohmann::json> all;
    std::istringstream lines(read_file(from));
    for (std::string line; std::getline(lines, line);) all.push_back(nlohmann::json::parse(line));
    std::ofstream out(to, std::ios::binary);
    for (int n = first; n <= last; ++n) {
        nlohmann::json &one = all[static_cast<std::size_t>(n) % all.size()];
        one["id"] = "C-" + std::to_string(n);
        one["fields"]["welder"] = "L" + std::to_string(n % 500);
        out << one.dump() << '\n';
    }
}

} // namespace

bool program(const std::string &words) {
    return std::system((BEADBOOK_PROGRAM " " + words + " >/dev/null").c_str()) == 0;
}

bool fill_record(const std::string &folder, int coupons, int finds_each) {
    const std::string small = " --book '" + folder + "small.db'";
    const auto file = [&](const std::string &name) { return "'" + folder + name + "'"; };
    write_tables(folder, finds_each);
    for (const std::string table : {"coupons", "exams", "indications"})
        if (!program("import csv " + table + " --file " + file(table + ".csv") + small)) {
            std::printf("record   could not be made: %s\n", table.c_str());
            return false;
        }
    bool made = program("export lines --output " + file("small.lines") + small);
    for (int first = 1; made && first <= coupons; first += in_a_file) {
        multiply(folder + "small.lines", folder + "large.lines", first,
                 std::min(first + in_a_file - 1, coupons));
        made = program("import lines --sure --file " + file("large.lines"));
    }
    if (!made) std::printf("record   could not be made: lines\n");
    return made;
}

} // namespace beadbook::bench
