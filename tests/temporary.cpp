#include "temporary.hpp"

#include <atomic>
#include <fstream>
#include <iterator>
#include <unistd.h>

namespace beadbook::test {

TemporaryFolder::TemporaryFolder() {
    static std::atomic<int> next{0};
    // A short name: some of what is tested is broken into lines, where the path takes its part of one.
    path_ = std::filesystem::temp_directory_path() /
            ("bb-" + std::to_string(getpid()) + "-" + std::to_string(next++));
    std::filesystem::create_directories(path_);
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::permissions(path_, std::filesystem::perms::owner_all, ignored);
    std::filesystem::remove_all(path_, ignored);
}

std::string read_file(const std::string &path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void write_file(const std::string &path, const std::string &bytes) {
    std::ofstream out(path, std::ios::binary);
    out << bytes;
}

} // namespace beadbook::test
