#include "operations/coupons.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "facts/reason.hpp"
#include "operations/looking.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Refusal refused_to_put(Booth &booth, const std::string &mark, const Booth::Fields &fields) {
    return booth.refusal([&] { booth.put(mark, fields); });
}

Done<CouponRecord> changed(Booth &booth, const Booth::Fields &fields, const std::string &why = "slip",
                           const std::vector<std::string> &forget = {}) {
    return booth.write([&](Writing &w) { return change_coupon(w, {{"T-1", fields}, forget, why}); });
}

Refusal refused_to_change(Booth &booth, const Booth::Fields &fields, const std::string &why = "slip",
                          const std::vector<std::string> &forget = {}) {
    return booth.refusal([&] { changed(booth, fields, why, forget); });
}

const std::string own_set = "set: own\ntitle: t\nedition: e\nunits: in\nclasses: [A, B]\nrules:\n"
                            "  - {id: r, types: porosity, exams: VT, measure: size, at most: 1/16 in, "
                            "clause: c, standing: {house: x}}\n";

} // namespace

TEST_CASE("a coupon is registered as it was said, bare numbers in its own units") {
    Booth booth;
    const CouponRecord said = booth.put("T-1", {{"thickness", "5"},
                                                {"weld-length", "8in"},
                                                {"units", "mm"},
                                                {"joint", "groove"},
                                                {"also", "PT RT"},
                                                {"welder", "  L1 "},
                                                {"welded", "2026-11-20"}});
    const CouponState kept = booth.office.coupon("T-1");
    CHECK(kept.record == said);
    CHECK(said.id == "T-1");
    CHECK(said.get("thickness") == "5 mm");
    CHECK(said.fields.at("thickness").value == Exact(5'000'000));
    CHECK(said.fields.at("weld-length").value == Exact(203'200'000));
    CHECK(said.get("also") == "PT,RT");
    CHECK(said.get("welder") == "L1");
    const auto history = history_of_coupon(booth.office, "T-1");
    REQUIRE(history.size() == 1);
    CHECK(history[0].kind == "coupon");
    CHECK(history[0].who == "tester");
    CHECK(history[0].at == "2026-11-25T10:00:00Z");
    // Nothing need be known but the mark.
    CHECK(booth.put("T-2").fields.empty());
}

TEST_CASE("a mark is taken once, and what can be done is told") {
    Booth booth;
    booth.put("T-1", {{"welder", "L1"}});
    const Refusal taken = refused_to_put(booth, "T-1", {});
    CHECK_THAT(taken.what(), says("coupon T-1 is registered already"));
    CHECK(remedies_of(taken) == "change T-1");
    CHECK(taken.kind() == Refusal::Kind::data);
    CHECK_THROWS_AS(check_new(booth.book, "T-1"), Refusal);
    CHECK_NOTHROW(check_new(booth.book, "T-2"));
    for (const std::string &mark :
         {std::string(), std::string("a b"), std::string(41, 'x'), std::string("-T"), std::string("a/b"),
          std::string("\xff"), std::string("\xc3\xb6"), std::string("a\n"), std::string("a\0b", 3)})
        CHECK_THAT(refused_to_put(booth, mark, {}).what(), says("a coupon's mark is 1 to 40 letters"));
    CHECK(booth.put(std::string(40, 'x')).id.size() == 40);
}

TEST_CASE("the criteria are known and the class is one of theirs") {
    Booth booth;
    CHECK_THAT(refused_to_put(booth, "T-1", {{"criteria", "ufgs-15216m"}}).what(),
               says("there is no criteria set 'ufgs-15216m'"));
    CHECK_THAT(refused_to_put(booth, "T-1", {{"criteria", "ufgs-15216m"}}).what(),
               says("did you mean 'ufgs-15216n'?"));
    const Refusal no_class = refused_to_put(booth, "T-1", {{"criteria", "iso-5817"}, {"class", "E"}});
    CHECK_THAT(no_class.what(), says("criteria iso-5817 have no class 'E'; they have B, C and D"));
    CHECK(field_of(no_class) == "class");
    CHECK_THAT(refused_to_put(booth, "T-1", {{"criteria", "no/such.yaml"}}).what(), says("cannot be read"));

    // A class of no criteria means nothing.
    CHECK_THAT(refused_to_put(booth, "T-1", {{"class", "E"}}).what(), says("of which criteria?"));
    booth.put("T-1", {});
    CHECK(changed(booth, {{"criteria", "iso-5817"}, {"class", "C"}}).value.get("class") == "C");
    // Other criteria than before must have the class that is sought already.
    CHECK_THAT(refused_to_change(booth, {{"criteria", "mil-hdbk-1890-table-3"}}).what(),
               says("have no class 'C'; they have 1, 2 and 3"));
    CHECK(field_of(refused_to_change(booth, {{"class", "E"}})) == "class");
    CHECK(changed(booth, {{"criteria", "mil-hdbk-1890-table-3"}}, "other job", {"class"})
              .value.get("class")
              .empty());
}

