#include "records/unfinished_file.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <random>
#include <unistd.h>

namespace beadbook {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void cannot_write(const std::string &path, int why) {
    throw StoreError(visible(path) +
                     ": cannot be written: " + std::error_code(why, std::generic_category()).message());
}

} // namespace

UnfinishedFile::UnfinishedFile(std::string to, Readers readers) : to_(std::move(to)) {
    std::random_device any;
    // Less what the user's mask takes, as SQLite makes its files.
    const mode_t mode = readers == Readers::owner ? 0600 : 0644;
    for (int tries = 0; tries < 100; ++tries) {
        path_ = to_ + ".unfinished-" + std::to_string(any());
        const int file = open(path_.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        const int why = errno;
        if (file >= 0) {
            close(file);
            return;
        }
        if (why != EEXIST) cannot_write(to_, why);
    }
    cannot_write(to_, EEXIST);
}

UnfinishedFile::~UnfinishedFile() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove(path_, ignored);
}

bool UnfinishedFile::finish() {
    if (!brought_to_disk(path_)) cannot_write(to_, errno);
    bool named = link(path_.c_str(), to_.c_str()) == 0;
    const int why = errno;
    if (!named && why != EEXIST && access(to_.c_str(), F_OK) != 0) // a stick's file system has no links
        named = std::rename(path_.c_str(), to_.c_str()) == 0;
    if (!named && why == EEXIST) return false;
    if (!named) cannot_write(to_, why);
    std::error_code ignored;
    fs::remove(path_, ignored);
    path_.clear();
    bring_name_to_disk(to_);
    return true;
}

} // namespace beadbook
