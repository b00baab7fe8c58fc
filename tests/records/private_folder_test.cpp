#include "catch.hpp"
#include "measure/refusal.hpp"
#include "records/files.hpp"
#include "records/private_folder.hpp"

#include <filesystem>
#include <optional>
#include <stdlib.h>

using namespace beadbook;

TEST_CASE("a private folder is its owner's, another one each time, and goes with what lies in it") {
    std::optional<PrivateFolder> folder("a test"), other("a test");
    const std::string file = folder->file("page.html");
    CHECK(file != other->file("page.html"));
    write_new_file(file, "x");
    const auto path = std::filesystem::path(file).parent_path();
    CHECK(std::filesystem::status(path).permissions() == std::filesystem::perms::owner_all);
    folder.reset();
    CHECK_FALSE(std::filesystem::exists(path));
}
