#include "technique/finds.hpp"

namespace beadbook {
namespace {

Nature nature_of(const Vocabulary &v, TypeId type) {
    const auto is = [&](const char *name) {
        const auto wider = v.find(name);
        return wider && v.is_a(type, *wider);
    };
    if (is("crack")) return Nature::crack;
    for (const char *name : {"incomplete fusion", "incomplete penetration", "cold shut", "lamination"})
        if (is(name)) return Nature::planar;
    for (const char *name : {"porosity", "shrinkage cavity", "inclusion", "crater pipe", "end crater pipe",
                             "root porosity", "oxide fold"})
        if (is(name)) return Nature::volumetric;
    for (const char *name :
         {"stray arc", "spatter", "temper colour", "burn mark", "linear indication", "rounded indication"})
        if (is(name)) return Nature::surface_mark;
    return Nature::profile;
}

Finds found_by(Exam method, Nature nature, const Coupon &coupon) {
    const Method &row = info(method);
    const Sight &sight = row.sights[static_cast<std::size_t>(nature)];
    const auto magnetic = coupon.facts[static_cast<std::size_t>(Fact::magnetic)];
    const auto joint = coupon.facts[static_cast<std::size_t>(Fact::joint)];
    const bool any_metal = row.needs_magnetic.empty(), any_joint = row.not_on_fillets.empty();
    if (!any_metal && magnetic == word_index(info(Fact::magnetic), "no"))
        return {method, Sight::Grade::no, std::string(row.needs_magnetic)};
    const bool fillet = joint == word_index(info(Fact::joint), "fillet");
    Finds out{method, sight.grade, std::string(sight.why)};
    if (!any_joint && fillet && sight.grade != Sight::Grade::no)
        out = {method, Sight::Grade::no, std::string(row.not_on_fillets)};
    if (!any_metal && magnetic == 0) out.why += "; is the metal magnetic? the coupon does not say";
    if (!any_joint && joint == 0) out.why += "; groove or fillet? the coupon does not say";
    return out;
}

} // namespace

std::vector<Finds> finds(const Vocabulary &vocabulary, TypeId type, const Coupon &coupon) {
    const Nature nature = nature_of(vocabulary, type);
    std::vector<Finds> out;
    for (const Exam method : all_exams()) out.push_back(found_by(method, nature, coupon));
    return out;
}

} // namespace beadbook