TEST_CASE("criteria of one's own are found again from any folder, and their mistakes are all told") {
    Booth booth;
    write_file(booth.file("own.yaml"), own_set);
    booth.outside.absolute = [&](const std::string &path) { return booth.file(path); };
    booth.outside.read = [&](const std::string &path) { return read_file(booth.file(path)); };
    CHECK(booth.put("T-1", {{"criteria", "own.yaml"}, {"class", "A"}}).get("criteria") ==
          booth.file("own.yaml"));
    CHECK(field_of(refused_to_put(booth, "T-2", {{"criteria", "own.yaml"}, {"class", "C"}})) == "class");
    write_file(booth.file("bad.yaml"), "set: x\ntitle: y\n");
    const std::string mistakes = refused_to_put(booth, "T-2", {{"criteria", "bad.yaml"}}).what();
    CHECK_THAT(mistakes, says("the criteria set file has mistakes:\nbad.yaml:1"));
    CHECK_THAT(mistakes, says("'units' is missing"));
    CHECK_THAT(mistakes, says("'edition' is missing"));
}

TEST_CASE("every field is checked, and the refusal names it") {
    Booth booth;
    const std::vector<std::tuple<std::string, std::string, std::string>> rows{
        {"thickness", "0in", "thickness: '0in' is zero"},
        {"thickness", "-1", "negative"},
        {"thickness", "nan", "does not begin with a number"},
        {"thickness", "5 deg", "is an angle"},
        {"thickness", "", "thickness: nothing given"},
        {"temperature", "350", "has no unit"},
        {"joint", "grove", "joint: 'grove'; expected"},
        {"joint", "grove", "did you mean 'groove'?"},
        {"units", "yd", "expected in or mm"},
        {"also", "UT", "also: 'UT' is no exam"},
        {"welded", "2026-02-30", "no day of the calendar"},
        {"welder", "\xff\xfe", "not UTF-8"},
        {"welder", "a\nb", "control character"},
        {"welder", std::string(2001, 'x'), "longer than 2000 bytes"},
        {"thicknes", "1 in", "a coupon has no field 'thicknes'; did you mean 'thickness'?"},
    };
    for (const auto &[field, value, expected] : rows) {
        INFO(field << "=" << value);
        CHECK_THAT(refused_to_put(booth, "T-1", {{field, value}}).what(), says(expected));
    }
    CHECK_FALSE(booth.book.knows_coupon("T-1"));
}

TEST_CASE("a change keeps the old entry, with who and why") {
    Booth booth;
    booth.coupon();
    const auto first = booth.office.coupon("T-1").record_seq;
    const CouponRecord now = changed(booth, {{"thickness", "4"}, {"units", "mm"}}, "measured again").value;
    CHECK(now.get("thickness") == "4 mm");
    CHECK(now.get("weld-length") == "8in"); // as it was measured
    CHECK(now.get("class") == "2");
    const auto history = history_of_coupon(booth.office, "T-1");
    REQUIRE(history.size() == 2);
    CHECK(history[1].supersedes == first);
    CHECK(history[1].reason == "measured again");
    CHECK(history[0].body.find("0.150in") != std::string::npos);
    CHECK(booth.office.coupon("T-1").record == now);
    CHECK(booth.office.coupon("T-1", history[1].seq).record.get("thickness") == "0.150in");

    CHECK(changed(booth, {{"note", "bent"}}, "seen late", {"diameter"}).value.fields.count("diameter") == 0);
    CHECK(booth.office.coupon("T-1").record.get("note") == "bent");
}

TEST_CASE("what was not said yet is told without a reason, and takes nobody's words along") {
    Booth booth;
    booth.coupon();
    const auto told = changed(booth, {{"mechanical", "passed"}}, "").value;
    CHECK(told.get("mechanical") == "passed");
    CHECK(said_in_reason(booth.book.history("T-1").back().reason).empty());
    CHECK(field_of(refused_to_change(booth, {{"mechanical", "failed"}}, "")) == "give why");
}

