#include "technique/arithmetic.hpp"

#include <cmath>
#include <numbers>

namespace beadbook::technique {
namespace {

constexpr double pi = std::numbers::pi;
const Amperes ampere = 1.0 * boost::units::si::ampere;
const Metres inch = 0.0254 * boost::units::si::metre;

/// Upwards, but not for the last bit of a division that comes out even.
int whole_up(double value) { return static_cast<int>(std::ceil(value - 1e-9)); }

} // namespace

Amperes head_shot(Metres diameter, AmperesPerMetre rule) { return diameter * rule; }
Metres effective_diameter(Metres conductor, Metres wall) { return conductor + 2.0 * wall; }
int conductor_shots(Metres bore, Metres conductor) { return whole_up(pi * bore / (4.0 * conductor * 0.9)); }
Metres hollow_diameter(Metres outside, Metres bore) {
    return boost::units::sqrt(outside * outside - bore * bore);
}
Amperes low_fill(double ratio) { return 45'000.0 / ratio * ampere; }
Amperes low_fill_centred(double ratio, double coil_radius_inches) {
    return 43'000.0 * coil_radius_inches / (6.0 * ratio - 5.0) * ampere;
}
Amperes high_fill(double ratio) { return 35'000.0 / (ratio + 2.0) * ampere; }
Amperes between_fill(double fill, Amperes high, Amperes low) {
    return (high * (10.0 - fill) + low * (fill - 2.0)) / 8.0;
}
int coil_shots(Metres part, Metres effective) {
    if (part <= effective) return 1;
    return 1 + whole_up((part - effective) / (0.9 * effective));
}
AmperesPerMetre surface_field(Amperes current, Metres diameter) { return current / (pi * diameter); }

Metres unsharpness(Metres focal, Metres source_to_object, Metres object_to_film) {
    return focal * (object_to_film / source_to_object);
}
Metres least_distance(Metres focal, Metres object_to_film, Metres most) {
    return focal * (object_to_film / most);
}
Metres flaw_height(Metres thickness, Metres flaw_shift, Metres marker_shift) {
    return thickness * (flaw_shift / marker_shift);
}
Metres flaw_height_from_film(Metres image, Metres source, Metres source_to_film) {
    return source_to_film * (image / (source + image));
}
double iqi_sensitivity(Metres part, Metres plaque, Metres hole) {
    return 100.0 * (boost::units::sqrt(plaque * hole / 2.0) / part);
}
Metres equivalent_wire(Metres plaque, Metres hole) {
    // F^3 d^3 l = T^2 H^2 pi/4 with F 0.79 and l 0.3 in.
    const double t = plaque / inch, h = hole / inch;
    return std::cbrt(t * t * h * h * pi / 4.0 / (std::pow(0.79, 3) * 0.3)) * inch;
}
double film_density(double light_in, double light_out) { return std::log10(light_in / light_out); }
double at_distance(double level, Metres measured_at, Metres wanted_at) {
    const double ratio = measured_at / wanted_at;
    return level * ratio * ratio;
}
Metres distance_for(double level, Metres measured_at, double wanted) {
    return measured_at * std::sqrt(level / wanted);
}
Seconds exposure_at(Seconds time, Metres from, Metres to) {
    const double ratio = to / from;
    return time * ratio * ratio;
}
double decayed(double activity, Seconds half_life, Seconds elapsed) {
    return activity * std::exp2(-(elapsed / half_life));
}
double behind_shield(double level, Metres shield, Metres half_value) {
    return level * std::exp2(-(shield / half_value));
}

Metres throat(Metres a, Metres b) { return a * b / boost::units::sqrt(a * a + b * b); }
Metres skewed_throat_along(Metres leg, Radians dihedral) { return leg * std::cos(dihedral.value() / 2.0); }
Metres skewed_throat_square(Metres leg, Metres gap, Radians dihedral) {
    return (leg - gap) / (2.0 * std::sin(dihedral.value() / 2.0));
}
Metres arc(Metres outside_diameter, Radians angle) { return outside_diameter / 2.0 * angle.value(); }
Radians angle_of(Metres outside_diameter, Metres along) {
    return 2.0 * (along / outside_diameter) * boost::units::si::radian;
}

} // namespace beadbook::technique
