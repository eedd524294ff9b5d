// What follows from parts that follow from others: sheets over frames, and arms of movers.

#include <cmath>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

/// F1 at FS 100 and F2 at FS 140, whose left side is drawn in by 2 in; its top to `top`.
std::string with_stretched_side(const std::string& top, const std::string& node) {
  std::string text = tailcone("  - {name: port, kind: static-port, on: side, " + node + "}\n");
  const std::string outline = "[[-14, 0], [14, 0], [14, 26], [-14, 26]]}\n  channels";
  text.replace(text.find(outline), outline.size(),
               "[[-12, 0], [12, 0], [12, 26], [" + top + ", 26]]}\n  channels");
  const std::string panels = "  panels:\n";
  text.replace(text.find(panels), panels.size(),
               panels + "    - {name: side, over: [F1, F2], corners: [1, 4], thickness: 0.04}\n");
  return text;
}

Vec3 port_of(const std::string& text) {
  const ProjectFolder folder;
  folder.write("project.yaml", text);
  const LoadResult result = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(shown(result.errors), "");
  return result.project ? result.project->nodes.back().at : Vec3{};
}

// Half way from BL -14 to BL -12, and half of the sheet in toward the cabin, square to it: 0.02 in
// by the slope of 1 in 20.
TEST(PlaceOnAStretchedPanel, IsOnTheSheetBetweenItsFrames) {
  const double half_in = 0.02 * std::hypot(1, 0.05);
  expect_place(port_of(with_stretched_side("-12", "side: right, fs: 120, wl: 13")),
               {120, -13 + half_in, 13});
  expect_place(port_of(with_stretched_side("-12", "side: left, fs: 120, wl: 13")),
               {120, -13 - half_in, 13});
}

// F2's top is at BL -10: in the middle of the bay the four corners' mean is BL -12.5, and there the
// warped sheet leans by 3 in 40 along FS and by 1 in 26 along WL.
TEST(PlaceOnAStretchedPanel, IsOnTheEvenlyWarpedSheetWhereItIsNotFlat) {
  const double half_in = 0.02 * std::sqrt(1 + std::pow(3.0 / 40, 2) + std::pow(1.0 / 26, 2));
  expect_place(port_of(with_stretched_side("-10", "side: right, fs: 120, wl: 13")),
               {120, -12.5 + half_in, 13});
}

TEST(PlaceOnAStretchedPanel, IsNotBeyondItsFrames) {
  const ProjectFolder folder;
  folder.write("project.yaml", with_stretched_side("-12", "side: right, fs: 150, wl: 13"));
  const std::vector<Diagnostic> errors = load_project(folder.path(), small_catalogue()).errors;
  ASSERT_EQ(errors.size(), 1u) << shown(errors);
  EXPECT_EQ(errors[0].message,
            "panel 'side' does not come to FS 150.000, WL 13.000, or not in one place");
}

/// A horn whose arm is described so, beside a mover at FS 120.
std::string with_arm(const std::string& arm) {
  std::string text = tailcone("  - {name: pin, kind: horn, at: [120, -4, 14], arm: " + arm + "}\n");
  const std::string nodes = "nodes:\n";
  text.replace(text.find(nodes), nodes.size(),
               "  movers:\n    - {name: bellcrank, pivot: [120, -4, 10], axis: [0, 1, 0], points: "
               "[[120, -4, 14]], radius: 0.25, sweep: [-25, 25]}\n" +
                   nodes);
  return text;
}

TEST(ArmOnAMover, TurnsAboutThatMoversAxis) {
  const ProjectFolder folder;
  folder.write("project.yaml", with_arm("{on: bellcrank}"));
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(shown(result.errors), "");
  const Arm arm = result.project->nodes.back().arm.value();
  EXPECT_EQ(arm.pivot, (Vec3{120, -4, 10}));
  EXPECT_EQ(arm.axis, (Vec3{0, 1, 0}));
}

TEST(ArmOnAMover, HasOneAnswer) {
  const auto fault = [](const std::string& arm) {
    const ProjectFolder folder;
    folder.write("project.yaml", with_arm(arm));
    const std::vector<Diagnostic> errors = load_project(folder.path(), small_catalogue()).errors;
    EXPECT_EQ(errors.size(), 1u) << shown(errors);
    return errors.empty() ? std::string() : errors.front().message;
  };
  EXPECT_EQ(fault("{on: belcrank}"), "there is no part 'belcrank'");
  EXPECT_EQ(fault("{on: floor}"), "part 'floor' is no mover: an arm is 'on' a part that moves");
  EXPECT_EQ(fault("{on: bellcrank, pivot: [120, -4, 10], axis: [0, 1, 0]}"),
            "'on' says what the arm turns about, and its 'pivot' and 'axis' do, too");
}

}  // namespace
}  // namespace linewright
