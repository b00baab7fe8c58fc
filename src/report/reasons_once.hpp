#pragma once

#include "operations/judging.hpp"
#include "report/document.hpp"
#include "report/sentence.hpp"

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// "#4, #5 and #9"
std::string tags_of(const std::set<int> &numbers);

/// The reasons of all classes of a verdict, each told once, with the classes that it holds for.
class ReasonsOnce {
public:
    ReasonsOnce(const Case &c, const Judged &judged);

    /// Those of class `k`, of which there are `all`: first what rejects it and was told of another class,
    /// then what was not told yet, then how many others were.
    void add(Document &doc, std::size_t k, std::size_t all);

private:
    using Said = std::pair<std::string, std::string>; ///< sentence, and what it rests on
    struct Given {
        Said said;
        bool rejects;
        std::vector<int> indications;
    };
    std::vector<std::vector<Given>> of_class_;
    std::map<Said, std::vector<std::string>> classes_;
    std::set<Said> told_;
};

} // namespace beadbook
