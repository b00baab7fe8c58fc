#include "random_case.hpp"

#include "case.hpp"
#include "criteria/shipped.hpp"
#include "measure/print.hpp"
#include "naive_pieces.hpp"
#include "naive_together.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>

namespace beadbook::test {
namespace {

constexpr std::int64_t step = nm_per_inch / 64;

int pick(std::mt19937 &random, int from, int to) {
    return std::uniform_int_distribution<int>(from, to)(random);
}

Exact steps(std::mt19937 &random, int from, int to) { return Exact(pick(random, from, to) * step); }

/// Types that the set has rules for in this exam; else any.
TypeId random_type(std::mt19937 &random, const CriteriaSet &set, Exam exam) {
    const Vocabulary &v = Vocabulary::shipped();
    for (int tries = 0; tries < 200; ++tries) {
        const auto type = static_cast<TypeId>(pick(random, 0, static_cast<int>(v.size()) - 1));
        if (!set.rules_for(type, exam).empty() || tries > 190) return type;
    }
    return 0;
}

/// Most coupons lie inside the scope, as far as words go, or there would be little to judge; some welds have
/// two processes.
void put_in_scope(std::mt19937 &random, const CriteriaSet &set, Coupon &coupon) {
    if (pick(random, 0, 9) == 0) return;
    for (const auto &part : set.scope)
        for (const auto &c : part.when) {
            // A part that is not asked of every coupon must not move those that it is not asked of.
            if (!part.only_if.empty()) continue;
            if (c.kind != Condition::Kind::word || (c.fitting >> coupon.facts[c.slot] & 1u)) continue;
            const auto words = static_cast<int>(info(static_cast<Fact>(c.slot)).words.size());
            do coupon.facts[c.slot] = static_cast<std::uint8_t>(pick(random, 1, words));
            while (!(c.fitting >> coupon.facts[c.slot] & 1u));
        }
}

} // namespace

RandomCase random_case(std::mt19937 &random, const CriteriaSet &set) {
    RandomCase out;
    Coupon &coupon = out.coupon;
    for (std::size_t f = 0; f < fact_count; ++f)
        coupon.facts[f] = static_cast<std::uint8_t>(
            pick(random, 1, static_cast<int>(info(static_cast<Fact>(f)).words.size())));
    put_in_scope(random, set, coupon);
    if (pick(random, 0, 4) == 0)
        coupon.more_processes = std::uint64_t{1}
                                << pick(random, 1, static_cast<int>(info(Fact::process).words.size()));
    for (std::size_t q = 0; q < coupon_quantities; ++q)
        coupon.values.set(static_cast<Quantity>(q), steps(random, 4, 24));
    if (const int unit = pick(random, 0, 2); unit > 0)
        coupon.values.measure_in(unit == 1 ? Unit::inch : Unit::millimetre);
    const auto value = [&](Quantity q) { return Exact(coupon.values[q]); };
    if (value(Quantity::thicker) < value(Quantity::thinner))
        coupon.values.set(Quantity::thicker, value(Quantity::thinner));
    coupon.values.set(Quantity::design_temperature, Exact(pick(random, -2, 16) * 50'000'000LL));
    const std::int64_t length = pick(random, 3, 8) * nm_per_inch;
    coupon.values.set(Quantity::weld_length, Exact(length));
    coupon.line = {Length{length}, pick(random, 0, 1) == 1};
    for (std::size_t e = 0; e < exam_count; ++e) out.exams.push_back({static_cast<Exam>(e), true, ""});
    const auto exam = static_cast<Exam>(pick(random, 0, 3));
    // Sometimes so near each other across that pieces touch.
    const int aside = pick(random, 0, 3) == 0 ? 1 : 40;
    // Now and then so long that a few go all the way round.
    const int largest = pick(random, 0, 9) == 0 ? pick(random, 60, 150) : pick(random, 2, 14);
    std::int64_t near = pick(random, 0, static_cast<int>(length / step) - 1) * step;
    const int count = pick(random, 0, 9);
    for (int n = 0; n < count; ++n) {
        Indication i;
        i.number = n + 1;
        i.exam = pick(random, 0, 4) == 0 ? static_cast<Exam>(pick(random, 0, 3)) : exam;
        i.type = random_type(random, set, i.exam);
        const Exact size = steps(random, 1, largest);
        i.measures.set(Quantity::length, size);
        i.measures.set(Quantity::width, std::min(size, steps(random, 1, largest)));
        // Of a dimension that is checked, the size and how long it is so are two matters.
        if (Vocabulary::shipped()[i.type].measured) i.measures.set(Quantity::size, steps(random, 1, largest));
        for (const Quantity q : {Quantity::depth, Quantity::height}) i.measures.set(q, steps(random, 1, 6));
        i.measures.set(Quantity::angle, Exact(pick(random, 16, 32) * 5'000'000LL));
        for (auto &word : i.words) word = static_cast<std::uint8_t>(pick(random, 1, 2));
        // What lies at the root is not on the face: that contradicts itself.
        if (Vocabulary::shipped()[i.type].is_of_root())
            i.words[static_cast<std::size_t>(Attribute::side)] = word_index(info(Attribute::side), "root");
        near = (near + pick(random, -10, 40) * step + length) % length;
        if (!coupon.line.closed) near = std::min(near, length - static_cast<std::int64_t>(size.num()));
        i.place = Span{{near}, {near}};
        i.complete(Vocabulary::shipped());
        const std::int64_t across = pick(random, -aside, aside) * step;
        i.across = Span{{across}, {across + step}};
        out.indications.push_back(i);
    }
    // A fillet is no larger than its longest leg.
    for (const auto &i : out.indications)
        if (i.type == *Vocabulary::shipped().find("fillet size") &&
            Exact(i.measures[Quantity::size]) > value(Quantity::longest_leg))
            coupon.values.set(Quantity::longest_leg, Exact(i.measures[Quantity::size]));
    return out;
}

RandomCase with_holes(RandomCase out, const CriteriaSet &set, std::mt19937 &random) {
    // Pieces that touch are told by their places and lengths alone: without them they are two finds. What two
    // methods found is told apart by where it lies: without that it may be one.
    const RandomCase full = out;
    const auto touches = [&](const Indication &i) {
        return std::any_of(full.indications.begin(), full.indications.end(), [&](const Indication &other) {
            return other.number != i.number && naive_touch(set, full.coupon, i, other);
        });
    };
    const auto side_by_side = [&](const Indication &i) {
        return std::any_of(full.indications.begin(), full.indications.end(),
                           [&](const Indication &other) { return naive_side_by_side(set, i, other); });
    };
    const bool any_touch = std::any_of(full.indications.begin(), full.indications.end(), touches);
    const auto forget = [&](Environment::Values &values, std::size_t q) {
        values.forget(static_cast<Quantity>(q));
    };
    for (std::size_t q = 0; q < coupon_quantities; ++q)
        if (pick(random, 0, 9) == 0 && !(any_touch && static_cast<Quantity>(q) == Quantity::weld_length)) {
            forget(out.coupon.values, q);
            if (static_cast<Quantity>(q) == Quantity::weld_length) out.coupon.line.length.reset();
        }
    for (auto &fact : out.coupon.facts)
        if (pick(random, 0, 9) == 0) fact = 0;
    for (auto &i : out.indications) {
        const Indication &whole = full.indications[static_cast<std::size_t>(&i - out.indications.data())];
        const bool touching = touches(whole), beside = side_by_side(whole);
        // Nobody measures how deep each pore is: of one that was not, length and width tell the size.
        const bool tells_size = Vocabulary::shipped()[i.type].is_volume();
        for (std::size_t q = coupon_quantities; q < quantity_count; ++q)
            if (pick(random, 0, 14) == 0 && !(set.linear && q <= index_of(Quantity::width)) &&
                !(tells_size && (q == index_of(Quantity::depth) || q == index_of(Quantity::height))) &&
                // Which of them is taken for which goes by their sizes.
                !(beside && q == index_of(Quantity::size)) &&
                !(touching && (q == index_of(Quantity::length) || q == index_of(Quantity::size) ||
                               q == index_of(Quantity::width))))
                forget(i.measures, q);
        if (pick(random, 0, 5) == 0 && !touching && !beside) i.place.reset();
        if (pick(random, 0, 5) == 0 && !beside) i.across.reset();
        for (auto &word : i.words)
            if (pick(random, 0, 7) == 0 && !(beside && &word == &i.words[0])) word = 0;
    }
    if (pick(random, 0, 5) == 0) out.exams.pop_back();
    return out;
}

std::size_t coupons_to_try(std::size_t usual) {
    const char *asked = std::getenv("BEADBOOK_RANDOM_COUPONS");
    return asked ? static_cast<std::size_t>(std::strtoul(asked, nullptr, 10)) : usual;
}

std::shared_ptr<const CriteriaSet> demo_set() {
    static const auto set = [] {
        std::ifstream in(BEADBOOK_SOURCE "/demo/criteria/training-shop.yaml");
        return set_from({std::istreambuf_iterator<char>(in), {}});
    }();
    return set;
}

std::vector<std::shared_ptr<const CriteriaSet>> all_sets() {
    std::vector<std::shared_ptr<const CriteriaSet>> out{demo_set()};
    for (const auto &name : shipped_sets()) out.push_back(shipped_criteria(name));
    return out;
}

std::vector<Verdict> verdicts_of(const Judgement &judgement) {
    std::vector<Verdict> out;
    for (const auto &c : judgement.classes) out.push_back(c.verdict);
    return out;
}

std::vector<Verdict> verdicts_of(const CriteriaSet &set, const RandomCase &c) {
    return verdicts_of(judge(set, c.coupon, c.exams, c.indications));
}

std::string described(const RandomCase &c) {
    std::ostringstream out;
    const Vocabulary &v = Vocabulary::shipped();
    for (std::size_t q = 0; q < coupon_quantities; ++q)
        if (c.coupon.values.has(static_cast<Quantity>(q)))
            out << info(static_cast<Quantity>(q)).name << " "
                << print(c.coupon.values[static_cast<Quantity>(q)], info(static_cast<Quantity>(q)).dimension,
                         Unit::inch)
                << "; ";
    for (std::size_t f = 0; f < fact_count; ++f)
        if (c.coupon.facts[f]) out << info(static_cast<Fact>(f)).words[c.coupon.facts[f] - 1u] << " ";
    out << (c.coupon.line.closed ? "closed\n" : "straight\n");
    for (const auto &i : c.indications) {
        out << "#" << i.number << " " << name_of(i.exam) << " " << v[i.type].name;
        if (i.place)
            out << " " << print(i.place->from.nm, Dimension::length, Unit::inch) << ".."
                << print(i.place->to.nm, Dimension::length, Unit::inch);
        if (i.across) out << " across " << print(i.across->from.nm, Dimension::length, Unit::inch);
        for (std::size_t q = coupon_quantities; q < quantity_count; ++q)
            if (i.measures.has(static_cast<Quantity>(q)))
                out << " " << info(static_cast<Quantity>(q)).name << " "
                    << print(i.measures[static_cast<Quantity>(q)], info(static_cast<Quantity>(q)).dimension,
                             Unit::inch);
        out << "\n";
    }
    return out.str();
}

} // namespace beadbook::test
