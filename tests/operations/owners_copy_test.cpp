#include "operations/owners_copy.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "criteria/load.hpp"
#include "operations/keeping.hpp"
#include "operations/looking.hpp"
#include "operations/rejudging.hpp"
#include "records/codecs/owners_copy.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A coupon for class C of aws-d17.1 with a reinforcement of 0.020 in, whose limit is a blank.
class Shop : public Booth {
public:
    Shop() {
        coupon("T-1", {{"criteria", "aws-d17.1"},
                       {"class", "C"},
                       {"thickness", "0.100in"},
                       {"magnetic", "no"},
                       {"material", "aluminium"},
                       {"form", "sheet"},
                       {"diameter", ""}});
        exam(Exam::VT);
        log("reinforcement h 0.02 at 2");
        finish(1);
    }
    static FillRequest number(const std::string &value = "0.060 in", const std::string &why = "") {
        return {"aws-d17.1", "reinforcement", value, {"C"}, "AWS D17.1:2017", "21", "B. Reed", why};
    }
    static FillRequest number_for(const std::string &class_id, const std::string &value) {
        FillRequest request = number(value);
        request.classes = {class_id};
        return request;
    }
    Filled fill(const FillRequest &request = number(), const std::string &who = "A. Field") {
        return write([&](Writing &w) { return fill_blank(w, request); }, who).value;
    }
    static ConfirmRequest undercut(const std::string &page = "12") {
        return {"aws-d17.1", "undercut-depth", {"B"}, "AWS D17.1:2017", page, "", ""};
    }
    Confirmed confirm(const ConfirmRequest &request = undercut(), const std::string &who = "A. Field") {
        return write([&](Writing &w) { return confirm_limit(w, request); }, who).value;
    }
    void withdraw(const std::string &part, const std::string &why = "the wrong column") {
        write([&](Writing &w) { return retract_copy(w, {"aws-d17.1", part, {}, why}); }, "A. Field");
    }
    Verdict judged() {
        return write([&](Writing &w) { return judge_and_keep(w, "T-1"); }).value.verdict();
    }
    std::string standing_of(const std::string &rule, std::size_t c) {
        for (const auto &one : office.criteria("aws-d17.1")->rules)
            if (one.id == rule) return print(one.standings[c]);
        return "";
    }
    bool replays() { return verify(office, {true, ""}).holds(); }
};

} // namespace

TEST_CASE("a blank is filled by two people, and the coupon is judged by the number", "[copy]") {
    Shop shop;
    CHECK(shop.judged() == Verdict::cannot_say);
    const Filled done = shop.fill();
    CHECK(done.fillings.size() == 1);
    CHECK(done.still_open == std::vector<std::string>{"A", "B"});
    CHECK(shop.judged() == Verdict::accept);
    CHECK(shop.standing_of("reinforcement", 2) ==
          "filled by A. Field and B. Reed (page 21 of AWS D17.1:2017)");
    CHECK(shop.standing_of("reinforcement", 0) == "blank");
    CHECK(copy_sheet(shop.office, "aws-d17.1").open() == 11);
    CHECK(shop.replays());
}

TEST_CASE("a number of another edition than those beside it is told", "[copy]") {
    Shop shop;
    const auto notes = [&](const FillRequest &request) {
        return shop.write([&](Writing &w) { return fill_blank(w, request); }, "A. Field").notes;
    };
    CHECK(notes(Shop::number_for("C", "0.060 in")).empty());
    CHECK(notes(Shop::number_for("B", "0.050 in")).empty());
    FillRequest older = Shop::number_for("A", "0.040 in");
    older.copy = "AWS D17.1:2010";
    const auto told = notes(older);
    REQUIRE(told.size() == 1);
    CHECK_THAT(told[0], says("was read in 'AWS D17.1:2017', and this in 'AWS D17.1:2010'"));
}

