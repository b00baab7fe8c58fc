#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// What an operation gives back, with the doubts that travel with it: no shell can forget them.
template <class T>
struct Done {
    T value;
    std::vector<std::string> notes;
};

/// Each note once, however many parts it holds for.
inline void add_notes(std::vector<std::string> &all, std::vector<std::string> more) {
    for (auto &note : more)
        if (std::find(all.begin(), all.end(), note) == all.end()) all.push_back(std::move(note));
}

} // namespace beadbook
