#include "commands/starter_project.hpp"

namespace linewright {

namespace {

constexpr std::string_view project_yaml =
    R"(# A small invented aeroplane: one static system in the tail cone.
# Check it with:  linewright check .
# Then move a point, or take a support away, and check again.
linewright: 1
name: example tail cone

# Bare lengths are in these units; any length may carry its own: 32 mm, 1.25 in.
units: in

# Places are [FS, BL, WL]: fuselage station (positive aft), buttock line (positive to the right)
# and waterline (positive up).

# How far the line as built may lie from the line as drawn.
build_tolerance: 0.06

# What the structure and the lines see: coldest, as rigged, hottest.
temperature: {min: -20 degF, rigged: 70 degF, max: 120 degF}

# Load factors that bend the lines and make them sag.
load_factor: {positive: 3.8, negative: -1.5}

# Attitudes in which water must run out of the lines: nose-up pitch in degrees.
attitudes:
  - {name: level flight, pitch: 0}
  - {name: parked, pitch: 4}

include: [structure.yaml, static.yaml]
)";

constexpr std::string_view structure_yaml = R"(# The structure that the lines run through.
linewright: 1
units: in

structure:
  # A frame is a flat web at one station. Its outline and holes are drawn as BL, WL.
  frames:
    - name: F2
      station: 166
      thickness: 0.032
      outline: [[-12, 0], [12, 0], [10, 26], [-10, 26]]
      holes:
        # A grommet that the line nearly fills guards the edge and holds the line, too.
        - {name: F2-a, centre: [0, 17.12], diameter: 0.75, edge: grommet, bore: 0.27}
    - name: F3
      station: 178
      thickness: 0.032
      outline: [[-12, 0], [12, 0], [10, 26], [-10, 26]]
      holes:
        - {name: F3-a, centre: [0, 18.56], diameter: 0.75, edge: grommet, bore: 0.27}

  # A channel is a thin section swept along a path. This one runs across, so that its section is
  # drawn as FS, WL: a flange on top and a web that hangs from its forward edge.
  channels:
    - name: C1
      path: [[154, -10, 14.8], [154, 10, 14.8]]
      section: [[-0.5, -0.8], [-0.5, 0], [0.5, 0]]
      thickness: 0.032
      edge: bare
)";

constexpr std::string_view static_yaml =
    R"(# The static system: two ports, a tee between them, and a line forward to the altimeter that falls
# all the way to a drain.
linewright: 1
units: in

# Nodes are where lines end or join. Ports, instruments and drains are mounted on structure; a tee
# hangs on its lines unless it is fixed.
nodes:
  - {name: port-left, kind: static-port, at: [190, -9, 13], volume: 0.01 in3}
  - {name: port-right, kind: static-port, at: [190, 9, 13], volume: 0.01 in3}
  - {name: tee-ports, kind: tee, at: [190, 0, 20], fixed: true, volume: 0.02 in3}
  - {name: tee-drain, kind: tee, at: [142, 0, 14.24], fixed: true, volume: 0.02 in3}
  - {name: altimeter, kind: instrument, at: [134, 0, 21], volume: 6 in3}
  - {name: drain, kind: drain, at: [142, 0, 8], volume: 0.01 in3}

# A route is one line between two nodes. Its points are corners and supports, in order.
# Lines are named in:  linewright catalogue
routes:
  - name: static-left
    system: static
    line: tube-nylon-1/4
    from: port-left
    to: tee-ports
    points:
      - {at: [190, -6, 13.3], bend: 1.25}

  - name: static-right
    system: static
    line: tube-nylon-1/4
    from: port-right
    to: tee-ports
    points:
      - {at: [190, 6, 13.3], bend: 1.25}

  - name: static-main
    system: static
    line: tube-nylon-1/4
    from: tee-ports
    to: tee-drain
    points:
      - {at: [178, 0, 18.56], through: F3-a}
      - {at: [166, 0, 17.12], through: F2-a}
      # The clamp stands on a short bracket, so that the line cannot rub on the flange of C1.
      - {at: [154, 0, 15.68], hold: clamp, to: C1}

  - name: static-altimeter
    system: static
    line: tube-nylon-1/4
    from: tee-drain
    to: altimeter
    points:
      - {at: [142, 0, 18], bend: 1.25}

  - name: static-drain
    system: static
    line: tube-nylon-1/4
    from: tee-drain
    to: drain
)";

}  // namespace

const std::vector<StarterFile>& starter_project() {
  static const std::vector<StarterFile> files = {{"project.yaml", project_yaml},
                                                 {"structure.yaml", structure_yaml},
                                                 {"static.yaml", static_yaml}};
  return files;
}

}  // namespace linewright
