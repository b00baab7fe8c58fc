// Entries of somebody who had signed in: they say so, and are read as all others.
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/judging.hpp"
#include "operations/keeping.hpp"
#include "operations/logging.hpp"
#include "operations/people.hpp"
#include "operations/photos.hpp"
#include "records/changed_values.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// The same work, by who had signed in or by who typed a name.
void work(Desk &desk, Writing::Known known) {
    const auto enter = [&](auto what) {
        Writing writing(desk.office, "A. Field", known);
        what(writing);
        commit(writing);
    };
    enter([](Writing &w) {
        PersonRequest person;
        person.name = "B. Keeper";
        person.roles = {"technician"};
        write_person(w, person);
        register_coupon(w,
                        {"T-1", {{"criteria", "ufgs-15216n"}, {"joint", "groove"}, {"thickness", "0.2 in"}}});
        ExamRequest exam;
        exam.coupon = "T-1";
        exam.examiner = "A. Field";
        exam.level = "II";
        exam.conditions = {"light=1000 lx"};
        record_exam(w, exam);
        log_lines(
            w, {.coupon = "T-1", .text = "undercut l 0.1 d 0.01 at 1 in\ncrack 0.2 at 2 in # signed in\n"});
        finish_exam(w, {"T-1", 1, {}, true});
        remark_on(w, "T-1", "cold");
        attach_photo(w, {"T-1", "\xff\xd8\xff", 1});
    });
    enter([](Writing &w) { judge_and_keep(w, "T-1"); });
    enter([](Writing &w) { judge_and_keep(w, "T-1"); }); // the same verdict is not kept again
    enter([](Writing &w) { withdraw_indication(w, "T-1", 1, "gone after cleaning"); });
}

} // namespace

TEST_CASE("what was entered signed in reads as what was not, and says so", "[sign-in]") {
    Desk typed, proved;
    work(typed, Writing::Known::by_typed_name);
    work(proved, Writing::Known::by_sign_in);
    const auto theirs = typed.book.history("T-1"), ours = proved.book.history("T-1");
    REQUIRE(theirs.size() == ours.size());
    for (std::size_t i = 0; i < ours.size(); ++i) {
        INFO(ours[i].kind << " " << ours[i].body);
        CHECK(stamp_of(ours[i]).signed_in);
        CHECK_FALSE(stamp_of(theirs[i]).signed_in);
        CHECK(without_sign_in(ours[i].body) == theirs[i].body);
        CHECK(without_sign_in(theirs[i].body) == theirs[i].body);
        CHECK(is_withdrawal(ours[i]) == is_withdrawal(theirs[i]));
        CHECK(changed_values(ours, ours[i]) == changed_values(theirs, theirs[i]));
    }
    const CouponState a = typed.office.coupon("T-1"), b = proved.office.coupon("T-1");
    CHECK(a.record == b.record);
    CHECK(a.exams == b.exams);
    CHECK(a.indications == b.indications);
    REQUIRE(b.verdicts.size() == 1);
    CHECK(b.verdicts[0].stamp.signed_in);
    CHECK(a.verdicts[0].body == b.verdicts[0].body);
    CHECK(proved.book.person("B. Keeper").record.roles == std::vector<std::string>{"technician"});
    const Verified verified = verify(proved.office, {true, ""});
    CHECK(verified.holds());
    CHECK(verified.replay->verdicts == 1);
}
