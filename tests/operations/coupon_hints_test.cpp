#include "operations/coupon_hints.hpp"

#include "booth.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string notes_of(Booth &booth, const Booth::Fields &fields) {
    static int number = 0;
    const std::string mark = "H-" + std::to_string(++number);
    std::string out;
    for (const auto &note : booth.write([&](Writing &w) { return register_coupon(w, {mark, fields}); }).notes)
        out += note + "\n";
    return out;
}

const Booth::Fields plate{{"criteria", "ufgs-15216n"}, {"joint", "groove"},        {"joint-form", "butt"},
                          {"thickness", "0.250in"},    {"thickness-2", "0.125in"}, {"material", "steel"}};

Booth::Fields plus(Booth::Fields fields, const std::string &name, const std::string &value) {
    fields[name] = value;
    return fields;
}

} // namespace

TEST_CASE(
    "the thickness of a butt is the thinner member only where somebody says that it is welded through") {
    Booth booth;
    CHECK_THAT(notes_of(booth, plate),
               says("weld-thickness is not said, and ufgs-15216n goes by it") && says("it is 0.125in"));
    booth.put("T-0", plate);
    CHECK_FALSE(booth.office.coupon("T-0").record.facts().values.has(Quantity::weld_thickness));
    booth.put("T-1", plus(plate, "weld-thickness", "full"));
    CHECK(booth.office.coupon("T-1").record.get("weld-thickness") == "0.125in");
    CHECK_THAT(notes_of(booth, plus(plate, "weld-thickness", "full")),
               says("weld-thickness 0.125in, the thinner member") && !says("is not said"));
    CHECK_THAT(notes_of(booth, plus(plate, "weld-thickness", "0.1in")), !says("is not said"));
    for (const auto &[name, value] : {std::pair{"joint", "fillet"}, {"joint-form", "tee"}}) {
        const auto fields = plus(plus(plate, "weld-thickness", "full"), name, value);
        CHECK(field_of(booth.refusal([&] { booth.put("T-9", fields); })) == "weld-thickness");
    }
    CHECK_THAT(booth.refusal([&] {
                        booth.put("T-9", {{"joint", "groove"}, {"weld-thickness", "full"}});
                    })
                   .what(),
               says("not known"));
    // What does not go by it does not ask.
    CHECK_THAT(notes_of(booth, plus(plate, "criteria", "mil-hdbk-1890-table-3")),
               !says("goes by it") && !says("weld-thickness"));
}

TEST_CASE("the seam of a tube and the unit of bare numbers are named, not guessed") {
    Booth booth;
    const Booth::Fields tube{{"joint", "groove"}, {"form", "tube"}};
    CHECK_THAT(notes_of(booth, tube), says("girth if the weld goes round the tube"));
    CHECK_THAT(notes_of(booth, plus(tube, "position", "6G")), says("a tube in position 6G has a girth seam"));
    CHECK(notes_of(booth, plus(tube, "seam", "longitudinal")).empty());
    CHECK_THAT(notes_of(booth, plus(tube, "joint", "fillet")), says("girth if the weld goes round the tube"));
    booth.put("T-0", plus(tube, "position", "6G"));
    CHECK(booth.office.coupon("T-0").record.get("seam").empty());
    CHECK_THAT(notes_of(booth, {{"criteria", "iso-5817"}}),
               says("no unit is fixed for bare numbers") && says("iso-5817 is written in mm"));
    CHECK_THAT(notes_of(booth, {{"criteria", "iso-5817"}, {"units", "in"}}), !says("no unit is fixed"));
}

TEST_CASE("what the criteria will ask for a verdict is told at registering, and no more once it is told") {
    Booth booth;
    const std::string bare = notes_of(booth, {{"criteria", "mil-hdbk-1890-table-3"}, {"class", "2"}});
    CHECK_THAT(bare, says("for a verdict mil-hdbk-1890-table-3 may ask for what is not told yet: ") &&
                         says("the thickness (thinner member)") && says("the magnetic (is the base metal?)"));
    const Booth::Fields told{{"criteria", "mil-hdbk-1890-table-3"},
                             {"class", "2"},
                             {"joint", "groove"},
                             {"thickness", "0.150in"},
                             {"weld-length", "8in"},
                             {"magnetic", "yes"},
                             {"process", "GTAW"},
                             {"material", "steel"}};
    // Whoever tells all of it is accepted without a question.
    CHECK_THAT(notes_of(booth, told), !says("may ask for"));
    booth.put("T-1", told);
    booth.exams();
    booth.finds("");
    CHECK(judge_coupon(booth.office, booth.office.coupon("T-1")).verdict() == Verdict::accept);
    // A weld-thickness that was asked for by itself is not asked for twice.
    CHECK_THAT(notes_of(booth, plate), says("weld-thickness is not said") && !says("the weld-thickness"));
    CHECK(notes_of(booth, {{"joint", "groove"}}).empty()); // no criteria ask nothing
}

TEST_CASE("a process that the rules of such tests call otherwise is told, of criteria made for these tests") {
    Booth booth;
    const auto by = [](const std::string &criteria, const std::string &process) {
        return Booth::Fields{{"criteria", criteria}, {"process", process}};
    };
    CHECK_THAT(notes_of(booth, by("iso-9606-1-tests", "SMAW")),
               says("process: 'SMAW' is not known to iso-9606-1 for a test") && says("SMAW is here 111") &&
                   says("called so, the test qualifies nobody by iso-9606-1 or ship-hull"));
    CHECK_THAT(notes_of(booth, by("iso-9606-1-tests", "111 + SMAW")), says("'SMAW' is not known"));
    CHECK_THAT(notes_of(booth, by("iso-9606-1-tests", "111")), !says("is not known to"));
    CHECK_THAT(notes_of(booth, by("asme-ix-tests", "111")),
               says("process: '111' is not known to asme-ix for a test"));
    // Other words too, each by the rules that the criteria go with.
    const auto iso =
        notes_of(booth, plus(plus(by("iso-9606-1-tests", "111"), "runs", "multi"), "progression", "up"));
    CHECK_THAT(iso, says("runs: 'multi' is not known to iso-9606-1 for a test") &&
                        says("progression: 'up' is not known to iso-9606-1 for a test") &&
                        says("unless their word for it is told when it is to qualify"));
    const Booth::Fields d11{{"criteria", "aws-d1.1-visual"}, {"class", "welder test"}, {"process", "SMAW"}};
    CHECK_THAT(notes_of(booth, plus(d11, "metal-group", "II")), !says("aws-d17.1"));
    CHECK_THAT(notes_of(booth, plus(plus(d11, "metal-group", "II"), "backing", "with")),
               says("backing: 'with' is not known to aws-d1.1 for a test"));
    CHECK_THAT(notes_of(booth, plus(by("iso-5817", "111"), "runs", "multi")), !says("is not known to"));
    // By what rules a weld of the work will be asked, nobody can say; and practice is no test.
    CHECK_THAT(notes_of(booth, by("iso-5817", "SMAW")), !says("is not known to"));
    CHECK_THAT(notes_of(booth, plus(by("asme-ix-tests", "111"), "purpose", "practice")),
               !says("is not known to"));
}
