#include "web/log_pad_part.hpp"

#include "criteria/vocabulary.hpp"
#include "operations/log_pad.hpp"
#include "render/html.hpp"

namespace beadbook {
namespace {

/// A button that puts a piece into one part of the line.
std::string piece(const std::string &part, const std::string &value, const std::string &words = "",
                  const std::string &spoken = "") {
    return "<button type=\"button\" aria-pressed=\"false\" data-part=\"" + part + "\" data-value=\"" +
           escaped(value) + "\"" + (spoken.empty() ? "" : " aria-label=\"" + escaped(spoken) + "\"") + ">" +
           escaped(words.empty() ? value : words) + "</button>";
}

std::string types(const std::vector<TypeId> &of) {
    std::string out;
    for (const TypeId type : of) out += piece("type", Vocabulary::shipped()[type].name);
    return out;
}

std::string group(const std::string &title, const std::string &inside, const std::string &look = "") {
    return "<fieldset" + (look.empty() ? "" : " class=\"" + look + "\"") + "><legend>" + title + "</legend>" +
           inside + "</fieldset>\n";
}

/// `closed`: a place may be said by the clock.
std::string digits(bool closed) {
    std::string out = "<div class=\"digits\">";
    for (const char *key : {"7", "8", "9", "4", "5", "6", "1", "2", "3", "0", ".", "/"})
        out += "<button type=\"button\" class=\"plain\" data-key=\"" + std::string(key) + "\">" + key +
               "</button>";
    if (closed)
        out += "<button type=\"button\" class=\"plain\" data-key=\":\" aria-label=\"hours and minutes, as in "
               "4:30\">:</button>";
    return out +
           "<button type=\"button\" class=\"plain\" data-key=\"-\" aria-label=\"and, as in 1 and "
           "3/16\">&#x2011;</button>" +
           "<button type=\"button\" class=\"plain\" data-key=\"x\" aria-label=\"by, length by "
           "width\">x</button>" +
           "<button type=\"button\" class=\"plain\" data-key=\"back\">&#x232b;<span class=\"unseen\"> take "
           "the last sign off</span></button></div>";
}

} // namespace

std::string log_pad_part(const CouponRecord &coupon, const ExamRecord &exam, const JudgedOrNot &judged) {
    const LogPad pad = log_pad(coupon, exam.method);
    std::string sizes, places, sides, toes;
    for (const auto &side : pad.sides) sides += piece("side", side);
    for (const auto &toe : pad.toes) toes += piece("toe", toe);
    for (const auto &size : pad.sizes) sizes += piece("size", size);
    for (const auto &place : pad.places) places += piece("place", place);
    const std::string keys = piece("key", "s", "size", "size, the longest measure") +
                             piece("key", "l", "length") + piece("key", "d", "depth") +
                             piece("key", "h", "height") + piece("key", "w", "width");
    std::string out = "<div id=\"pad\" hidden data-unit=\"" + pad.unit + "\"" +
                      (pad.unit_is_fixed ? "" : " data-say-unit") +
                      (pad.places.empty() ? "" : " data-closed") + ">\n";
    // Fetched anew after each line, as what was just measured is wanted no more.
    const auto wanted = judged.judged ? still_to_measure(*judged.judged, exam.method) : std::vector<TypeId>{};
    out += "<div id=\"wanted\" data-live>" +
           (wanted.empty() ? ""
                           : group("Wanted by the criteria, and not measured yet",
                                   "<div class=\"types\">" + types(wanted) + "</div>")) +
           "</div>\n";
    out += group("Type", "<div class=\"types\">" + types(pad.first) + "</div>" +
                             "<details><summary>more types</summary>" + "<div class=\"types\">" +
                             types(pad.more) + "</div>" + "</details>");
    out += group("Measure, " + std::string(pad.unit == "in" ? "inches" : "millimetres"),
                 keys + "<div class=\"quick\">" + sizes + "</div>");
    out += group("Place", places + piece("target", "place", "digits give the place") + sides) +
           group("Toe", toes);
    return out + group("Digits", digits(!pad.places.empty())) +
           "<p class=\"deeds\"><button type=\"button\" class=\"plain\" "
           "data-key=\"clear\">Clear</button></p></div>\n";
}

} // namespace beadbook
