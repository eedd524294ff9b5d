#include "planning/air_part.hpp"

#include <gtest/gtest.h>

#include "planning/air_rig.hpp"

namespace linewright {
namespace {

using Names = std::vector<std::string>;

AirPart part(const AirSystem& whole, const std::string& at, const Names& caps) {
  auto found = part_of_system(whole, at, caps);
  if (const std::string* error = std::get_if<std::string>(&found)) throw std::runtime_error(*error);
  return std::get<AirPart>(std::move(found));
}

std::string refusal_of(const AirSystem& whole, const std::string& at, const Names& caps) {
  const auto found = part_of_system(whole, at, caps);
  const std::string* error = std::get_if<std::string>(&found);
  return error ? *error : "";
}

// Bores of 10, 10 and 100 in, a tee of 0.02 in3 and an altimeter of 10 in3.
TEST(AirPart, ReachesFromTheTestSetToTheCaps) {
  const AirRig rig(two_ports());
  const AirSystem whole = rig.system();
  const double bores_in3 = whole.volume_in3() - 10.02;
  const AirPart forward = part(whole, "altimeter", {"tee"});
  EXPECT_EQ(forward.caps, Names{"main at tee"});
  EXPECT_NEAR(forward.system.volume_in3(), bores_in3 * 100 / 120 + 10, 1e-9);
  EXPECT_DOUBLE_EQ(forward.whole_in3, whole.volume_in3());
  const AirPart aft = part(whole, "port-left", {"altimeter"});
  EXPECT_EQ(aft.caps, Names{"main at altimeter"});
  EXPECT_NEAR(aft.system.volume_in3(), bores_in3 + 0.02, 1e-9);
}

TEST(AirPart, APortThatIsCappedIsSealedAndTested) {
  const AirRig rig(two_ports());
  const AirSystem whole = rig.system();
  const AirPart all = part(whole, "altimeter", {"port-left", "port-right"});
  EXPECT_EQ(all.caps, Names{});
  EXPECT_EQ(all.sealed, (Names{"port-left", "port-right"}));
  EXPECT_DOUBLE_EQ(all.system.volume_in3(), whole.volume_in3());
}

// Two lines that meet at a capped tee are capped one by one: no air goes through it.
TEST(AirPart, EachLineAtACappedNodeHasACapOfItsOwn) {
  TubeProject tubes;
  tubes.node("a", {0, 0, 0}, NodeKind::drain)
      .node("b", {30, 0, 0}, NodeKind::tee, 0.5)
      .node("c", {60, 0, 0}, NodeKind::instrument, 1.0);
  tubes.route("one", "a", "b");
  tubes.route("two", "a", "b", {{{15, 20, 0}, 0}});
  tubes.route("out", "b", "c");
  const AirRig rig(std::move(tubes));
  const AirPart tested = part(rig.system(), "a", {"b"});
  EXPECT_EQ(tested.caps, (Names{"one at b", "two at b"}));
  EXPECT_EQ(tested.system.network.nodes.size(), 3u);
  // No loop is left, so that either line can be parted from the other.
  EXPECT_EQ(split_order(tested.system, tested.connected, tested.is_cap).size(), 2u);
}

TEST(AirPart, KnowsWhichVolumesAreNotStated) {
  TubeProject tubes;
  tubes.node("port", {0, 0, 0}, NodeKind::static_port)
      .node("tee", {10, 0, 0}, NodeKind::tee, 0.02)
      .node("altimeter", {20, 0, 0}, NodeKind::instrument);
  tubes.route("aft", "port", "tee");
  tubes.route("forward", "tee", "altimeter");
  const AirRig rig(std::move(tubes));
  const AirPart aft = part(rig.system(), "port", {"tee"});
  EXPECT_EQ(aft.system.nodes_without_volume, Names{});
  EXPECT_EQ(aft.whole_without_volume, Names{"altimeter"});
}

TEST(AirPart, RefusesWhatIsNoPart) {
  const AirRig rig(two_ports());
  const AirSystem whole = rig.system();
  EXPECT_EQ(refusal_of(whole, "altimetre", {}),
            "system 'static' has no node 'altimetre' (there are: port-left, tee, port-right, "
            "altimeter)");
  EXPECT_EQ(refusal_of(whole, "tee", {"tee"}),
            "'tee' cannot be capped: the test set is connected there");
  EXPECT_EQ(refusal_of(whole, "altimeter", {"tee", "port-left"}),
            "'port-left' is not reached from 'altimeter': other caps part them already; leave it "
            "out");
}

}  // namespace
}  // namespace linewright
