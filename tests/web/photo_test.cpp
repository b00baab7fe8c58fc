// Photographs at the bench: who may keep, see and take back one, and what is refused while it is read.
#include "catch.hpp"
#include "measure/sha256.hpp"
#include "operations/photos.hpp"
#include "tablets.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string jpeg = "\xff\xd8\xff\xe0 a crater";
const std::string hash = sha256(jpeg);

/// As the form of the coupon's page sends it, still without its fields.
Request from_page(const School &school) {
    Request out = school.request("POST", "/coupon/T-2/photo");
    out.origin = "http://" + out.host;
    out.form.add("token", school.token);
    return out;
}

Answer keep(School &school, const std::string &bytes, const std::string &find = "the coupon") {
    Request request = from_page(school);
    request.form.add("find", find);
    request.form.add("photo-remark", "as <cleaned>");
    if (!bytes.empty()) request.files.push_back({"photo", "crater.jpg", "image/jpeg", bytes});
    return school.send(request);
}

std::vector<PhotoRecord> photos_of(const School &school, const std::string &mark) {
    return Book(school.book(), Ledger::Mode::read).coupon(mark).photos;
}

} // namespace

TEST_CASE("a photo is kept at the bench, stands by its find, and is served as what it is", "[photo]") {
    School school;
    CHECK(says(school.get("/coupon/T-2"), "enctype=\"multipart/form-data\""));
    CHECK(says(school.get("/coupon/T-2"), "accept=\"image/*\" capture=\"environment\""));
    CHECK(keep(school, jpeg, "#1 crack").status == 303);
    REQUIRE(photos_of(school, "T-2").size() == 1);
    CHECK(photos_of(school, "T-2")[0].find == 1);
    CHECK(photos_of(school, "T-2")[0].stamp.who == "A. Field");
    const std::string at = "/coupon/T-2/photo/" + hash;
    const Answer page = school.get("/coupon/T-2");
    CHECK(says(page, "<img src=\"" + at + "\" alt=\"Photo 1: as &lt;cleaned&gt;\""));
    CHECK(says(page, "<h3>#1 crack"));
    const Answer photo = school.get(at);
    CHECK(photo.status == 200);
    CHECK(photo.body == jpeg);
    CHECK(photo.type == "image/jpeg");
    CHECK(header(photo, "X-Content-Type-Options") == "nosniff");
    CHECK(header(photo, "Cache-Control") == "private, max-age=31536000, immutable");
    CHECK(header(photo, "Vary") == "Cookie");
    Request again = school.request("GET", at);
    again.have = header(photo, "ETag");
    CHECK(school.send(again).status == 304);
    CHECK(school.get("/coupon/T-2/photo/1").status == 404);
    CHECK(school.get("/coupon/T-1/photo/" + hash).status == 404); // it is of another coupon
    CHECK(header(school.get("/coupon/T-2"), "Cache-Control") == "no-store");
}

TEST_CASE("what is no photo is refused with what it is, and nothing is stored", "[photo]") {
    School school;
    const Answer pdf = keep(school, "%PDF-1.7");
    CHECK(pdf.status == 422);
    CHECK(says(pdf, "is a PDF; expected JPEG, PNG or WebP"));
    CHECK(says(keep(school, jpeg + std::string(largest_photo, 'x')), "larger than 8 MB"));
    CHECK(says(keep(school, ""), "no photo came along"));
    CHECK(says(keep(school, jpeg, "#9 crack"), "has no indication #9"));
    CHECK(says(keep(school, jpeg, "#x"), "is no number"));
    CHECK(photos_of(school, "T-2").empty());
    Request strange = from_page(school);
    strange.files.push_back({"photo", "crater.jpg", "image/jpeg", jpeg});
    strange.origin = "http://elsewhere.example";
    CHECK(school.send(strange).status == 403);
    strange = from_page(school);
    strange.files.push_back({"photo", "crater.jpg", "image/jpeg", jpeg});
    strange.form.set("token", "x");
    CHECK(school.send(strange).status == 403);
    CHECK(photos_of(school, "T-2").empty());
}

TEST_CASE("a photo that is sent twice under one key is kept once", "[photo]") {
    School school;
    Request request = from_page(school);
    request.files.push_back({"photo", "crater.jpg", "image/jpeg", jpeg});
    request.key = "one key";
    CHECK(school.send(request).status == 303);
    CHECK(school.send(request).status == 303);
    CHECK(photos_of(school, "T-2").size() == 1);
    request.files[0].bytes += "other";
    CHECK(school.send(request).status == 409);
}

TEST_CASE("a photo that is taken back is shown no more", "[photo]") {
    School school;
    keep(school, jpeg);
    const std::string at = "/coupon/T-2/photo/" + hash;
    CHECK(says(school.post(at + "/withdraw", {{"number", "1"}, {"why", ""}}), "needs a reason"));
    CHECK(school.post(at + "/withdraw", {{"number", "1"}, {"why", "a face is on it"}}).status == 303);
    CHECK_FALSE(says(school.get("/coupon/T-2"), "<img"));
    CHECK(says(school.get("/coupon/T-2"), "withdrawn: a face is on it"));
    CHECK(says(school.get(at), "this photo was withdrawn"));
    CHECK_FALSE(says(school.get(at), jpeg));
}

