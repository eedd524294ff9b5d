# Writes a project of one kind and size, at one density whatever the size.
#   awk -v kind=KIND -v count=COUNT -f growth_project.awk >project.yaml
# Kinds: lines, loose, ladder, points, frames, holes, waivers; `tests/bench/growth` says what each is.

function line(name, y, z, length_in, hold, k) {
  nodes = nodes sprintf("  - {name: a%s, kind: bulkhead, at: [0, %g, %g]}\n", name, y, z) \
    sprintf("  - {name: b%s, kind: bulkhead, at: [%g, %g, %g]}\n", name, length_in, y, z)
  routes = routes sprintf("  - name: r%s\n    system: 'static: s%s'\n", name, name) \
    sprintf("    line: tube-aluminium-1/4\n    from: a%s\n    to: b%s\n    points:\n", name, name)
  for (k = 8; k < length_in; k += 8)
    routes = routes sprintf("      - {at: [%g, %g, %g]%s}\n", k, y, z, hold)
}

# Lines side by side in a square.
function lines(count, apart_in, hold, i, side) {
  side = int(sqrt(count) + 0.999)
  for (i = 0; i < count; ++i) line(i, apart_in * (i % side), apart_in * int(i / side), 32, hold)
}

function tube(name, from, to, x, y, z) {
  routes = routes sprintf("  - {name: %s, system: 'static: s', line: tube-nylon-1/4, ", name) \
    sprintf("from: %s, to: %s, points: [{at: [%g, %g, %g], hold: clamp}]}\n", from, to, x, y, z)
}

# One network of tees, two rails with a rung between each pair, a hundred rungs a row.
function ladder(rungs, i, j, x, y) {
  for (i = 0; i < rungs; ++i) {
    x = 16 * (i % 100)
    y = 60 * int(i / 100)
    for (j = 0; j < 2; ++j) {
      nodes = nodes sprintf("  - {name: n%d-%d, kind: tee, at: [%g, %g, %g]}\n", i, j, x, y, 16 * j)
      if (i + 1 < rungs && i % 100 < 99)
        tube("x" i "-" j, "n" i "-" j, "n" (i + 1) "-" j, x + 8, y, 16 * j)
    }
    tube("y" i, "n" i "-0", "n" i "-1", x, y, 8)
  }
}

# One line to and fro over a plane, a clamp at each point.
function points(count, i, row, column) {
  nodes = "  - {name: a, kind: bulkhead, at: [-20, 0, 0]}\n" \
    "  - {name: b, kind: bulkhead, at: [-20, -20, 0]}\n"
  routes = "  - name: r\n    system: 'static: s'\n    line: tube-aluminium-1/4\n" \
    "    from: a\n    to: b\n    points:\n"
  for (i = 0; i < count; ++i) {
    row = int(i / 100)
    column = row % 2 ? 99 - i % 100 : i % 100
    routes = routes sprintf("      - {at: [%g, %g, 0], hold: clamp}\n", 8 * column, 8 * row)
  }
}

# One line through as many frames, 4 in apart.
function frames(count, i) {
  print "structure:\n  frames:"
  for (i = 1; i <= count; ++i) {
    printf "    - {name: F%d, station: %g, thickness: 0.025, ", i, 4 * i - 2
    printf "outline: [[-6, -6], [6, -6], [6, 6], [-6, 6]], "
    printf "holes: [{name: H%d, centre: [0, 0], diameter: 1/2, edge: grommet, bore: 5/16}]}\n", i
  }
  line(0, 0, 0, 4 * count, ", hold: clamp")
}

# One frame with as many holes, a line through the first of them.
function holes(count, side, i) {
  side = int(sqrt(count) + 0.999)
  print "structure:\n  frames:\n    - name: F\n      station: 12\n      thickness: 0.025"
  printf "      outline: [[-2, -2], [%d, -2], [%d, %d], [-2, %d]]\n      holes:\n",
    2 * side, 2 * side, 2 * side, 2 * side
  for (i = 0; i < count; ++i) {
    printf "        - {name: H%d, centre: [%d, %d], ", i, 2 * (i % side), 2 * int(i / side)
    print "diameter: 1/2, edge: grommet, bore: 5/16}"
  }
  line(0, 0, 0, 32, ", hold: clamp")
}

function waivers(count, i) {
  lines(count, 6, "")
  print "waivers:"
  for (i = 0; i < count; ++i)
    printf "  - {rule: support-spacing, route: r%d, reason: tried in flight}\n", i
}

BEGIN {
  print "linewright: 1\nname: " count " " kind "\nunits: in\nbuild_tolerance: 0.06"
  print "temperature: {min: 30 degF, rigged: 70 degF, max: 110 degF}"
  print "load_factor: {positive: 3.8, negative: -1.5}"
  if (kind == "lines") lines(count, 6, ", hold: clamp")
  if (kind == "loose") lines(count, 1, "")
  if (kind == "ladder") ladder(count)
  if (kind == "points") points(count)
  if (kind == "frames") frames(count)
  if (kind == "holes") holes(count)
  if (kind == "waivers") waivers(count)
  printf "nodes:\n%sroutes:\n%s", nodes, routes
}
