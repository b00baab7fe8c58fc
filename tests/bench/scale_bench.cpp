#include "scale_bench.hpp"

#include "large_record.hpp"
#include "temporary.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <string>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace beadbook::bench {
namespace {

constexpr int finds_each = 5;

struct Cost {
    double seconds = 0, processor = 0, megabytes = 0;
    bool done = false; ///< it ended by itself; a verdict that is no accept has a code of its own
};

double seconds_in(const timeval &time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
}

/// One run of the program, its output thrown away.
Cost cost_of(std::vector<std::string> words) {
    Cost out;
    rusage used{};
    int status = -1;
    out.seconds = seconds_of([&] {
        const pid_t child = fork();
        if (child == 0) {
            const int nowhere = open("/dev/null", O_WRONLY | O_CLOEXEC);
            dup2(nowhere, STDOUT_FILENO);
            dup2(nowhere, STDERR_FILENO);
            std::vector<char *> argv{const_cast<char *>(BEADBOOK_PROGRAM)};
            for (auto &word : words) argv.push_back(word.data());
            argv.push_back(nullptr);
            execv(BEADBOOK_PROGRAM, argv.data());
            _exit(127);
        }
        wait4(child, &status, 0, &used);
    });
    out.processor = seconds_in(used.ru_utime) + seconds_in(used.ru_stime);
    out.megabytes = static_cast<double>(used.ru_maxrss) / 1024;
    out.done = WIFEXITED(status) && WEXITSTATUS(status) != 127;
    return out;
}

/// Every row of every coupon as the program asks for it, and nothing done with it.
double seconds_of_bare_sqlite(const std::string &book) {
    SQLite::Database db(book, SQLite::OPEN_READONLY);
    const auto read = [&] {
        SQLite::Statement rows(db, "SELECT seq, at, who, kind, subject, exam, number, supersedes, reason, "
                                   "body, previous, hash FROM entry WHERE family = 'coupon' ORDER BY family, "
                                   "subject, seq");
        std::size_t bytes = 0;
        while (rows.executeStep())
            for (int column = 0; column < rows.getColumnCount(); ++column)
                bytes += static_cast<std::size_t>(rows.getColumn(column).getBytes());
        if (bytes == 0) std::printf("scale    nothing was read\n");
    };
    read(); // warms it up
    return processor_seconds_of(read);
}

} // namespace

void at_scale(Figures &figures, int coupons) {
    const test::TemporaryFolder folder;
    const std::string book = folder.file("book.db"), any = "C-" + std::to_string(coupons / 2 + 1);
    setenv("BEADBOOK_BOOK", book.c_str(), 1);
    bool filled = false;
    const double filling = seconds_of([&] { filled = fill_record(folder.file(""), coupons, finds_each); });
    if (!filled) return;
    const std::string of = "of " + std::to_string(coupons) + " coupons";
    figures.add("scale/filled by imports", filling, "s", of);
    figures.add("scale/record", static_cast<double>(std::filesystem::file_size(book)) / 1e6, "MB");
    figures.add("scale/bare SQLite, all rows", seconds_of_bare_sqlite(book), "s");
    const std::vector<std::vector<std::string>> calls{
        {"show", any},
        {"judge", any},
        {"log", any, "gas pore 0.01 at 7", "--exam", "1"}, // a refusal costs as much
        {"coupons", "--newest", "40"},
        {"coupons", "--newest", "40", "--welder", "L7"},
        {"coupons", "--newest", "40", "--cohort", "class-7"},
        {"coupons", "--newest", "40", "--verdict", "reject"},
        {"due"},
        {"coupons"},
        {"coupons", "--json"},
        {"summary"},
        {"judge", "--all", "--no-record"},
        {"judge", "--all"},
        {"judge", "--all"}, // nothing is new
        {"rejudge", "iso-5817-2023", "--as-class", "C"},
        {"export", "lines", "--output", folder.file("out.lines")},
        {"verify"},
        {"backup", folder.file("backup.db")},
    };
    std::string before;
    for (const auto &words : calls) {
        std::string name = "scale/" + words.front();
        for (std::size_t n = 1; n < words.size(); ++n)
            if (words[n] != any && words[n].front() != '/') name += " " + words[n];
        if (name == before) name += " again";
        before = name;
        cost_of({"show", any}); // so that none pays for opening it first
        const Cost cost = cost_of(words);
        if (!cost.done) std::printf("%s could not be run\n", name.c_str());
        figures.add(name + ", wall", cost.seconds, "s", of);
        figures.add(name + ", processor", cost.processor, "s");
        figures.add(name + ", memory", cost.megabytes, "MB; bar 100");
    }
    figures.ratio("scale/judge --all --no-record, processor", "scale/bare SQLite, all rows", "; bar 2.5");
    unsetenv("BEADBOOK_BOOK");
}

} // namespace beadbook::bench