TEST_CASE("a welder sees the photos of his own coupons, and of no others", "[photo]") {
    Tablets tablets;
    const std::string mine = jpeg + "1", other = jpeg + "2";
    tablets.desk([&](Writing &w) {
        attach_photo(w, {"T-1", mine});
        attach_photo(w, {"T-2", other});
        attach_photo(w, {"T-2", mine});
    });
    const std::string cookie = tablets.in("L1");
    CHECK(says(tablets.see(cookie, "/welder/L1/coupon/T-1"),
               "<img src=\"/welder/L1/coupon/T-1/photo/" + sha256(mine)));
    CHECK(tablets.see(cookie, "/welder/L1/coupon/T-1/photo/" + sha256(mine)).body == mine);
    for (const std::string way : {"/welder/L1/coupon/T-1/photo/", "/welder/L1/coupon/T-2/photo/",
                                  "/welder/L2/coupon/T-2/photo/", "/coupon/T-2/photo/"}) {
        INFO(way);
        const Answer answer = tablets.see(cookie, way + sha256(other));
        CHECK(answer.status >= 400);
        CHECK_FALSE(says(answer, other));
    }
    CHECK(tablets.see(tablets.in("Tess"), "/coupon/T-2/photo/" + sha256(other)).body == other);
    CHECK(tablets.see("", "/coupon/T-2/photo/" + sha256(other)).status == 303);
}

TEST_CASE("a find is measured on its photo, told with what is not covered, and corrected by the line",
          "[photo]") {
    School school;
    school.desk([&](Writing &w) { attach_photo(w, {"T-2", jpeg, 1}); });
    const std::string at = "/coupon/T-2/photo/" + hash;
    const auto page = [&](const std::string &more) { return school.get(at + "/measure?" + more); };
    const std::string marks = "&known-1-x=0&known-1-y=0&known-2-x=600&known-2-y=0&find-1-x=5&find-1-y=5"
                              "&find-2-x=5&find-2-y=65.5";
    CHECK_FALSE(says(school.get(at + "/measure"), "What it comes to"));
    const Answer measured = page("known=2+in&off=3&measure=length" + marks);
    // 2 in * 60.5 / 600 = 0.20166 in; u = that * sqrt(18 / 600^2 + 18 / 60.5^2) = 0.01422 in.
    CHECK(says(measured, "<b>0.202 in ± 0.015 in</b>"));
    CHECK(says(measured, "taken slanting (perspective)"));
    CHECK(says(measured, "value=\"crack length 0.202 in size 0.2 in at 1 in # measured on photo " +
                             hash.substr(0, 12) + " ± 0.015 in\""));
    CHECK(says(page("known=3%2F4&off=3" + marks), "the known length: ")); // of which unit is it?
    CHECK(says(page("known=2+in&off=0" + marks), "each mark is off by something"));
    CHECK(says(page("known=&off=3" + marks), "the known length: "));
    CHECK(says(page("known=2+in&off=3"), "'' is no place of a mark"));
    CHECK(says(page("known=2+in&off=3&measure=weight" + marks), "'weight' is not measured on a photo"));
    CHECK(says(page("known=2+in&off=1e9" + marks), "'1e9' is no number of pixels"));
    CHECK(school
              .post(at + "/correct", {{"number", "1"},
                                      {"line", "crack 0.21 in at 1 in # measured on a photo"},
                                      {"why", "measured"}})
              .status == 303);
    const CouponState coupon = Book(school.book(), Ledger::Mode::read).coupon("T-2");
    CHECK(coupon.indications[0].measures.at(Quantity::size).text == "0.21 in");
    CHECK(coupon.indications[0].remark == "measured on a photo");
}

TEST_CASE("on a photo of a coupon a new find is measured, and logged where an exam is open", "[photo]") {
    School school;
    school.desk([&](Writing &w) {
        attach_photo(w, {"T-3", jpeg});
        attach_photo(w, {"T-1", jpeg});
    });
    const std::string query = "/photo/" + hash +
                              "/measure?known=10+mm&off=3&known-1-x=0&known-1-y=0&known-2-x=600"
                              "&known-2-y=0&find-1-x=5&find-1-y=5&find-2-x=5&find-2-y=65";
    CHECK(says(school.get("/coupon/T-1" + query), "No exam of the coupon is open"));
    school.exam("T-3", Exam::RT, false);
    const Answer page = school.get("/coupon/T-3" + query);
    CHECK(says(page, "action=\"/coupon/T-3/exam/2/log\""));
    CHECK(says(page, "value=\"size 0.040 in # measured on photo " + hash.substr(0, 12) + " ± 0.003 in\""));
}
