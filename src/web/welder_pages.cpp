// The welder's pages: my coupons, one page a coupon, what I am qualified for and until when.
#include "measure/text.hpp"
#include "operations/earlier.hpp"
#include "operations/looking.hpp"
#include "operations/record_sheet.hpp"
#include "operations/standing.hpp"
#include "report/after_test_document.hpp"
#include "report/coupon_document.hpp"
#include "report/earlier_document.hpp"
#include "report/judgement_document.hpp"
#include "report/one_more_document.hpp"
#include "report/record_document.hpp"
#include "report/standing_document.hpp"
#include "web/coupon_parts.hpp"
#include "web/linked_rows.hpp"
#include "web/page.hpp"
#include "web/photo_part.hpp"
#include "web/refusal_page.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string welders_path() { return "/welders"; }
std::string welder_path(const std::string &mark) { return "/welder/" + url_word(mark); }
std::string why_path(const std::string &welder, const std::string &coupon) {
    return welder_path(welder) + "/coupon/" + url_word(coupon);
}

/// For who is known by a mark alone, whether enrolled or not.
std::string mark_form(const std::string &value, const Refusal *refused) {
    const std::string invalid = refused ? " aria-invalid=\"true\" aria-describedby=\"e-mark\"" : "";
    return "<form method=\"get\" action=\"/welders\"><div class=\"field\"><label for=\"f-mark\">Mark of a "
           "welder</label><input autocomplete=\"off\" id=\"f-mark\" name=\"mark\" value=\"" +
           escaped(value) + "\"" + invalid + ">" +
           (refused ? "<div id=\"e-mark\">" + refusal_html(*refused) + "</div>" : std::string()) +
           "</div><p class=\"deeds\"><button>Show the coupons</button></p></form>\n";
}

/// For a welder who signed in: nobody else's marks.
Answer my_marks(Visit &visit) {
    std::string main = "<h1>My coupons</h1>\n";
    if (visit.own()->empty())
        main +=
            "<p>No welder on record goes by the name that you signed in with, or several do. The keeper "
            "mends that: the name of the account is to be the mark, or the name that one welder is enrolled "
            "under.</p>\n";
    for (const auto &mark : *visit.own())
        main += "<p class=\"deeds\">" + button_to(visit, welder_path(mark), "My coupons, " + mark) + "</p>\n";
    return page_of(visit, {"My coupons", main, welders_path()});
}

Answer all_welders(Visit &visit) {
    const std::string mark(trimmed(visit.request.query.text("mark"))), heading = "<h1>Welders</h1>\n";
    if (!visit.has_record())
        return page_of(visit, {"Welders", heading + "<p>Nothing is on record yet.</p>", welders_path()});
    Office &office = visit.office();
    if (visit.own()) return my_marks(visit);
    std::optional<Refusal> nobody;
    if (!mark.empty()) {
        if (office.book().knows_welder(mark) || !office.book().coupons_of(mark).empty())
            return see_other(welder_path(mark));
        nobody = refused("no coupon on record names the welder '" + shown(mark) + "'" +
                         did_you_mean(mark, office.book().welders()));
    }
    const auto all = standing_of_all(office);
    std::string mine;
    for (const auto &standing : all)
        if (const WelderRecord &welder = standing.welder.record;
            !visit.person().empty() &&
            (same_word(welder.mark, visit.person()) || same_word(welder.name, visit.person())))
            mine += button_to(visit, welder_path(welder.mark), "My coupons, " + welder.mark);
    if (!mine.empty()) mine = "<p class=\"deeds\">" + mine + "</p>\n";
    return page_of(visit, {"Welders",
                           heading + mine + mark_form(mark, nobody ? &*nobody : nullptr) +
                               linked_rows(document_of(all), office.book().welders(), welder_path, "welders"),
                           welders_path(),
                           {},
                           nobody ? status_of(*nobody, false) : 200});
}

std::string coupons_of_welder(Visit &visit, const std::string &mark, const std::vector<CouponLine> &coupons) {
    if (coupons.empty()) return "<p>No coupon on record is by this welder.</p>\n";
    std::string out = "<ul class=\"coupons\">\n";
    for (auto one = coupons.rbegin(); one != coupons.rend(); ++one) {
        const CouponRecord &record = one->record;
        Document doc;
        if (!record.withdrawn.empty())
            doc.line(Words("withdrawn: " + record.withdrawn, Tone::quiet));
        else if (one->verdict)
            doc.line(verdict_in_a_cell(*one) +
                     Words(record.get("class").empty() ? "" : " for class " + record.get("class")));
        else
            doc.line(Words("not judged: " + one->why_not, Tone::cannot_say));
        if (one->grade) doc.line(Words("Graded ") + grade_words(*one->grade, one->grade_standing));
        const std::string welded = record.get("welded");
        out += "<li><h2>" + link_to(why_path(mark, record.id), record.id) + "</h2><p>" +
               escaped(about(visit.office(), record)) +
               (welded.empty() ? "" : "<br>welded " + escaped(welded)) + "</p>" + part_of(doc) + "</li>\n";
    }
    return out + "</ul>\n";
}

