#include "records/codecs/exchange.hpp"

#include "catch.hpp"
#include "records/codecs/located.hpp"

using namespace beadbook;
using namespace beadbook::codec;

namespace {

/// Every mistake of a file of one coupon, with its place.
std::string mistakes_in(const std::string &coupon) {
    const std::string text =
        "{\"format\": \"beadbook exchange\", \"version\": 1, \"coupons\": [\n" + coupon + "]}";
    std::string out;
    for (const auto &given : read_exchange(text))
        for (const auto &m : given.mistakes) out += place_in(text, m.at) + " " + m.what + "\n";
    return out;
}

std::string with_exam(const std::string &exam) {
    return R"({"id":"N","exams":[{"method":"VT","date":"2026-11-20",)" + exam + "}]}";
}
std::string with_find(const std::string &find) {
    return with_exam(R"("indications":[{"type":"crack",)" + find + "}]");
}

} // namespace

TEST_CASE("a good file has no mistakes, in the exporter's form and as a person writes it") {
    CHECK(mistakes_in(
              R"({"id":"N","fields":{"thickness":{"typed":"3/16 in","nm":4762500},"diameter":"2","units":"in",
        "temperature":{"typed":"-40 F"},"layers":{"typed":"2","value":2},"note":"x"},"exams":[
        {"number":3,"method":"PT","date":"2026-11-20","examiner":"A","level":"II","procedure":"p","note":"n",
         "incomplete":"i","practice":"x","practice hash":"y","conditions":{"dwell":"10 min"},"indications":[
         {"number":2,"exam":3,"type":"crack","length":{"typed":"0.1 in","nm":2540000},"width":"0.01","at":{"typed":"0 in","nm":0},
          "across":"0.1 in","left":true,"side":"face","transition":"smooth","remark":"r"}]}]})")
              .empty());
    CHECK(mistakes_in(R"({"id":"N"})").empty());
}

TEST_CASE("unknown, doubled and wrongly typed keys of an exchange file are mistakes with their place") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"1", "2:1 a coupon needs an \"id\""},
        {R"({"fields":{}})", "2:1 a coupon needs an \"id\""},
        {R"({"id":7})", "2:7 id: expected text, found 7"},
        {R"({"id":"N","exam":[]})", "2:11 unknown key 'exam'; did you mean 'exams'?"},
        {R"({"id":"N","id":"M"})", "2:11 key 'id' stands twice in one object"},
        {R"({"id":"N","fields":[]})", "2:20 fields: expected an object, found a list"},
        {R"({"id":"N","fields":{"thickness":3}})",
         R"(2:33 thickness: expected text such as "0.045 in", found 3)"},
        {R"({"id":"N","fields":{"note":{"typed":"x"}}})", "2:28 note: expected text, found an object"},
        {R"({"id":"N","fields":{"note":"a","note":"b"}})", "2:32 key 'note' stands twice in one object"},
        {R"({"id":"N","fields":{"units":"in","units":"mm"}})", "2:34 key 'units' stands twice in one object"},
        {R"({"id":"N","fields":{"thicknes":"1 in"}})", "2:21 a coupon has no field 'thicknes'; did you mean"},
        {R"({"id":"N","fields":{"thickness":"1 deg"}})", "2:21 thickness: "},
        {R"({"id":"N","fields":{"thickness":{"typed":"1 in","mm":25}}})",
         "unknown key 'mm'; did you mean 'nm'?"},
        {R"({"id":"N","fields":{"thickness":{"typed":"1 in","typed":"2 in"}}})", "key 'typed' stands twice"},
        {R"({"id":"N","fields":{"thickness":{"typed":1}}})", "typed: expected text, found 1"},
        {R"({"id":"N","fields":{"thickness":{"nm":25400000}}})", "an object here needs \"typed\""},
        {R"({"id":"N","fields":{"thickness":{"typed":"1 in","nm":25400001}}})",
         "2:54 thickness: 25400001 nm is not 1 in"},
        {R"({"id":"N","fields":{"thickness":{"typed":"1 in","nm":25400000.0}}})",
         "nm: expected a whole number"},
        {R"({"id":"N","exams":{}})", "exams: expected a list, found an object"},
        {R"({"id":"N","exams":["VT"]})", "2:20 an exam is an object with method and date, found \"VT\""},
        {R"({"id":"N","exams":[{"date":"2026-11-20"}]})", "2:20 an exam needs a \"method\""},
        {with_exam(R"("indication":[{"type":"crack"}])"),
         "2:55 unknown key 'indication'; did you mean 'indications'?"},
        {with_exam(R"("note":"x","note":"y")"), "key 'note' stands twice"},
        {with_exam(R"("number":"1")"), "number: expected a whole number from 1, found \"1\""},
        {with_exam(R"("number":0)"), "number: expected a whole number from 1, found 0"},
        {with_exam(R"("number":1.5)"), "number: expected a whole number from 1, found 1.5"},
        {with_exam(R"("number":99999999999999999999)"), "number: expected a whole number from 1"},
        {with_exam(R"("number":4294967297)"), "not a whole number from 1"},
        {with_exam(R"("level":2)"), "level: expected text, found 2"},
        {with_exam(R"("conditions":["a"])"), "conditions: expected an object, found a list"},
        {with_exam(R"("conditions":{"light":1000})"), "light: expected text, found 1000"},
        {with_exam(R"("conditions":{"light":"1 lx","light":"2 lx"})"), "key 'light' stands twice"},
        {with_exam(R"("indications":{})"), "indications: expected a list, found an object"},
        {with_exam(R"("indications":["crack"])"), "an indication is an object with a type, found \"crack\""},
        {with_exam(R"("indications":[{}])"), "an indication needs a \"type\""},
        {with_find(R"("lengt":"1 in")"), "unknown key 'lengt'; did you mean 'length'?"},
        {with_find(R"("length":"1 in","length":"2 in")"), "key 'length' stands twice"},
        {with_find(R"("length":1)"), R"(length: expected text such as "0.045 in", found 1)"},
        {with_find(R"("length":null)"), R"(length: expected text such as "0.045 in", found null)"},
        {with_find(R"("length":{"typed":"1 in","nm":1})"), "length: 1 nm is not 1 in"},
        {with_find(R"("at":{"typed":"1 in","nm":1})"), "at: 1 nm is not 1 in"},
        {with_find(R"("left":"yes")"), "left: expected true or false, found \"yes\""},
        {with_find(R"("remark":["x"])"), "remark: expected text, found a list"},
        {with_find(R"("exam":2)"), "exam: found 2, but it lies within exam without a number"},
    };
    for (const auto &[coupon, expected] : rows) {
        INFO(coupon);
        const std::string found = mistakes_in(coupon);
        CHECK_THAT(found, says(expected));
        CHECK(std::count(found.begin(), found.end(), '\n') == 1);
    }
}

