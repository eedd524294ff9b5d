#include "commands/starter_project.hpp"

namespace linewright {

namespace {

constexpr std::string_view project_yaml =
    R"(# A small invented aeroplane: one static system in the tail cone.
# Check it with:  linewright check .
# Then move a point, or take a support away, and check again.
linewright: 1
name: example tail cone

# Bare lengths are in these units; any length may carry its own: 32 mm, 1.25 in. One that was read
# off a tape is written as the tape has it: 9/32, 14 1/4, 5 ft 2 1/4 in.
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
        # A grommet that the line nearly fills guards the edge and holds the line, too. The hole is
        # cut where the line meets the frame; one that is there already has its centre as [BL, WL].
        - {name: F2-a, centre: {on: static-main}, diameter: 3/4, edge: grommet, bore: 9/32}
    - name: F3
      station: 178
      thickness: 0.032
      outline: [[-12, 0], [12, 0], [10, 26], [-10, 26]]
      holes:
        - {name: F3-a, centre: {on: static-main}, diameter: 3/4, edge: grommet, bore: 9/32}

  # A channel is a thin section swept along a path. This one runs across, so that its section is
  # drawn as FS, WL: a flange on top and a web that hangs from its forward edge.
  channels:
    - name: C1
      path: [[154, -10, 14 13/16], [154, 10, 14 13/16]]
      section: [[-1/2, -13/16], [-1/2, 0], [1/2, 0]]
      thickness: 0.032
      edge: bare

  # The skin that the port on the left is in. 'mirror' makes its twin on the other side of BL 0.
  panels:
    - name: side-left
      corners: [[178, -11 3/8, 8], [202, -7 3/8, 8], [202, -6, 26], [178, -10, 26]]
      thickness: 0.025
      mirror: side-right
)";

constexpr std::string_view static_yaml =
    R"(# The static system: two ports, a tee between them, and a line forward to the altimeter that falls
# all the way to a drain.
linewright: 1
units: in

# Nodes are where lines end or join. Ports, instruments and drains are mounted on structure; a tee
# hangs on its lines unless it is fixed. The port is in the skin, at a station and a height: its BL
# follows, and so does all of the other port.
nodes:
  - {name: port-left, kind: static-port, on: side-left, side: right, fs: 190, wl: 13, volume: 0.01 in3, mirror: port-right}
  - {name: tee-ports, kind: tee, at: [190, 0, 20], fixed: true, volume: 0.02 in3}
  - {name: tee-drain, kind: tee, at: [142, 0, 14 1/4], fixed: true, volume: 0.02 in3}
  - {name: altimeter, kind: instrument, at: [134, 0, 21], volume: 6 in3}
  - {name: drain, kind: drain, at: [142, 0, 8], volume: 0.01 in3}

# A route is one line between two nodes. Its points are corners and supports, in order.
# Lines are named in:  linewright catalogue
# Every place that follows from others is shown by:  linewright expand .
routes:
  - name: static-left
    system: static
    line: tube-nylon-1/4
    from: port-left
    to: tee-ports
    points:
      - {at: [190, -6, 13 3/8], bend: 1 1/4}
    mirror: static-right

  # A straight line: it meets each frame where it meets it, and no place has to be written.
  - name: static-main
    system: static
    line: tube-nylon-1/4
    from: tee-ports
    to: tee-drain
    straight: true
    points:
      - {through: F3-a}
      - {through: F2-a}
      # Supports between what comes before and after, even, and no farther apart than that: here
      # one. It stands on a short bracket, so that the line cannot rub on the flange of C1.
      - {spaced: 12 1/2, hold: clamp, to: C1}

  - name: static-altimeter
    system: static
    line: tube-nylon-1/4
    from: tee-drain
    to: altimeter
    points:
      - {at: [142, 0, 18], bend: 1 1/4}

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
