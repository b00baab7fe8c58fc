#pragma once

#include "web/message.hpp"

#include <functional>
#include <map>
#include <optional>

namespace beadbook {

class Visit;

/// One page or one deed: what is asked how, and what answers. `:mark` in a pattern stands for one word of the
/// path.
struct Route {
    std::string method;  ///< GET (and HEAD), POST
    std::string pattern; ///< /coupon/:mark/log
    std::function<Answer(Visit &)> handler;
    std::string list = {}; ///< the field of the form that may come more than once
};

/// Pages that belong together. With a title they stand in the navigation.
struct PageFamily {
    std::string title, path;
    std::vector<Route> routes;
};

/// The words of a path that a pattern names; nothing if the path is not of that pattern.
std::optional<std::map<std::string, std::string>> words_by(const std::string &pattern,
                                                           const std::string &path);

// One function a family, each in the file that is named after it.
PageFamily examine_pages();
PageFamily coupon_pages();
PageFamily photo_pages();
PageFamily measuring_pages();
PageFamily exam_pages();
PageFamily log_pages();
PageFamily person_pages();
PageFamily class_pages();
PageFamily grading_pages();
PageFamily summary_pages();
PageFamily welder_pages();
PageFamily keeper_pages();
PageFamily people_pages();
PageFamily catalogue_pages();
PageFamily copy_pages();
PageFamily account_pages();

/// All of them.
const std::vector<PageFamily> &page_families();

} // namespace beadbook
