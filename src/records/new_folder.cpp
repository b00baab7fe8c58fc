#include "records/new_folder.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "records/files.hpp"

#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <system_error>

namespace beadbook {
namespace {

namespace fs = std::filesystem;

DataError not_made(const std::string &to, int why) {
    return DataError(visible(to) +
                     ": cannot be made: " + std::error_code(why, std::generic_category()).message());
}

} // namespace

void NewFolder::refuse_if_there() const {
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(to_, ignored)))
        throw DataError(visible(to_) + ": is there already; give the new folder another name");
}

NewFolder::NewFolder(std::string to) : to_(std::move(to)) {
    while (to_.size() > 1 && to_.ends_with('/')) to_.pop_back();
    refuse_if_there();
    path_ = to_ + ".unfinished-XXXXXX";
    if (mkdtemp(path_.data()) == nullptr) throw not_made(to_, errno);
}

NewFolder::~NewFolder() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
}

void NewFolder::finish() {
    refuse_if_there();
    if (std::rename(path_.c_str(), to_.c_str()) != 0) throw not_made(to_, errno);
    path_.clear();
    bring_name_to_disk(to_);
}

} // namespace beadbook
