#pragma once

#include "operations/marks.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// Notes of many coupons: each once, in the order in which they came, behind the marks that it is of.
class NotesByMark {
public:
    void take(const std::string &mark, std::vector<std::string> notes) {
        for (auto &note : notes) {
            auto &marks = marks_of(std::move(note));
            if (std::find(marks.begin(), marks.end(), mark) == marks.end()) marks.push_back(mark);
        }
    }
    /// What is the same of all of so many coupons stands without their marks.
    std::vector<std::string> told(std::size_t all = 0) const {
        std::vector<std::string> out;
        for (const auto &[note, marks] : notes_)
            out.push_back(marks.size() == all ? note : marks_text(marks) + ": " + note);
        return out;
    }

private:
    std::vector<std::string> &marks_of(std::string note) {
        for (auto &[told, marks] : notes_)
            if (told == note) return marks;
        notes_.emplace_back(std::move(note), std::vector<std::string>{});
        return notes_.back().second;
    }
    std::vector<std::pair<std::string, std::vector<std::string>>> notes_;
};

} // namespace beadbook