TEST_CASE("a number is replaced with a reason, and each verdict keeps the one that it used", "[copy]") {
    Shop shop;
    shop.fill();
    CHECK(shop.judged() == Verdict::accept);
    CHECK_THAT(shop.refusal([&] { shop.fill(Shop::number("0.010 in")); }).what(),
               says("a correction needs a reason"));
    CHECK_THAT(shop.refusal([&] { shop.fill(); }).what(), says("changes nothing"));
    shop.fill(Shop::number("0.010 in", "a misprint, see the errata"));
    CHECK(show_coupon(shop.office, "T-1").older_than_filled.size() == 1);
    CHECK(shop.judged() == Verdict::reject);
    CHECK(shop.replays());
    const CouponSheet sheet = show_coupon(shop.office, "T-1");
    REQUIRE(sheet.coupon.verdicts.size() == 2);
    CHECK(sheet.older_than_filled == std::vector<std::int64_t>{sheet.coupon.verdicts[0].seq});
    CHECK(sheet.coupon.verdicts[0].filled.at(0).value == Exact(1'524'000));
    CHECK(sheet.coupon.verdicts[1].filled.at(0).value == Exact(254'000));
    shop.withdraw("reinforcement");
    CHECK(shop.judged() == Verdict::cannot_say);
    CHECK(shop.replays());
    CHECK_THAT(shop.refusal([&] { shop.withdraw("reinforcement"); }).what(),
               says("nothing of 'reinforcement' is filled"));
}

TEST_CASE("what a verdict said is held by the numbers that it used against those of today", "[copy]") {
    Shop shop;
    shop.fill();
    CHECK(shop.judged() == Verdict::accept);
    CHECK(rejudge(shop.office, {}).flips.empty());
    shop.fill(Shop::number("0.010 in", "a misprint, see the errata"));
    const Rejudged now = rejudge(shop.office, {});
    REQUIRE(now.flips.size() == 1);
    CHECK(now.flips[0].before.verdict == Verdict::accept);
    CHECK(now.flips[0].after.verdict == Verdict::reject);
}

TEST_CASE("a grade that rests on a number is to be given again once it is withdrawn", "[copy]") {
    Shop shop;
    shop.fill();
    shop.write([&](Writing &w) { return grade_coupon(w, {"T-1", true, "", {}}); });
    CHECK(show_coupon(shop.office, "T-1").grade_standing.state == GradeStanding::State::stands);
    shop.withdraw("reinforcement");
    CHECK(show_coupon(shop.office, "T-1").grade_standing.state == GradeStanding::State::again);
}

TEST_CASE("what fills no blank is refused, and nothing is stored", "[copy]") {
    Shop shop;
    const auto refused_as = [&](auto change) {
        FillRequest request = Shop::number();
        change(request);
        const Refusal refusal = shop.refusal([&] { shop.fill(request); });
        return field_of(refusal) + ": " + refusal.what();
    };
    CHECK_THAT(refused_as([](auto &r) { r.blank = "reinforcment"; }),
               says("blank: ") && says("did you mean"));
    CHECK_THAT(refused_as([](auto &r) { r.criteria = "ufgs-15216n"; }), says("leave nothing blank"));
    CHECK_THAT(refused_as([](auto &r) { r.classes = {"D"}; }), says("class: ") && says("no class 'D'"));
    CHECK_THAT(refused_as([](auto &r) { r.classes.clear(); }), says("give class: "));
    CHECK_THAT(refused_as([](auto &r) { r.value = "60 deg"; }),
               says("value: blank reinforcement is a length"));
    CHECK_THAT(refused_as([](auto &r) { r.value = "0.06"; }), says("value: "));
    CHECK_THAT(refused_as([](auto &r) { r.value = "6 in"; }), says("value: ") && says("plausible is"));
    CHECK_THAT(refused_as([](auto &r) { r.copy = ""; }), says("give edition: "));
    CHECK_THAT(refused_as([](auto &r) { r.page = " "; }), says("give page: "));
    CHECK_THAT(refused_as([](auto &r) { r.second = ""; }), says("give second: "));
    CHECK_THAT(refused_as([](auto &r) { r.second = "a  field"; }), says("second: ") && says("different"));
}

TEST_CASE("numbers that let a stricter class pass more than a looser one are no columns of the copy",
          "[copy]") {
    Shop shop;
    shop.fill(Shop::number_for("A", "0.050 in"));
    shop.fill(Shop::number_for("B", "0.060 in"));
    const Refusal swapped = shop.refusal([&] { shop.fill(Shop::number_for("C", "0.059 in")); });
    CHECK(field_of(swapped) == "value");
    CHECK_THAT(swapped.what(), says("class B should be stricter than class C") && says("exchanged"));
    shop.fill(Shop::number_for("C", "0.060 in"));
}

TEST_CASE("a class between that is open yet hides no exchanged columns", "[copy]") {
    Shop shop;
    shop.fill(Shop::number_for("A", "0.100 in"));
    const Refusal swapped = shop.refusal([&] { shop.fill(Shop::number_for("C", "0.050 in")); });
    CHECK(field_of(swapped) == "value");
    CHECK_THAT(swapped.what(), says("class A should be stricter than class C") && says("exchanged"));
    shop.fill(Shop::number_for("C", "0.100 in"));
    CHECK_THAT(shop.refusal([&] { shop.fill(Shop::number_for("B", "0.110 in")); }).what(),
               says("class B should be stricter than class C"));
}

TEST_CASE("a copy of another year than the set's is no copy of it", "[copy]") {
    Shop shop;
    ConfirmRequest request = Shop::undercut();
    request.criteria = "iso-5817";
    request.part = "undercut-thick";
    request.classes.clear();
    request.copy = "ISO 5817:1992";
    const Refusal old = shop.refusal([&] { shop.confirm(request); });
    CHECK(field_of(old) == "edition");
    CHECK_THAT(old.what(), says("the copy is of 1992"));
    const auto said = [&](const char *copy) {
        request.copy = copy;
        const Refusal refusal = shop.refusal([&] { shop.confirm(request); });
        CHECK(field_of(refusal) == "give edition");
        return std::string(refusal.what());
    };
    CHECK_THAT(said("ISO 5817"), says("names no year"));
    CHECK_THAT(said("ISO 5817:2014 and 2023"), says("more than one edition, of 2014 and 2023"));
    request.copy = "ISO 5817:2014, printed 2019";
    shop.confirm(request);
}

TEST_CASE("a limit is confirmed, countersigned by another person, and taken back", "[copy]") {
    Shop shop;
    shop.confirm();
    CHECK(shop.standing_of("undercut-depth", 1) ==
          "second hand, confirmed by A. Field (page 12, edition AWS D17.1:2017)");
    CHECK(shop.standing_of("undercut-depth", 0) == "second hand");
    CHECK_THAT(shop.refusal([&] { shop.confirm(); }).what(), says("changes nothing"));
    shop.confirm(Shop::undercut(), "B. Reed");
    CHECK(shop.standing_of("undercut-depth", 1) ==
          "second hand, confirmed by A. Field (page 12, edition AWS D17.1:2017, countersigned by B. Reed)");
    CHECK_THAT(shop.refusal([&] { shop.confirm(Shop::undercut("13")); }).what(), says("needs a reason"));
    shop.withdraw("undercut-depth");
    CHECK(shop.standing_of("undercut-depth", 1) == "second hand");
    CHECK(shop.replays());
}

TEST_CASE("a name that is nearly the other one is asked about before it countersigns", "[copy]") {
    Shop shop;
    shop.confirm();
    CHECK_THAT(shop.refusal([&] { shop.confirm(Shop::undercut(), "A. Feild"); }).what(),
               says("is it another person?"));
    FillRequest number = Shop::number();
    number.second = "A. Feild";
    CHECK_THAT(shop.refusal([&] { shop.fill(number); }).what(), says("is it another person?"));
    number.sure = true;
    shop.fill(number);
    ConfirmRequest meant = Shop::undercut();
    meant.sure = true;
    shop.confirm(meant, "A. Feild");
    CHECK_THAT(shop.standing_of("undercut-depth", 1), says("countersigned by A. Feild"));
}

TEST_CASE("every part with a standing can be confirmed, and no blank", "[copy]") {
    Shop shop;
    ConfirmRequest request = Shop::undercut();
    request.part = "radiographic"; // a required exam
    request.classes.clear();
    shop.confirm(request);
    const auto set = shop.office.criteria("aws-d17.1");
    CHECK(std::any_of(set->required.begin(), set->required.end(),
                      [](const RequiredExam &one) { return !one.standing.confirmed.empty(); }));
    request.classes = {"A"};
    CHECK(field_of(shop.refusal([&] { shop.confirm(request); })) == "class");
    request.part = "reinforcement";
    CHECK_THAT(shop.refusal([&] { shop.confirm(request); }).what(), says("it is filled, not confirmed"));
    request.part = "undercut-depht";
    CHECK_THAT(shop.refusal([&] { shop.confirm(request); }).what(), says("did you mean 'undercut-depth'?"));
}

TEST_CASE("a confirmation holds for the very text, a filling for the edition, the blank and its rules",
          "[copy]") {
    Shop shop;
    shop.fill();
    shop.confirm();
    const OwnersCopyState entered = shop.book.owners_copy("aws-d17.1");
    CriteriaSet set = *shop.catalogue.criteria("aws-d17.1");
    CHECK(copy_that_bears(entered, set).fillings.size() == 1);
    CHECK(copy_that_bears(entered, set).confirmed.size() == 1);
    set.hash = "another";
    CHECK(copy_that_bears(entered, set).fillings.size() == 1);
    CHECK(copy_that_bears(entered, set).confirmed.empty());
    set.blanks[0].clause = "another";
    CHECK(copy_that_bears(entered, set).fillings.empty());
    set = *shop.catalogue.criteria("aws-d17.1");
    set.blanks[0].limits = "depth of undercut";
    CHECK(copy_that_bears(entered, set).fillings.empty());
    set = *shop.catalogue.criteria("aws-d17.1");
    set.edition = "another";
    CHECK(copy_that_bears(entered, set).fillings.empty());
    OwnersCopyState older = entered;
    older.fillings[0].record.use = "";
    CHECK_THAT(why_it_fell(older.fillings[0].record, *shop.catalogue.criteria("aws-d17.1")),
               says("an older program did not keep"));
}

TEST_CASE("a number falls with the rule that it was read for, and the verdict says so", "[copy]") {
    Shop shop;
    shop.fill();
    const auto changed = [&](const std::string &from, const std::string &to) {
        std::string text = shop.catalogue.criteria("aws-d17.1")->text;
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        return shop.office.with_copy(load_criteria(text.replace(at, from.size(), to)).kept);
    };
    const std::string rule = "  - id: reinforcement\n";
    CHECK(changed(rule, rule)->fillings.size() == 1);
    CHECK(changed(rule, "  # a word to the reader\n" + rule).get()->fillings.size() == 1);
    const auto fallen = changed(rule, rule + "    when: T over 0.05 in\n");
    CHECK(fallen->fillings.empty());
    REQUIRE(fallen->fallen.size() == 1);
    CHECK_THAT(fallen->fallen[0].why, says("0.060 in, by A. Field and B. Reed (page 21 of AWS D17.1:2017), "
                                           "fills it no more: a rule that speaks of it"));
}

TEST_CASE("an entry that one person alone would have made is not read", "[copy]") {
    FillingRecord record{"s",
                         "e",
                         "b",
                         "c",
                         "length",
                         "A",
                         "reinforcement",
                         "",
                         "1 in",
                         Exact(nm_per_inch),
                         {"it", "1", "A", "B", parse_day("2026-11-25")}};
    Entry entry = codec::entry_of(record);
    CHECK(codec::filling_from(entry) == record);
    record.read.second = "a";
    CHECK_THROWS_AS(codec::filling_from(codec::entry_of(record)), StoreError);
    record.read.second = "";
    CHECK_THROWS_AS(codec::filling_from(codec::entry_of(record)), StoreError);
}
