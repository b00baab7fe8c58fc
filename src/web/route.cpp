#include "web/route.hpp"

namespace beadbook {
namespace {

std::vector<std::string> parts(const std::string &path) {
    std::vector<std::string> out;
    std::size_t begin = 0;
    while (begin < path.size()) {
        const std::size_t end = std::min(path.find('/', begin), path.size());
        out.push_back(path.substr(begin, end - begin));
        begin = end + 1;
    }
    if (path.ends_with("/")) out.emplace_back();
    return out;
}

} // namespace

std::optional<std::map<std::string, std::string>> words_by(const std::string &pattern,
                                                           const std::string &path) {
    const auto wanted = parts(pattern), given = parts(path);
    if (wanted.size() != given.size()) return std::nullopt;
    std::map<std::string, std::string> out;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        if (wanted[i].starts_with(":") && !given[i].empty())
            out[wanted[i].substr(1)] = given[i];
        else if (wanted[i] != given[i])
            return std::nullopt;
    }
    return out;
}

const std::vector<PageFamily> &page_families() {
    static const std::vector<PageFamily> all{
        examine_pages(), coupon_pages(),    photo_pages(),  measuring_pages(),
        exam_pages(),    log_pages(),       person_pages(), class_pages(),
        grading_pages(), summary_pages(),   welder_pages(), keeper_pages(),
        people_pages(),  catalogue_pages(), copy_pages(),   account_pages()};
    return all;
}

} // namespace beadbook
