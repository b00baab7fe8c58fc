#include "report/map_marks.hpp"

#include <algorithm>

namespace beadbook {

const std::vector<std::pair<MappedFind::State, std::string>> &state_names() {
    static const std::vector<std::pair<MappedFind::State, std::string>> all{
        {MappedFind::State::rejects, "rejects"},
        {MappedFind::State::open, "cannot say"},
        {MappedFind::State::kept, "does not reject"},
        {MappedFind::State::noted, "found, not judged here"}};
    return all;
}

Role role_of(MappedFind::State state) {
    return state == MappedFind::State::rejects ? Role::rejects
           : state == MappedFind::State::open  ? Role::open
                                               : Role::kept;
}

std::string label_of(const MappedFind &find) {
    return "#" + std::to_string(find.number) + (find.state == MappedFind::State::open ? "?" : "");
}

double label_width(const MappedFind &find, double size) {
    return text_width(label_of(find), size) * (find.state == MappedFind::State::rejects ? 1.1 : 1) +
           (find.state == MappedFind::State::rejects ? 6 : 2);
}

void add_label(PictureGroup &to, const MappedFind &find, double left, double base, double size) {
    const double wide = label_width(find, size);
    const bool rejects = find.state == MappedFind::State::rejects;
    if (rejects) to.shapes.emplace_back(PictureBox{Role::kept, left, base - size, wide, size + 3});
    to.shapes.emplace_back(
        PictureText{left + wide / 2, base - 1, size, label_of(find), Anchor::middle, rejects, false});
}

void add_mark(PictureGroup &to, const MappedFind &find, double from, double until, double middle, double high,
              bool whole) {
    const double least = 4;
    const double wide = std::max(until - from, least);
    const double left = until - from < least ? (from + until - least) / 2 : from;
    if (find.round && whole)
        to.shapes.emplace_back(
            PictureEllipse{role_of(find.state), left + wide / 2, middle, wide / 2, high / 2});
    else
        to.shapes.emplace_back(PictureBox{role_of(find.state), left, middle - high / 2, wide, high});
}

} // namespace beadbook
