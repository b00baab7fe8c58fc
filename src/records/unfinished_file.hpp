#pragma once

#include "records/files.hpp"

namespace beadbook {

/// A new, empty file beside the one that is to come, which goes unless it was given its name: so that whoever
/// looks for that one finds it whole or not at all.
class UnfinishedFile {
public:
    /// Throws StoreError.
    UnfinishedFile(std::string to, Readers readers);
    ~UnfinishedFile();
    UnfinishedFile(const UnfinishedFile &) = delete;
    UnfinishedFile &operator=(const UnfinishedFile &) = delete;

    const std::string &path() const { return path_; }

    /// Gives it its name once all of it is on the disk, never that of a file that is there: false where one
    /// is there, also one that came meanwhile. Throws StoreError.
    bool finish();

private:
    std::string to_, path_;
};

} // namespace beadbook