TEST_CASE("one reading names every mistake of a coupon, and blames none on another") {
    const std::string all = mistakes_in(
        R"({"id":"N","fields":{"weld-length":"1 in","thickness":true},"x":1,"exams":[
{"method":"VT","date":"2026-11-20","indications":[{"type":"crack","at":"9 in"},{"type":"crak"}]},
{"method":"VT","indications":[{"type":"crack","exam":1,"left":1}]}]})");
    CHECK(std::count(all.begin(), all.end(), '\n') == 4);
    CHECK_THAT(all, says("unknown key 'x'"));
    CHECK_THAT(all, says("thickness: expected text such as"));
    CHECK_THAT(all, says("4:1 an exam needs a \"date\""));
    CHECK_THAT(all, says("left: expected true or false"));
    // The length of the weld may be what is wrong, so nothing is said of what lies on it.
    CHECK_THAT(all, !says("off the weld"));
}

TEST_CASE("what is no exchange file of version 1 is refused") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"[]", "expected {\"format\": \"beadbook exchange\""},
        {"3", "expected {\"format\""},
        {R"({"format":"x","version":1,"coupons":[]})", "expected {\"format\""},
        {R"({"format":"beadbook exchange","version":1})", "expected {\"format\""},
        {R"({"format":"beadbook exchange","version":1,"coupons":{}})", "expected {\"format\""},
        {R"({"format":"beadbook exchange","version":"1","coupons":[]})",
         "1:41: version: expected the number 1, found \"1\""},
        {R"({"format":"beadbook exchange","coupons":[]})", "version: expected the number 1, found nothing"},
        {R"({"format":"beadbook exchange","version":2,"coupons":[]})", "1:41: this program reads version 1"},
        {R"({"format":"beadbook exchange","version":1.0,"coupons":[]})", "this program reads version 1"},
        {R"({"format":"beadbook exchange","version":1,"coupons":[],"coupons":[]})",
         "key 'coupons' stands twice"},
        {R"({"format":"beadbook exchange","version":1,"coupons":[],"coupon":[]})",
         "unknown key 'coupon'; did you mean"},
    };
    for (const auto &[text, expected] : rows) {
        INFO(text);
        CHECK_THROWS_AS(read_exchange(text), DataError);
        CHECK_THROWS_WITH(read_exchange(text), says(expected));
    }
    CHECK(read_exchange(R"({"format":"beadbook exchange","version":1,"coupons":[]})").empty());
}
