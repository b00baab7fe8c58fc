#pragma once

#include <string>

namespace beadbook {

/// A folder that is there whole or not at all: it is filled under another name beside, and goes unless it is
/// finished.
class NewFolder {
public:
    /// Throws DataError: something is called so already, or there is no place for it.
    explicit NewFolder(std::string to);
    ~NewFolder();
    NewFolder(const NewFolder &) = delete;
    NewFolder &operator=(const NewFolder &) = delete;

    /// The path of a file in it, until it is finished.
    std::string file(const std::string &name) const { return path_ + "/" + name; }
    /// Gives it its name, durably. Throws DataError where something came there meanwhile.
    void finish();

private:
    void refuse_if_there() const;
    std::string to_, path_;
};

} // namespace beadbook
