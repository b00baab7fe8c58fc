#include "operations/import_rows.hpp"

#include "catch.hpp"
#include "measure/text.hpp"
#include "operations/importing.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a table that grew since it was imported names what is on record, and what is new") {
    Desk desk;
    register_with_exam(desk, "T-1");
    import_into(desk, rows("T-1", 3), Sheet::indications);
    CHECK_THAT(refusal_of(desk, rows("T-1", 3), Sheet::indications), says("was imported already"));
    CHECK_THAT(
        refusal_of(desk, rows("T-1", 5), Sheet::indications),
        says("rows 2 to 4 are on record already (row 2 as #1 of T-1, row 3 as #2 of T-1 and row 4 as #3 of "
             "T-1), rows 5 to 6 are new"));
    CHECK_THAT(refusal_of(desk, "coupon,exam,type,size,at\r\nT-1,1,gas pore,0.011,1\r\n", Sheet::indications),
               says("row 2 is on record already (row 2 as #2 of T-1), no row is new"));
    ImportRequest again{Sheet::indications, rows("T-1", 5)};
    again.again = true;
    auto prepared = prepare_import(desk.office, std::move(again));
    desk.write([&](Writing &w) { return store_import(w, std::move(prepared)); });
    CHECK(numbers_of(desk, "T-1", 1).size() == 8);
}

TEST_CASE("a place that is said in two ways, or by its end alone, is refused at every door") {
    Desk desk;
    register_with_exam(desk, "T-1");
    const auto of_row = [&](const std::string &columns, const std::string &cells) {
        return refusal_of(desk,
                          "coupon,exam,type,length," + columns + "\r\nT-1,1,crack,0.2," + cells + "\r\n",
                          Sheet::indications);
    };
    CHECK_THAT(of_row("at,middle", "3,4"), says("row 2: 'at' says that it begins at 3 in, and 'middle'"));
    CHECK_THAT(of_row("middle,end", "3,4"), says("do not go together"));
    CHECK_THAT(of_row("end", "3"), says("'end' says that it ends at 3 in, and not where it begins"));
    CHECK_THAT(
        refusal_of(desk, file_of(R"([{"id": "N", "fields": {"weld-length": "8 in"}, "exams": [{"method": "RT",
        "date": "2026-11-20", "indications": [{"type": "crack", "at": "3 in", "middle": "4 in"}]}]}])")),
        says("give one of the two"));
    CHECK(of_row("middle", "4") == "taken");
}

TEST_CASE("rows of more finds than their exam found name the rows, both counts and how that is mended") {
    Desk desk;
    register_with_exam(desk, "T-1");
    import_into(desk,
                "coupon,exam,method,date,examiner,level,found\r\nT-1,2,RT,2026-11-20,A. Field,II,1\r\n"
                "T-1,3,VT,2026-11-20,A. Field,II,none\r\n",
                Sheet::exams);
    const std::string all = refusal_of(desk,
                                       "coupon,exam,type,size,at\r\nT-1,3,gas pore,0.03,3\r\nT-1,2,gas "
                                       "pore,0.02,3\r\nT-1,2,gas pore,0.03,4\r\n",
                                       Sheet::indications);
    CHECK_THAT(all, says("3 rows cannot be taken"));
    CHECK_THAT(all, says("row 2: exam 3 (VT) of coupon T-1 was finished with none found, and this row gives "
                         "1; leave out"));
    CHECK_THAT(all, says("rows 3 to 4: exam 2 (RT) of coupon T-1 was finished with 1 found, and these rows "
                         "give 2; leave out"));
    const std::string one = "coupon,exam,type,size,at\r\nT-1,2,gas pore,0.02,3\r\n";
    import_into(desk, one, Sheet::indications);
    // The same table again is told as that.
    CHECK_THAT(refusal_of(desk, one, Sheet::indications), says("the same table was imported already"));
    CHECK_THAT(refusal_of(desk, "coupon,exam,type,size,at\r\nT-1,2,gas pore,0.03,5\r\n", Sheet::indications),
               says("was finished with 1 found, 1 is on record, and this row gives 1 more") &&
                   says("finish it with 2"));
}

TEST_CASE("what an exam found by its count, and the rows do not bring, is told") {
    Desk desk;
    register_with_exam(desk, "T-1");
    std::vector<std::string> notes;
    import_into(desk,
                "coupon,exam,method,date,examiner,level,found\r\nT-1,2,RT,2026-11-20,A. Field,II,3\r\n"
                "T-1,3,VT,2026-11-20,A. Field,II,0\r\n",
                Sheet::exams, &notes);
    CHECK_THAT(joined(notes, "\n"),
               says("1 exam says that it found something, and its finds are not on record"));
    import_into(desk, "coupon,exam,type,size,at\r\nT-1,2,gas pore,0.03,3\r\n", Sheet::indications, &notes);
    CHECK_THAT(joined(notes, "\n"), says("exam 2 (RT) found 3 by its count, and 1 is on record"));
    import_into(desk, "coupon,exam,type,size,at\r\nT-1,2,gas pore,0.03,4\r\nT-1,2,gas pore,0.03,5\r\n",
                Sheet::indications, &notes);
    CHECK(notes.empty());
}
