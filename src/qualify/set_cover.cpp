#include "qualify/set_cover.hpp"

#include <algorithm>
#include <glpk.h>
#include <map>
#include <memory>
#include <stdexcept>

namespace beadbook {
namespace {

constexpr int patience_milliseconds = 20'000;

/// Indices of sets that no other set holds whole; of equal ones the first.
std::vector<std::size_t> undominated(const std::vector<Bits> &sets) {
    std::vector<std::size_t> order(sets.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return sets[a].count() > sets[b].count(); });
    std::vector<std::size_t> out;
    for (const std::size_t i : order) {
        if (sets[i].none()) break;
        const bool inside =
            std::any_of(out.begin(), out.end(), [&](std::size_t o) { return sets[i].is_subset_of(sets[o]); });
        if (!inside) out.push_back(i);
    }
    std::sort(out.begin(), out.end());
    return out;
}

/// For each element the sets that hold it. An element whose holders include those of another needs no care:
/// whatever covers the other covers it.
std::vector<Bits> hardest_elements(const std::vector<Bits> &sets, const std::vector<std::size_t> &kept) {
    const std::size_t elements = sets.empty() ? 0 : sets.front().size();
    std::map<Bits, bool> distinct;
    for (std::size_t e = 0; e < elements; ++e) {
        Bits holders(kept.size());
        for (std::size_t k = 0; k < kept.size(); ++k) holders[k] = sets[kept[k]][e];
        if (holders.any()) distinct[holders] = true;
    }
    std::vector<Bits> all;
    for (const auto &[holders, there] : distinct) all.push_back(holders);
    std::sort(all.begin(), all.end(), [](const Bits &a, const Bits &b) { return a.count() < b.count(); });
    std::vector<Bits> out;
    for (const auto &holders : all)
        if (std::none_of(out.begin(), out.end(),
                         [&](const Bits &harder) { return harder.is_subset_of(holders); }))
            out.push_back(holders);
    return out;
}

/// 0-1 program: fewest columns such that every row has one.
SetCover solve(const std::vector<Bits> &rows, std::size_t columns) {
    const auto drop = [](glp_prob *p) { glp_delete_prob(p); };
    const std::unique_ptr<glp_prob, decltype(drop)> program(glp_create_prob(), drop);
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(program.get(), GLP_MIN);
    glp_add_cols(program.get(), static_cast<int>(columns));
    for (int c = 1; c <= static_cast<int>(columns); ++c) {
        glp_set_col_kind(program.get(), c, GLP_BV);
        glp_set_obj_coef(program.get(), c, 1.0);
    }
    glp_add_rows(program.get(), static_cast<int>(rows.size()));
    for (int r = 1; r <= static_cast<int>(rows.size()); ++r) {
        const Bits &row = rows[static_cast<std::size_t>(r - 1)];
        std::vector<int> index{0};
        for (auto c = row.find_first(); c != Bits::npos; c = row.find_next(c))
            index.push_back(static_cast<int>(c) + 1);
        const std::vector<double> ones(index.size(), 1.0);
        glp_set_row_bnds(program.get(), r, GLP_LO, 1.0, 0.0);
        glp_set_mat_row(program.get(), r, static_cast<int>(index.size()) - 1, index.data(), ones.data());
    }
    glp_iocp how;
    glp_init_iocp(&how);
    how.presolve = GLP_ON;
    how.tm_lim = patience_milliseconds;
    const int code = glp_intopt(program.get(), &how);
    const int status = glp_mip_status(program.get());
    if (status != GLP_OPT && status != GLP_FEAS) throw std::runtime_error("no plan was found in time");
    SetCover out;
    out.proven = code == 0 && status == GLP_OPT;
    for (std::size_t c = 0; c < columns; ++c)
        if (glp_mip_col_val(program.get(), static_cast<int>(c) + 1) > 0.5) out.chosen.push_back(c);
    return out;
}

} // namespace

SetCover smallest_cover(const std::vector<Bits> &sets) {
    const auto kept = undominated(sets);
    const auto rows = hardest_elements(sets, kept);
    SetCover out;
    if (rows.empty()) return out;
    out = solve(rows, kept.size());
    for (auto &chosen : out.chosen) chosen = kept[chosen];
    Bits covered(sets.front().size()), all(sets.front().size());
    for (const auto &set : sets) all |= set;
    for (const std::size_t c : out.chosen) covered |= sets[c];
    if (covered != all) throw std::logic_error("the solver's answer does not cover");
    return out;
}

} // namespace beadbook
