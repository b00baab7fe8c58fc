#include "web/photo_part.hpp"

#include "criteria/vocabulary.hpp"
#include "facts/log_line.hpp"
#include "operations/photos.hpp"
#include "web/coupon_parts.hpp"
#include "web/form.hpp"
#include "web/page.hpp"

#include <functional>

namespace beadbook {
namespace {

std::string photo_path(const std::string &path, const PhotoRecord &photo) {
    return path + "/photo/" + photo.hash;
}

/// "#3 crack", as the form offers it; its number is read back from the beginning.
std::string find_words(const IndicationRecord &find) {
    return "#" + std::to_string(find.number) + " " + std::string(Vocabulary::shipped()[find.type].name);
}

std::string figure(const std::string &path, const PhotoRecord &photo, const std::string &deeds) {
    const std::string at = escaped(photo_path(path, photo)), name = "Photo " + std::to_string(photo.number);
    return "<figure><a href=\"" + at + "\"><img src=\"" + at + "\" alt=\"" +
           escaped(name + (photo.remark.empty() ? "" : ": " + photo.remark)) +
           "\" loading=\"lazy\" decoding=\"async\"></a><figcaption>" + name +
           (photo.remark.empty() ? "" : ": " + escaped(photo.remark)) + "<br><span class=\"quiet\">" +
           escaped(photo.stamp.who) + ", " + escaped(photo.stamp.at.substr(0, 10)) + "</span></figcaption>" +
           deeds + "</figure>\n";
}

using Deeds = std::function<std::string(const PhotoRecord &)>;

/// Those of one find under its line; `finds` of no number are of the coupon as a whole.
std::string group(const CouponState &coupon, const std::string &path, const std::string &title,
                  const std::function<bool(int find)> &belongs, const Deeds &deeds) {
    std::string out;
    for (const auto &photo : coupon.photos)
        if (photo.withdrawn.empty() && belongs(photo.find)) out += figure(path, photo, deeds(photo));
    return out.empty() ? "" : "<h3>" + escaped(title) + "</h3>\n<div class=\"photos\">\n" + out + "</div>\n";
}

std::string groups(const CouponState &coupon, const std::string &path, const Deeds &deeds) {
    std::string out = group(
        coupon, path, "The coupon", [](int find) { return find == 0; }, deeds);
    for (const auto &find : coupon.indications)
        out += group(
            coupon, path, "#" + std::to_string(find.number) + " " + print_log_line(find),
            [&](int of) { return of == find.number; }, deeds);
    return out + group(
                     coupon, path, "Of finds that are on this coupon no more",
                     [&](int of) { return of > 0 && !coupon.indication(of); }, deeds);
}

} // namespace

std::string photos_part(const CouponState &coupon, const std::string &path) {
    const std::string all = groups(coupon, path, [](const PhotoRecord &) { return ""; });
    return all.empty() ? "" : "<h2>Photos</h2>\n" + all;
}

std::string photos_to_mend(Visit &visit, const CouponState &coupon) {
    const std::string path = coupon_path(coupon.record.id);
    const auto deeds = [&](const PhotoRecord &photo) {
        return "<p class=\"deeds\">" +
               button_to(visit, photo_path(path, photo) + "/measure", "Measure on it") +
               "</p><details><summary>Take it back</summary>" +
               Form(visit, photo_path(path, photo) + "/withdraw")
                   .hidden("number", std::to_string(photo.number))
                   .put("<div class=\"field\"><label for=\"why-" + std::to_string(photo.number) +
                        "\">The reason</label><input autocomplete=\"off\" name=\"why\" id=\"why-" +
                        std::to_string(photo.number) + "\"></div>")
                   .html("Take it back") +
               "</details>";
    };
    return "<div id=\"photos\" data-live>\n" + groups(coupon, path, deeds) + "</div>\n";
}

std::string photo_form(Visit &visit, const CouponState &coupon) {
    if (!visit.may("POST", coupon_path(coupon.record.id) + "/photo")) return "";
    Control find{"find", "What it shows", "", Control::Kind::choice};
    find.choices.emplace_back("the coupon");
    for (const auto &one : coupon.indications) find.choices.push_back(find_words(one));
    return "<h2>Photos</h2>\n" +
           Form(visit, coupon_path(coupon.record.id) + "/photo")
               .add(
                   {"photo", "Take a photo", "", Control::Kind::photo,
                    "JPEG, PNG or WebP, at most 8 MB. It carries what the camera put into it: place, day and "
                    "device, often."})
               .add(find)
               .add({"photo-remark", "What is to be seen"})
               .html("Keep the photo", "enctype=\"multipart/form-data\" class=\"photo\"");
}

Answer photo_answer(Visit &visit) {
    const PhotoAtHand photo = photo_called(visit.office(), visit.word("mark"), visit.word("photo"));
    if (photo.record.hash != visit.word("photo"))
        throw refused("a photo is asked for by its whole hash here");
    if (!photo.record.withdrawn.empty()) throw refused("this photo was withdrawn: " + photo.record.withdrawn);
    const std::string tag = "\"" + photo.record.hash + "\"";
    // What a hash names never changes. Another session of this browser, somebody else's, asks anew.
    Answer out{
        200,
        std::string(media_type(photo.record.kind)),
        photo.bytes,
        {{"Cache-Control", "private, max-age=31536000, immutable"}, {"Vary", "Cookie"}, {"ETag", tag}}};
    if (visit.request.have == tag) out.status = 304, out.body.clear();
    return out;
}

} // namespace beadbook
