// The technician's first page: what is to be examined.
#include "measure/text.hpp"
#include "operations/to_examine.hpp"
#include "web/coupon_parts.hpp"
#include "web/page.hpp"

namespace beadbook {
namespace {

constexpr std::size_t most_shown = 200;

Answer home(Visit &visit) {
    std::string main = "<h1>To be examined</h1>\n<p class=\"deeds\">" +
                       button_to("/register", "Register a coupon") + "</p>\n";
    if (!visit.has_record()) {
        main += "<p>Nothing is on record yet. Register the first coupon, and the record begins.</p>";
        return page_of(visit, {"To be examined", main, "/"});
    }
    const ExamsToDo all = exams_to_do(visit.office(), visit.person(), most_shown);
    if (all.coupons.empty()) main += "<p>Nothing waits: every coupon has what its criteria ask.</p>";
    main += "<ul class=\"coupons\">\n";
    for (const auto &one : all.coupons)
        main += "<li" + std::string(one.mine ? " class=\"mine\"" : "") + "><h2>" +
                link_to(coupon_path(one.coupon.id), one.coupon.id) + "</h2><p>" + escaped(about(one.coupon)) +
                "</p><p class=\"deeds\">" + exam_buttons(one) + "</p></li>\n";
    main += "</ul>\n";
    if (all.all > all.coupons.size())
        main += "<p>" + std::to_string(all.all - all.coupons.size()) + " more wait.</p>";
    return page_of(visit, {"To be examined", main, "/"});
}

} // namespace

PageFamily examine_pages() { return {"Examine", "/", {{"GET", "/", home}}}; }

} // namespace beadbook
