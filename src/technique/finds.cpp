// Sources: T.O. 33B-1-1 (pages 611 and 612), AC 43.13-1B chapter 5, TM 1-1500-204-23-7, T9074 page 43, all
// read; that a fillet's thickness varies across the image is plain geometry.
#include "technique/finds.hpp"

namespace beadbook {
namespace {

using Grade = Finds::Grade;

/// What kind of thing an imperfection is to the methods.
enum class Nature : std::uint8_t { crack, planar, volumetric, profile, surface_mark };

Nature nature_of(const Vocabulary &v, TypeId type) {
    const auto is = [&](const char *name) {
        const auto wider = v.find(name);
        return wider && v.is_a(type, *wider);
    };
    if (is("crack")) return Nature::crack;
    if (is("incomplete fusion") || is("incomplete penetration") || is("cold shut")) return Nature::planar;
    for (const char *name : {"porosity", "shrinkage cavity", "inclusion", "crater pipe", "end crater pipe",
                             "root porosity", "oxide fold"})
        if (is(name)) return Nature::volumetric;
    for (const char *name :
         {"stray arc", "spatter", "temper colour", "burn mark", "linear indication", "rounded indication"})
        if (is(name)) return Nature::surface_mark;
    return Nature::profile;
}

Finds by_eye(Nature nature) {
    switch (nature) {
    case Nature::crack: return {Exam::VT, Grade::partly, "only a crack that is open and wide enough to see"};
    case Nature::planar: return {Exam::VT, Grade::partly, "only where it comes to the surface"};
    case Nature::volumetric: return {Exam::VT, Grade::partly, "only at the surface"};
    case Nature::profile:
    case Nature::surface_mark: break;
    }
    return {Exam::VT, Grade::well, "it is seen and measured from outside"};
}

Finds by_penetrant(Nature nature) {
    switch (nature) {
    case Nature::crack: return {Exam::PT, Grade::well, "if it is open to the surface; nothing below it"};
    case Nature::planar:
    case Nature::volumetric: return {Exam::PT, Grade::partly, "only what is open to the surface"};
    case Nature::surface_mark: return {Exam::PT, Grade::well, "it shows where penetrant is held"};
    case Nature::profile: break;
    }
    return {Exam::PT, Grade::no, "a shape holds no penetrant; it may hide what is under it"};
}

Finds by_particles(Nature nature, std::uint8_t magnetic) {
    if (magnetic == word_index(info(Fact::magnetic), "no"))
        return {Exam::MT, Grade::no, "the metal is not magnetic: nothing holds the particles"};
    const std::string mind = magnetic == 0 ? "; is the metal magnetic? the coupon does not say" : "";
    switch (nature) {
    case Nature::crack:
        return {Exam::MT, Grade::well,
                "at the surface and just under it, if it lies across the field: two directions" + mind};
    case Nature::planar:
        return {Exam::MT, Grade::partly, "at the surface and just under it, across the field" + mind};
    case Nature::volumetric:
        return {Exam::MT, Grade::partly, "near the surface, as a broad and weak indication" + mind};
    case Nature::surface_mark: return {Exam::MT, Grade::well, "it shows where flux leaks" + mind};
    case Nature::profile: break;
    }
    return {Exam::MT, Grade::no, "a change of shape may hold particles, but is no measure of it" + mind};
}

Finds by_film(Nature nature, const Coupon &coupon) {
    const auto joint = coupon.facts[static_cast<std::size_t>(Fact::joint)];
    const bool fillet = joint == word_index(info(Fact::joint), "fillet");
    Finds out{Exam::RT, Grade::no, ""};
    switch (nature) {
    case Nature::crack:
        out = {Exam::RT, Grade::partly,
               "only if it lies within a few degrees of the beam; one across the beam leaves no image"};
        break;
    case Nature::planar:
        out = {Exam::RT, Grade::partly, "only along the beam; most lack of fusion at a side wall is missed"};
        break;
    case Nature::volumetric: out = {Exam::RT, Grade::well, "it takes metal away along the beam"}; break;
    case Nature::profile:
        out = {Exam::RT, Grade::partly, "some, as lighter or darker lines; the eye and a gauge measure it"};
        break;
    case Nature::surface_mark: out = {Exam::RT, Grade::no, "look at the surface instead"}; break;
    }
    if (fillet && out.grade != Grade::no)
        out = {Exam::RT, Grade::no, "a fillet's thickness varies across the image"};
    if (joint == 0) out.why += "; groove or fillet? the coupon does not say";
    return out;
}

} // namespace

std::vector<Finds> finds(const Vocabulary &vocabulary, TypeId type, const Coupon &coupon) {
    const Nature nature = nature_of(vocabulary, type);
    return {by_eye(nature), by_particles(nature, coupon.facts[static_cast<std::size_t>(Fact::magnetic)]),
            by_penetrant(nature), by_film(nature, coupon)};
}

} // namespace beadbook
