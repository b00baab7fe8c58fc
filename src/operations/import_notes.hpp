#pragma once

#include "measure/text.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// Doubts of a long file: the first ones, and how many more.
class ImportNotes {
public:
    void add(const std::string &coupon, const std::vector<std::string> &notes) {
        for (const auto &note : notes)
            if (++count_ <= most_) shown_.push_back("coupon " + coupon + ": " + note);
    }
    std::vector<std::string> all() && {
        if (count_ > most_) shown_.push_back("and " + counted(count_ - most_, "more such note"));
        return std::move(shown_);
    }

private:
    static constexpr std::size_t most_ = 20;
    std::vector<std::string> shown_;
    std::size_t count_ = 0;
};

} // namespace beadbook
