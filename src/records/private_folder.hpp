#pragma once

#include <filesystem>
#include <string>

namespace beadbook {

/// A folder among the system's temporary ones that nobody else reads, gone with what lies in it.
class PrivateFolder {
public:
    /// `purpose` says in a refusal what it would have been for. Throws StoreError.
    explicit PrivateFolder(const std::string &purpose);
    ~PrivateFolder();
    PrivateFolder(const PrivateFolder &) = delete;
    PrivateFolder &operator=(const PrivateFolder &) = delete;

    std::string file(const std::string &name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

} // namespace beadbook
