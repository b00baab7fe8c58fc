// What is said of a qualification without a datum stays true whatever the datum turns out to be.
#include "catch.hpp"
#include "qualify/range.hpp"

#include <random>

using namespace beadbook;

namespace {

class RandomWelds {
public:
    explicit RandomWelds(const RangeRules &rules) : rules_(rules) {}

    Weld weld(std::mt19937 &random, bool of_test) const {
        Weld out;
        for (std::size_t i = 0; i < trait_count; ++i) {
            const auto trait = static_cast<Trait>(i);
            if (is_size(trait)) {
                // Often exactly on a usual size, where edges are.
                const auto &usual = rules_.usual_sizes[i];
                if (trait == Trait::layers)
                    out.size(trait) = Exact(pick(random, 1, 5));
                else if (!usual.empty() && pick(random, 0, 1) == 0)
                    out.size(trait) =
                        usual[static_cast<std::size_t>(pick(random, 0, static_cast<int>(usual.size()) - 1))] *
                        Exact(pick(random, 1, 4));
                else
                    out.size(trait) = Exact(pick(random, 1, 4000)) * Exact(25'400);
                continue;
            }
            const auto &words = (of_test ? rules_.test_words : rules_.work_words)[i];
            // Few words, so that tests and work meet.
            const int last = static_cast<int>(std::min<std::size_t>(words.size(), 4)) - 1;
            out.word(trait) = words.empty() ? "any" : words[static_cast<std::size_t>(pick(random, 0, last))];
        }
        return out;
    }

    static int pick(std::mt19937 &random, int from, int to) {
        return std::uniform_int_distribution<int>(from, to)(random);
    }

private:
    const RangeRules &rules_;
};

} // namespace

TEST_CASE("a datum that is missing never decides what a test qualifies", "[properties]") {
    std::mt19937 random(9606);
    std::size_t covered = 0, refused = 0, open = 0;
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = shipped_range_rules(name);
        const RandomWelds welds(*rules);
        for (int n = 0; n < 4000; ++n) {
            const Weld test = welds.weld(random, true), work = welds.weld(random, false);
            Weld less_test = test, less_work = work;
            for (std::size_t i = 0; i < trait_count; ++i) {
                if (RandomWelds::pick(random, 0, 9) == 0) less_test.forget(static_cast<Trait>(i));
                if (RandomWelds::pick(random, 0, 9) == 0) less_work.forget(static_cast<Trait>(i));
            }
            const auto whole_range = range_of(*rules, test), partial_range = range_of(*rules, less_test);
            for (std::size_t v = 0; v < whole_range.size(); ++v) {
                const auto whole = cover_of(whole_range[v], work),
                           partial = cover_of(partial_range[v], less_work);
                INFO(name << ", " << info(whole_range[v].variable->of).name << "\ntest "
                          << print(test, rules->unit) << "\nknown " << print(less_test, rules->unit)
                          << "\nwork " << print(work, rules->unit) << "\nknown "
                          << print(less_work, rules->unit));
                // Not limited is as good as covered.
                const Truth is = whole ? whole->covered : Truth::yes,
                            said = partial ? partial->covered : Truth::yes;
                if (said != Truth::unknown && said != is) FAIL();
                if (partial && said == Truth::unknown && partial->lacks.empty())
                    FAIL("cannot say, but nothing is named");
                ++(said == Truth::yes ? covered : said == Truth::no ? refused : open);
            }
        }
    }
    // The generator must reach all three.
    CHECK(covered > 1000);
    CHECK(refused > 1000);
    CHECK(open > 1000);
}
