// What engine 18 takes that those before it did not: the width of a cap lies across the weld.
#include "catch.hpp"
#include "facts/log_line.hpp"
#include "operations/said_before.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

void wide_cap(Booth &booth, const std::string &line) {
    booth.put("T-1", {{"criteria", "iso-5817"},
                      {"class", "B"},
                      {"joint", "groove"},
                      {"joint-form", "butt"},
                      {"form", "plate"},
                      {"seam", "straight"},
                      {"weld-length", "300mm"},
                      {"thickness", "10mm"},
                      {"weld-thickness", "10mm"},
                      {"weld-width", "14mm"},
                      {"magnetic", "yes"},
                      {"inside", "accessible"},
                      {"process", "SMAW"},
                      {"material", "carbon steel"}});
    booth.exam(Exam::VT, [](ExamRequest &) {});
    booth.log(line);
    booth.finish(1);
}

bool contradicts(const ClassJudgement &judged) {
    return std::any_of(judged.findings.begin(), judged.findings.end(),
                       [](const Finding &f) { return f.kind == Finding::Kind::contradiction; });
}

} // namespace

TEST_CASE(
    "a cap may be wider than the stretch that it is so high on, and an older engine's word is replayed") {
    for (const char *line : {"cap height 2.3mm w 14mm from 100mm to 110mm smooth",
                             "cap height 2.3mm w 14mm l 10mm at 100mm smooth",
                             "excess penetration h 1mm w 14mm from 100mm to 110mm"}) {
        INFO(line);
        Booth booth;
        wide_cap(booth, line);
        const CouponState then = booth.office.coupon("T-1");
        const auto set = booth.office.criteria("iso-5817");
        const Judged now = judge_coupon(booth.office, then, {});
        CHECK_FALSE(contradicts(now.judgement.classes[*now.sought]));
        auto found = then.found();
        for (auto &one : found) one.size_by_way();
        const Judgement said =
            judge(*set, then.record.facts(), then.exams_done(), found, Vocabulary::shipped(), 17);
        CHECK(contradicts(said.classes[*now.sought]));
        check_replayed(booth, *set, said, 17);
    }
}

TEST_CASE("what is no form of the bead is no wider than long") {
    for (const char *line : {"pore l 1mm w 2mm", "undercut l 1mm w 2mm d 0.1mm", "slag l 1mm w 2mm"})
        CHECK_THROWS_AS(parse_log_line(line, {}, Unit::millimetre), InputError);
    CHECK_NOTHROW(parse_log_line("cap height 1mm l 1mm w 2mm", {}, Unit::millimetre));
}
