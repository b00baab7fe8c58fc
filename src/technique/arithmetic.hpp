#pragma once

#include <boost/units/cmath.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/io.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/magnetic_field_intensity.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/time.hpp>

/// The technicians' formulas. A length cannot be put where a current belongs: that does not compile.
/// Floating point is right here: these are settings and estimates, and no verdict rests on them.
namespace beadbook::technique {

using Metres = boost::units::quantity<boost::units::si::length>;
using Amperes = boost::units::quantity<boost::units::si::current>;
using AmperesPerMetre = boost::units::quantity<boost::units::si::magnetic_field_intensity>;
using Seconds = boost::units::quantity<boost::units::si::time>;
using Radians = boost::units::quantity<boost::units::si::plane_angle>;

// --- magnetic particle ---
/// Current through the part or a central conductor: so many amperes for each length of diameter.
Amperes head_shot(Metres diameter, AmperesPerMetre rule);
/// A conductor lying against the bore counts as one of its own diameter and twice the wall.
Metres effective_diameter(Metres conductor, Metres wall);
/// Shots round a bore when each one examines four conductor diameters and they overlap by a tenth.
int conductor_shots(Metres bore, Metres conductor);
/// A hollow part in a coil counts as a bar of this diameter.
Metres hollow_diameter(Metres outside, Metres bore);
/// Ampere-turns of a coil shot; `ratio` is L/D.
Amperes low_fill(double ratio);
Amperes low_fill_centred(double ratio, double coil_radius_inches);
Amperes high_fill(double ratio);
/// `fill` is the coil's cross-section over the part's, from 2 to 10.
Amperes between_fill(double fill, Amperes high, Amperes low);
int coil_shots(Metres part, Metres effective);
AmperesPerMetre surface_field(Amperes current, Metres diameter);

// --- radiography ---
Metres unsharpness(Metres focal, Metres source_to_object, Metres object_to_film);
Metres least_distance(Metres focal, Metres object_to_film, Metres most_unsharpness);
/// From two exposures with the source moved: marker on the source side, film under the part.
Metres flaw_height(Metres thickness, Metres flaw_shift, Metres marker_shift);
/// The same from the film alone.
Metres flaw_height_from_film(Metres image_shift, Metres source_shift, Metres source_to_film);
/// Equivalent IQI sensitivity, percent (ASTM E592).
double iqi_sensitivity(Metres part, Metres plaque, Metres hole);
/// The wire that shows what this hole shows (ASTM E747).
Metres equivalent_wire(Metres plaque, Metres hole);
double film_density(double light_in, double light_out);
/// What falls off with the square of the distance.
double at_distance(double level, Metres measured_at, Metres wanted_at);
Metres distance_for(double level, Metres measured_at, double wanted);
Seconds exposure_at(Seconds time, Metres from, Metres to);
double decayed(double activity, Seconds half_life, Seconds elapsed);
double behind_shield(double level, Metres shield, Metres half_value);

// --- welds ---
Metres throat(Metres leg, Metres other_leg);
/// Skewed tee, `dihedral` between the members; the leg measured along a member.
Metres skewed_throat_along(Metres leg, Radians dihedral);
/// The leg measured square to the member, less a gap at the root.
Metres skewed_throat_square(Metres leg, Metres gap, Radians dihedral);
Metres arc(Metres outside_diameter, Radians angle);
Radians angle_of(Metres outside_diameter, Metres arc);

} // namespace beadbook::technique
