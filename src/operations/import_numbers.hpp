#pragma once

#include <set>
#include <string>

namespace beadbook {

/// Numbers of exams or indications on one coupon as a file gives them, in any order: each once, and none that
/// was used before. What has none gets the next after all that were given.
class Numbers {
public:
    Numbers() = default;
    Numbers(std::string what, std::string coupon, int used)
        : what_(std::move(what)), coupon_(std::move(coupon)), used_(used), highest_(used) {}

    /// Takes a number of the file, or nothing for 0. Throws DataError if it was used.
    void claim(int number);
    /// Gives a number to what has none, once all that the file gives are claimed.
    void give(int &number) {
        if (number == 0) number = ++highest_;
    }

private:
    std::string what_, coupon_;
    int used_ = 0, highest_ = 0;
    std::set<int> claimed_;
};

} // namespace beadbook
