#include "web/class_parts.hpp"

#include "web/page.hpp"
#include "web/refusal_page.hpp"
#include "web/selection_fields.hpp"

namespace beadbook {

std::string grading_path(const std::string &mark) { return class_path + "/coupon/" + url_word(mark); }
std::string learner_path(const std::string &welder) { return class_path + "/learner/" + url_word(welder); }

std::string class_ways(const Visit &visit, const std::string &query) {
    return "<p class=\"deeds\">" +
           button_to(visit, class_path + "/accepted" + query, "Grade what is accepted") +
           button_to(visit, class_path + "/summary" + query, "What goes wrong") +
           button_to(visit, class_path + "/learners" + query, "A page for each learner") + "</p>\n";
}

Answer refused_selection(Visit &visit, const std::string &title, const std::string &path, const Refusal &e,
                         const std::string &more) {
    if (e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
    return page_of(visit, {title,
                           "<h1>" + escaped(title) + "</h1>\n" +
                               selection_form(path, visit.request.query, visit.catalogue(), &e, more),
                           class_path,
                           {},
                           status_of(e, true)});
}

} // namespace beadbook
