// The technician's first page: what is to be examined.
#include "measure/text.hpp"
#include "operations/to_examine.hpp"
#include "web/coupon_parts.hpp"
#include "web/page.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::size_t most_shown = 200;

/// The same exam of every coupon that needs it and has none begun, where there are several.
std::string whole_stacks(const Visit &visit, const ExamsToDo &all) {
    std::string out;
    for (const auto &method : method_table) {
        const std::string name(method.name);
        std::vector<std::string> marks;
        for (const auto &one : all.coupons) {
            const auto may = one.to_begin();
            if (std::find(may.begin(), may.end(), name) != may.end()) marks.push_back(one.coupon.id);
        }
        if (marks.size() > 1)
            out += button_to(visit,
                             coupon_path(marks.front()) + "/exam?method=" + url_word(name) +
                                 "&coupons=" + url_word(joined(marks, ",")),
                             "begin " + name + " of all " + std::to_string(marks.size()));
    }
    return out;
}

Answer home(Visit &visit) {
    std::string main = "<h1>To be examined</h1>\n<p class=\"deeds\">" +
                       button_to(visit, "/register", "Register a coupon") + "</p>\n";
    if (!visit.has_record()) {
        main += "<p>Nothing is on record yet. Register the first coupon, and the record begins.</p>";
        return page_of(visit, {"To be examined", main, "/"});
    }
    const ExamsToDo all = visit.bench().exam_board().look(visit.office(), visit.person(), most_shown);
    if (all.coupons.empty())
        main += "<p>Nothing waits: every coupon has what its criteria ask, or is graded.</p>";
    main += "<p class=\"deeds\">" + whole_stacks(visit, all) + "</p>\n<ul class=\"coupons\">\n";
    for (const auto &one : all.coupons)
        main += "<li" + std::string(one.mine ? " class=\"mine\"" : "") + "><h2>" +
                link_to(coupon_path(one.coupon.id), one.coupon.id) + "</h2><p>" +
                escaped(about(visit.office(), one.coupon)) + "</p><p class=\"deeds\">" +
                exam_buttons(visit, one) +
                (one.unsaid ? button_to(visit, coupon_path(one.coupon.id), "cannot say: see what is missing")
                            : "") +
                "</p></li>\n";
    main += "</ul>\n";
    if (all.all > all.coupons.size())
        main += "<p>" + std::to_string(all.all - all.coupons.size()) + " more wait.</p>";
    return page_of(visit, {"To be examined", main, "/"});
}

/// How far the record is, in a word: pages ask it to learn that others entered something.
Answer record_head(Visit &visit) {
    Answer out{200, "text/plain; charset=utf-8"};
    if (visit.has_record()) visit.office();
    out.body = visit.head();
    return out;
}

} // namespace

PageFamily examine_pages() { return {"Examine", "/", {{"GET", "/", home}, {"GET", "/head", record_head}}}; }

} // namespace beadbook
