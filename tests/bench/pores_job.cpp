#include "pores_job.hpp"

namespace beadbook::bench {

std::vector<PoresOfCoupon> random_pores(std::size_t coupons) {
    std::mt19937 random(1);
    std::vector<PoresOfCoupon> out(coupons);
    for (auto &pores : out)
        for (std::size_t n = 0; n < pores_each; ++n) {
            const std::int64_t size = static_cast<std::int64_t>(1 + random() % 60) * nm_per_inch / 1000;
            const std::int64_t at =
                static_cast<std::int64_t>(random() % 1'000'000) * (job_weld - nm_per_inch) / 1'000'000;
            pores.push_back({at, size});
        }
    return out;
}

std::vector<Indication> as_indications(const PoresOfCoupon &pores) {
    const Vocabulary &vocabulary = Vocabulary::shipped();
    static const TypeId pore = *vocabulary.find("gas pore");
    std::vector<Indication> out;
    for (const Pore &p : pores) {
        Indication i;
        i.number = static_cast<int>(out.size()) + 1;
        i.exam = Exam::RT;
        i.type = pore;
        i.measures.set(Quantity::size, Exact(p.size));
        i.place = Span{{p.at}, {p.at}};
        i.across = Span{{0}, {0}};
        i.complete(vocabulary);
        out.push_back(std::move(i));
    }
    return out;
}

Coupon known_coupon(std::int64_t thickness, std::int64_t weld_length) {
    Coupon c;
    c.facts.fill(1);
    for (std::size_t q = 0; q < coupon_quantities; ++q)
        c.values.set(static_cast<Quantity>(q), Exact(thickness));
    c.values.set(Quantity::weld_length, Exact(weld_length));
    c.line.length = Length{weld_length};
    return c;
}

const std::vector<ExamDone> all_exams{
    {Exam::VT, true, ""}, {Exam::MT, true, ""}, {Exam::PT, true, ""}, {Exam::RT, true, ""}};

} // namespace beadbook::bench