TEST_CASE("a change needs a reason and something to change") {
    Booth booth;
    CHECK_THAT(refused_to_change(booth, {{"note", "x"}}).what(), says("there is no coupon 'T-1'"));
    booth.coupon();
    for (const char *why : {"", "  "})
        CHECK(field_of(refused_to_change(booth, {{"thickness", "0.2in"}}, why)) == "give why");
    CHECK_THAT(refused_to_change(booth, {{"thickness", "0.2in"}}, "a\tb").what(), says("control character"));
    CHECK_THAT(refused_to_change(booth, {}).what(), says("this changes nothing"));
    CHECK_THAT(refused_to_change(booth, {{"class", "2"}}).what(), says("this changes nothing"));
    const Refusal forget = refused_to_change(booth, {}, "slip", {"throat"});
    CHECK_THAT(forget.what(), says("coupon T-1 has no 'throat' to forget"));
    CHECK(field_of(forget) == "forget");
    CHECK_THAT(refused_to_change(booth, {{"joint", "grove"}}).what(), says("did you mean 'groove'?"));
}

TEST_CASE("what was logged must still lie on the weld that a change describes") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.log("gas pore 0.05 at 2\ngas pore 0.05 at 7");
    const Refusal off = refused_to_change(booth, {{"weld-length", "6in"}});
    CHECK_THAT(off.what(), says("with this change indication #2 would not fit: '7"));
    CHECK_THAT(off.what(), says("off the weld"));
    changed(booth, {{"weld-length", "7.05in"}});
    CHECK_THAT(refused_to_change(booth, {{"weld-length", "7.04in"}}).what(), says("indication #2"));
    // What was taken back need not.
    booth.take_back(2);
    changed(booth, {{"weld-length", "6in"}});
    CHECK(booth.office.coupon("T-1").indications.size() == 1);
}

TEST_CASE("a remark is kept as it was said, and says something") {
    Booth booth;
    const auto remark = [&](const std::string &mark, const std::string &text) {
        return booth.write([&](Writing &w) { return remark_on(w, mark, text); }, "J. Quay").value;
    };
    CHECK_THAT(booth.refusal([&] { remark("T-1", "x"); }).what(), says("there is no coupon 'T-1'"));
    booth.coupon();
    CHECK_THAT(booth.refusal([&] { remark("T-1", " \n"); }).what(), says("the remark is empty"));
    CHECK_THAT(booth.refusal([&] { remark("T-1", "a\x1b[31m"); }).what(), says("control character"));
    CHECK(remark("T-1", " restart at 4 looks cold ").text == "restart at 4 looks cold");
    remark("T-1", "root is fine");
    const auto kept = booth.office.coupon("T-1").remarks;
    REQUIRE(kept.size() == 2);
    CHECK(kept[0].text == "restart at 4 looks cold");
    CHECK(kept[0].stamp.who == "J. Quay");
    CHECK(kept[1].text == "root is fine");
}

TEST_CASE("nobody writes without a name, and what is not committed is not stored") {
    Booth booth;
    for (const char *who : {"", "  "}) {
        const Refusal nobody =
            booth.refusal([&] { booth.write([](Writing &w) { remark_on(w, "T-1", "x"); }, who); });
        CHECK(field_of(nobody) == "give by");
    }
    {
        Writing writing(booth.office, "tester");
        register_coupon(writing, {"T-1", {}});
        CHECK(writing.coupon("T-1").record.id == "T-1"); // seen within it
    }
    CHECK_FALSE(booth.book.knows_coupon("T-1"));
    CHECK(booth.entries() == 0);
}

TEST_CASE("a change that turns a verdict says so") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finish();
    const auto notes = [&](const CouponRequest &said, const std::vector<std::string> &forget) {
        return booth.write([&](Writing &w) { return change_coupon(w, {said, forget, "told later"}); }).notes;
    };
    const auto turned = notes({"T-1", {}}, {"material"});
    REQUIRE(turned.size() == 1);
    CHECK_THAT(turned[0], says("this changes the verdict on coupon T-1 by mil-hdbk-1890-table-3: class 1 was "
                               "accept and is cannot say"));
    CHECK(notes({"T-1", {{"note", "bevelled"}}}, {}).empty());
}
