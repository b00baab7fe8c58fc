// The command that opens the bench.
#include "catch.hpp"
#include "run.hpp"
#include "schema.hpp"
#include "temporary.hpp"

#include <cstdlib>
#include <filesystem>

using namespace beadbook::test;

TEST_CASE("the bench prints a link that lets a browser in, and ends when it is told to") {
    const Program run;
    const Run text = run({"bench", "--port", "any", "--as", "A. Field"});
    CHECK(text.code == 0);
    CHECK(text.out.starts_with("http://127.0.0.1:"));
    CHECK(text.out.find("/enter?link=") != std::string::npos);
    CHECK(text.out.find("A. Field is at the bench") != std::string::npos);
    const Run json = run({"bench", "--port", "any", "--json"});
    CHECK(schema_faults("bench", json.out) == "");
    CHECK(json.out.starts_with("{\"by\":\"tester\",\"link\":\"http://127.0.0.1:"));
    CHECK(json.out.find('\n') == json.out.size() - 1);
}

TEST_CASE("the bench refuses a port that is none") {
    const Program run;
    CHECK(run({"bench", "--port", "65536"}).code == 2);
    CHECK(run({"bench", "--port", "x"}).code == 2);
}

TEST_CASE("the program becomes the one with the pages that lies beside it, and says where there is none") {
    const TemporaryFolder folder;
    const auto code_of = [&](const std::string &program) {
        const std::string words = program + " bench --host tablets.invalid --nginx " + folder.file("door") +
                                  " > " + folder.file("out") + " 2> " + folder.file("err");
        const int status = std::system(words.c_str());
        return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    };
    CHECK(code_of(BEADBOOK_PROGRAM) == 0);
    CHECK(read_file(folder.file("out")).find("tablets.invalid") != std::string::npos);
    const std::string alone = folder.file("beadbook");
    std::filesystem::copy_file(BEADBOOK_PROGRAM, alone);
    CHECK(code_of(alone) == 4);
    CHECK(read_file(folder.file("err")).find("no program beadbook-pages beside beadbook") !=
          std::string::npos);
}
