#include "catch.hpp"
#include "covers.hpp"
#include "qualify/cover_reduction.hpp"
#include "qualify/cover_search.hpp"
#include "qualify/set_cover.hpp"

using namespace beadbook;
using namespace beadbook::test;
using std::chrono::milliseconds;

namespace {

Bits bits(const std::string &text) { return Bits(text); }

/// A problem that is not settled without a solver. A smallest cover has 61 of its 81 sets.
const CoverProblem &hard() {
    static const CoverProblem problem = lines_to_meet(4);
    return problem;
}

SetCover hard_with(const CoverSolver &solver) { return smallest_cover(hard().contents(), solver); }

/// As it is found without one; once, because it takes a while.
const SetCover &hard_alone() {
    static const SetCover cover = hard_with({});
    return cover;
}

bool says_in(const std::vector<std::string> &notes, const std::string &text) {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const std::string &note) { return note.find(text) != std::string::npos; });
}

} // namespace

TEST_CASE("the smallest cover is smaller than the greedy one") {
    // Greedy takes the set of four first and then needs two more.
    const SetCover cover = smallest_cover({bits("011110"), bits("111000"), bits("000111")});
    CHECK(cover.chosen == std::vector<std::size_t>{1, 2});
    CHECK(cover.proven);
    CHECK(cover.at_least == 2);
    CHECK(smallest_cover({}).chosen.empty());
    CHECK(smallest_cover({}).proven);
    CHECK(smallest_cover({bits("000")}).chosen.empty());
    CHECK(smallest_cover({bits("101"), bits("101")}).chosen == std::vector<std::size_t>{0});
}

TEST_CASE("random small covers are as small as trying all finds, proven without a solver", "[properties]") {
    std::mt19937 random(20261126);
    const CoverSolver nobody = [](const CoverProblem &, milliseconds) -> CoverAnswer {
        FAIL("an easy cover was put to the solver");
        return {};
    };
    for (int round = 0; round < 150; ++round) {
        const std::size_t elements = 1 + random() % 14, sets = 2 + random() % 9;
        const CoverProblem problem = random_cover(random, elements, sets, 10 + random() % 40);
        const std::size_t fewest = fewest_by_trying(problem);
        const SetCover cover = smallest_cover(problem.contents(), nobody);
        CHECK(problem.covered_by(cover.chosen));
        CHECK(cover.chosen.size() == fewest);
        CHECK(cover.at_least == fewest);
        CHECK(cover.proven);
        // The bound alone, and a search that is cut short anywhere, say nothing that is not so.
        CHECK(cover_bound(problem) <= fewest);
        for (const std::size_t steps : {0U, 7U, 100U}) {
            const CoverSearch cut = search_cover(problem, steps);
            CHECK(problem.covered_by(cut.chosen));
            CHECK(cut.at_least <= fewest);
        }
    }
}

TEST_CASE("known smallest covers of lines by points are found, or bounded truly", "[published]") {
    // Sizes of cap sets: see lines_to_meet.
    const SetCover plane = smallest_cover(lines_to_meet(2).contents());
    CHECK(plane.chosen.size() == 5);
    CHECK(plane.proven);
    const SetCover space = smallest_cover(lines_to_meet(3).contents());
    CHECK(space.chosen.size() == 18);
    CHECK(space.proven);
    const SetCover &four = hard_alone();
    CHECK(hard().covered_by(four.chosen));
    CHECK(four.chosen.size() >= 61);
    CHECK(four.at_least <= 61);
    CHECK(four.at_least >= 27); // each point is on 40 of 1,080 lines
    CHECK_FALSE(four.proven);
    CHECK(four.notes.empty()); // nobody was asked
}

TEST_CASE("what is plain is taken out: forced sets, dominated ones, parts that touch nothing") {
    // The first set alone holds element 5, and with it 4; the second is inside the first. What is left is a
    // ring of three, twice.
    std::vector<Bits> sets{bits("110000000"), bits("010000000")};
    for (const char *ring : {"011", "101", "110"}) {
        sets.push_back(bits("000000" + std::string(ring)));
        sets.push_back(bits("000" + std::string(ring) + "000"));
    }
    const ReducedCover reduced = reduce_cover(sets);
    CHECK(reduced.forced == std::vector<std::size_t>{0});
    REQUIRE(reduced.parts.size() == 2);
    for (const auto &part : reduced.parts) {
        CHECK(part.problem.sets == 3);
        CHECK(part.problem.holders.size() == 3);
    }
    CHECK(reduced.parts[0].names != reduced.parts[1].names);
    const SetCover cover = smallest_cover(sets);
    CHECK(cover.chosen.size() == 5);
    CHECK(cover.proven);
}

