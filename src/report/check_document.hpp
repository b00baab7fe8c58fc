#pragma once

#include "operations/reading.hpp"
#include "report/document.hpp"

#include <algorithm>

namespace beadbook {

/// Every mistake and doubt of a file, with its line and a mark under the place.
template <class T>
Document issues_document(const Checked<T> &checked) {
    Document out;
    out.title = checked.name;
    for (const auto &issue : told_once(checked.issues))
        out.add(Drawing{print(issue, checked.name, checked.text)});
    return out;
}

/// The outcome of a check in a line: so many rules (or ranges) hold, or so many mistakes keep it from being
/// used.
template <class T>
Document check_document(const Checked<T> &checked, const std::string &what, std::size_t count) {
    Document out;
    out.title = checked.name;
    const auto once = told_once(checked.issues);
    const auto mistakes = std::count_if(once.begin(), once.end(),
                                        [](const Issue &issue) { return issue.severity == Severity::error; });
    return out.line(checked.name + ": " +
                    (checked.value
                         ? std::to_string(count) + " " + (count == 1 ? what + " holds" : what + "s hold")
                         : std::to_string(mistakes) + (mistakes == 1 ? " mistake" : " mistakes")));
}

} // namespace beadbook