std::string held_part(Visit &visit, const std::string &mark) {
    const WelderStanding standing = standing_of(visit.office(), mark);
    Document told = document_of(standing);
    // The page is headed by the mark.
    const WelderRecord &welder = standing.welder.record;
    std::vector<std::string> called;
    for (const auto &text : {welder.name, welder.employer})
        if (!text.empty()) called.push_back(text);
    told.blocks.front() = Paragraph{Words(joined(called, ", ")), ""};
    if (called.empty()) told.blocks.erase(told.blocks.begin());
    add_one_more(told, one_more_coupon(visit.office(), standing));
    std::string out = one_deeper(part_of(std::move(told), "standing"));
    std::string records;
    for (const auto &held : standing.held)
        records += button_to(visit, welder_path(mark) + "/record/" + std::to_string(held.record.number),
                             "Record of " + title_of(held));
    return records.empty() ? out : out + "<p class=\"deeds\">" + records + "</p>\n";
}

Answer one_welder(Visit &visit) {
    const std::string &mark = visit.word("welder");
    Office &office = visit.office();
    const bool enrolled = office.book().knows_welder(mark);
    if (!enrolled && office.book().coupons_of(mark).empty())
        throw refused("no coupon on record names the welder '" + shown(mark) + "'" +
                      did_you_mean(mark, office.book().welders()));
    Selection mine;
    mine.welder = mark;
    std::string main = "<h1>Welder " + escaped(mark) + "</h1>\n<h2>What is held, and until when</h2>\n";
    main += enrolled
                ? held_part(visit, mark)
                : "<p>The mark is on coupons, and no welder is enrolled under it: no qualification is on "
                  "record.</p>\n";
    main += "<h2>Coupons</h2>\n" + coupons_of_welder(visit, mark, list_coupons(office, mine));
    return page_of(visit, {"Welder " + mark, main, welders_path()});
}

/// Only the welder's own: the address of another's coupon is none of this welder's pages.
CouponState check_mine(Visit &visit) {
    const std::string &welder = visit.word("welder"), &mark = visit.word("mark");
    CouponState coupon = visit.office().coupon(mark);
    if (coupon.record.get("welder") != welder)
        throw refused("coupon " + shown(mark) + " is not by " + shown(welder));
    return coupon;
}

Answer one_of_mine(Visit &visit) {
    const std::string &welder = visit.word("welder"), &mark = visit.word("mark");
    const CouponState coupon = check_mine(visit);
    const std::string back =
        "<p class=\"deeds\">" + button_to(visit, welder_path(welder), "All coupons of " + welder) + "</p>\n";
    std::string told;
    try {
        const Explained now = explain(visit.office(), mark);
        Document why = document_of(now);
        auto after = after_tests(visit.office(), welder);
        add_after_test(why, after[mark], now);
        told = part_of(std::move(why), "why");
        Document beside;
        add_earlier(beside, earlier_of(visit.office(), mark));
        told += wide_tables(part_of(std::move(beside), "earlier"));
        told += photos_part(coupon, why_path(welder, mark));
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        told = refusal_html(e) + one_deeper(part_of(document_of(show_coupon(visit.office(), mark)), "sheet"));
    }
    return page_of(
        visit, {"Coupon " + mark, back + "<h1>Coupon " + escaped(mark) + "</h1>\n" + told, welders_path()});
}

Answer photo_of_mine(Visit &visit) {
    check_mine(visit);
    return photo_answer(visit);
}

Answer welder_record(Visit &visit) {
    const std::string &welder = visit.word("welder");
    const RecordSheet sheet = record_sheet(visit.office(), welder, visit.number("number"));
    return page_of(visit, {"Record of " + welder,
                           "<p class=\"deeds\">" + button_to(visit, welder_path(welder), "Welder " + welder) +
                               "</p>\n" + part_of(document_of(sheet), "record"),
                           welders_path()});
}

} // namespace

PageFamily welder_pages() {
    return {"Welders",
            welders_path(),
            {{"GET", "/welders", all_welders},
             {"GET", "/welder/:welder", one_welder},
             {"GET", "/welder/:welder/coupon/:mark", one_of_mine},
             {"GET", "/welder/:welder/coupon/:mark/photo/:photo", photo_of_mine},
             {"GET", "/welder/:welder/record/:number", welder_record}}};
}

} // namespace beadbook