TEST_CASE("hard parts share the patience, and their bounds add up") {
    // The hard problem twice, side by side, and one set that is forced.
    const auto contents = hard().contents();
    const std::size_t lines = hard().holders.size();
    std::vector<Bits> sets;
    for (const auto &one : contents) {
        Bits left = one, right = one;
        left.resize(2 * lines + 1);
        right.resize(2 * lines + 1);
        sets.push_back(left);
        sets.push_back(right << lines);
    }
    sets.emplace_back(2 * lines + 1);
    sets.back().set(2 * lines);
    std::vector<milliseconds> times;
    const SetCover cover = smallest_cover(
        sets,
        [&](const CoverProblem &problem, milliseconds patience) -> CoverAnswer {
            times.push_back(patience);
            CHECK(problem.sets == 81);
            CHECK(problem.holders.size() == lines);
            return {{}, 0, "No answer."};
        },
        milliseconds(3'000));
    CHECK(times == std::vector<milliseconds>{milliseconds(1'500), milliseconds(1'500)});
    CHECK(cover.notes == std::vector<std::string>{"No answer."}); // once
    CHECK_FALSE(cover.proven);
    CHECK(cover.at_least >= 2 * 27 + 1);
    CHECK(cover.at_least <= 2 * 61 + 1);
}

TEST_CASE("a solver's answer is used as far as it holds") {
    const std::size_t alone = hard_alone().chosen.size();
    const auto all_but = [](std::size_t left_out, std::size_t sets) {
        std::vector<std::size_t> out;
        for (std::size_t s = 0; s < sets; ++s)
            if (s != left_out) out.push_back(s);
        return out;
    };
    SECTION("a worse cover with a better bound: the bound is taken") {
        const SetCover cover = hard_with([&](const CoverProblem &problem, milliseconds) -> CoverAnswer {
            return {all_but(0, problem.sets), 40, ""};
        });
        CHECK(cover.chosen.size() == alone);
        CHECK(cover.at_least == 40);
        CHECK_FALSE(cover.proven);
        CHECK(cover.notes.empty());
    }
    SECTION("a bound as large as what is known: proven") {
        const SetCover cover = hard_with([&](const CoverProblem &problem, milliseconds) -> CoverAnswer {
            return {all_but(0, problem.sets), alone, ""};
        });
        CHECK(cover.proven);
        CHECK(cover.at_least == alone);
    }
    SECTION("a proof that a smaller cover disproves") {
        const SetCover cover = hard_with([&](const CoverProblem &problem, milliseconds) -> CoverAnswer {
            return {all_but(0, problem.sets), problem.sets - 1, ""};
        });
        CHECK(cover.chosen.size() == alone);
        CHECK(cover.at_least <= 61);
        CHECK_FALSE(cover.proven);
        CHECK(says_in(cover.notes, "proof does not hold"));
    }
    SECTION("no cover: nothing of it is taken") {
        const SetCover cover = hard_with([](const CoverProblem &, milliseconds) -> CoverAnswer {
            return {{0, 1, 2}, 3, ""};
        });
        CHECK(cover.chosen.size() == alone);
        CHECK(cover.at_least >= 27);
        CHECK_FALSE(cover.proven);
        CHECK(says_in(cover.notes, "leaves work uncovered"));
    }
    SECTION("sets that are not there, or twice") {
        for (const std::vector<std::size_t> &wrong : {std::vector<std::size_t>{81}, {5, 5}}) {
            const SetCover cover = hard_with([&](const CoverProblem &, milliseconds) -> CoverAnswer {
                return {wrong, 1, ""};
            });
            CHECK(cover.chosen.size() == alone);
            CHECK_FALSE(cover.proven);
            CHECK(cover.notes.size() == 1);
        }
    }
}

TEST_CASE("a better cover by a solver replaces the one found here") {
    // The hard problem with its points in an order in which the search here ends above 61, and a largest cap
    // set, whose points are the ones to leave out.
    const std::vector<std::size_t> cap{13, 14, 17, 22, 25, 26, 40, 41, 44, 49,
                                       52, 53, 59, 61, 64, 69, 70, 74, 75, 77};
    std::vector<Bits> sets;
    for (std::size_t s = 0; s < 81; ++s) sets.push_back(hard().contents()[s * 40 % 81]);
    const std::size_t alone = smallest_cover(sets).chosen.size();
    REQUIRE(alone > 61);
    const SetCover cover =
        smallest_cover(sets, [&](const CoverProblem &problem, milliseconds) -> CoverAnswer {
            CoverAnswer answer;
            for (std::size_t s = 0; s < problem.sets; ++s)
                if (std::find(cap.begin(), cap.end(), s * 40 % 81) == cap.end()) answer.chosen.push_back(s);
            answer.at_least = 30;
            return answer;
        });
    CHECK(cover.chosen.size() == 61);
    CHECK(cover.at_least == 30);
    CHECK_FALSE(cover.proven);
    Bits covered(sets.front().size());
    for (const std::size_t s : cover.chosen) covered |= sets[s];
    CHECK(covered.all());
}
