// Whether what is held lets each job be done: yes, no, or cannot say, and which renewals give it back.
#include "catch.hpp"
#include "qualify/allowed.hpp"
#include "qualify/welds.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A job of single words and sizes.
Job job(const std::string &id, const std::string &text) {
    const Weld work = weld(text);
    Job out;
    out.id = id;
    for (std::size_t i = 0; i < trait_count; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (!work.knows(trait)) continue;
        if (is_size(trait))
            out.sizes[i] = Job::Sizes{*work.size(trait), *work.size(trait)};
        else
            out.words[i] = {work.word(trait)};
    }
    return out;
}

std::shared_ptr<const RangeRules> rules() { return shipped_range_rules("aws-d17.1"); }

const std::string sheet = "joint groove, form sheet, process GTAW, metal group Ia";

class Held {
public:
    TestRange of(const std::string &more) const { return range_of(*rules_, weld(sheet + ", " + more)); }

private:
    std::shared_ptr<const RangeRules> rules_ = rules();
};

} // namespace

TEST_CASE("a job is allowed, refused or open, to the nanometre of a rounded end") {
    const Held held;
    const std::vector<TestRange> valid{held.of("position 2G, thickness 0.045 in")};
    const auto answers =
        answers_of({job("in", sheet + ", position F, thickness 0.030 in"),
                    job("under", sheet + ", position F, thickness 0.761999 mm"),
                    job("open", sheet + ", thickness 0.05 in"), job("refused", sheet + ", position V")},
                   {valid});
    REQUIRE(answers.size() == 4);
    CHECK(answers[0].allowed == Truth::yes);
    CHECK(answers[0].by == std::vector<std::size_t>{0});
    CHECK(answers[1].allowed == Truth::no);
    CHECK(answers[1].by.empty());
    CHECK(answers[2].allowed == Truth::unknown);
    CHECK(answers[2].lacks == std::vector<Lack>{{Trait::position, Lack::Of::work}});
    // The thickness is not told, but another position refuses it anyway.
    CHECK(answers[3].allowed == Truth::no);
    CHECK(answers[3].lacks.empty());
}

TEST_CASE("several that hold allow a job together; where nothing holds, all is refused") {
    const Held held;
    Job both = job("both", sheet + ", position F");
    both.sizes[index_of(Trait::thickness)] = Job::Sizes{Exact(1'270'000), Exact(7'620'000)}; // 0.05 to 0.3 in
    const std::vector<TestRange> thin{held.of("position 1G, thickness 0.05 in")},
        two{held.of("position 1G, thickness 0.05 in"), held.of("position 1G, thickness 0.125 in")};
    CHECK(answers_of({both}, {thin}).at(0).allowed == Truth::no);
    CHECK(answers_of({both}, {two}).at(0).allowed == Truth::yes);
    CHECK(answers_of({both}, {two}).at(0).by == std::vector<std::size_t>{0, 1});
    CHECK(answers_of({both}, {{}}).at(0).allowed == Truth::no);
}

TEST_CASE("a renewal is named only where it gives the whole job back") {
    const Held held;
    const std::vector<TestRange> lapsed{held.of("position 3G, thickness 0.05 in"),
                                        held.of("position 2G, thickness 0.05 in")};
    Job both = job("both", sheet + ", position F, thickness 0.05 in");
    both.words[index_of(Trait::position)] = {"F", "O"};
    const auto answers =
        answers_of({job("flat", sheet + ", position H, thickness 0.05 in"), both}, {{}, lapsed});
    CHECK(answers[0].allowed == Truth::no);
    CHECK(answers[0].renewals == std::vector<std::size_t>{1});
    CHECK(answers[1].allowed == Truth::no);
    CHECK(answers[1].renewals.empty());
    // What is valid needs no renewal.
    CHECK(answers_of({job("flat", sheet + ", position H, thickness 0.05 in")}, {lapsed, lapsed})
              .at(0)
              .renewals.empty());
}

TEST_CASE("what is in doubt allows nothing, and keeps what it would allow open") {
    const Held held;
    const std::vector<TestRange> doubted{held.of("position 1G, thickness 0.05 in"),
                                         held.of("position 3G, thickness 0.05 in")};
    const std::vector<Job> jobs{job("upright", sheet + ", position V, thickness 0.05 in"),
                                job("over", sheet + ", position O, thickness 0.05 in"),
                                job("flat", sheet + ", position F, thickness 0.05 in")};
    const auto answers = answers_of(jobs, {{held.of("position 1G, thickness 0.05 in")}, {}, doubted});
    CHECK(answers[0].allowed == Truth::unknown);
    CHECK(answers[0].doubted == std::vector<std::size_t>{1});
    CHECK(answers[0].by.empty());
    CHECK(answers[1].allowed == Truth::no);
    CHECK(answers[1].doubted.empty());
    CHECK(answers[2].allowed == Truth::yes);
    CHECK(answers[2].doubted.empty());
}
