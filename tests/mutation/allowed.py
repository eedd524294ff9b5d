"""Figures that no test could hold to 2 %, each with its reason."""

ALLOWED = {
    ("src/lines/access/way_in.hpp", "arm_cell_in"): "how finely ways of an arm are looked for",
    ("src/lines/access/way_in.hpp", "finger_width_in"): "2 % is a sixtieth of a cell of that search",
    ("src/lines/access/way_in.hpp", "finger_length_in"): "2 % is a twelfth of a cell of that search",
    ("src/lines/access/way_in.hpp", "standing_width_in"): "2 % is a third of a cell of that search",
    ("src/lines/access/way_in.hpp", "usual_reach_in"): "2 % is half a cell of that search",
    ("src/physics/airspeed.cpp", "sonic_mach"): "how near to the speed of sound counts as at it",
    ("src/physics/drainage.cpp", "infinity"): "so many times infinity is infinity",
    ("src/physics/drainage.hpp", "least_pool_depth_in"): "a depth that counts as none",
    ("src/rules/space/added_support.cpp", "place_step_in"): "how finely places of a support are looked for",
    ("src/rules/space/bundle.cpp", "apart_in"): "how finely a bundle's gaps are looked at",
    ("src/rules/space/clearance.cpp", "past_end_in"): "how near counts as at the end of a cable",
}
