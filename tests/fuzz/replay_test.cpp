// Every seed of every target, and what is near to each, without a fuzzer.

#include <gtest/gtest.h>

#include <random>

#include "fuzz/targets.hpp"

namespace linewright::fuzz {
namespace {

const NamedTarget& target_called(std::string_view name) {
  for (const NamedTarget& target : targets())
    if (target.name == name) return target;
  throw std::logic_error("no target is called " + std::string(name));
}

/// The bytes with a few of them changed, left out, doubled, or cut short.
std::string damaged(std::string bytes, std::mt19937& random) {
  const auto below = [&](std::size_t end) {
    return std::uniform_int_distribution<std::size_t>(0, end - 1)(random);
  };
  static const std::string likely = "0123456789-.,:{}[]\"'#&*!|>%@` \n\t\r\\/eE\xff\x80\x01";
  for (std::size_t times = 1 + below(4); times > 0 && !bytes.empty(); --times) {
    const std::size_t at = below(bytes.size());
    switch (below(5)) {
      case 0:
        bytes[at] = likely[below(likely.size())];
        break;
      case 1:
        bytes.erase(at, 1 + below(12));
        break;
      case 2:
        bytes.insert(at, bytes.substr(below(bytes.size()), 1 + below(40)));
        break;
      case 3:
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << below(8)));
        break;
      default:
        if (below(4) == 0) bytes.resize(at);
        break;
    }
  }
  return bytes;
}

/// `damages`: how many damaged copies of each seed are tried.
void replay(std::string_view name, std::size_t least_seeds, int damages) {
  const NamedTarget& target = target_called(name);
  const std::vector<std::string> seeds = seeds_of(target);
  EXPECT_GE(seeds.size(), least_seeds);
  std::mt19937 random(20261128);
  for (const std::string& seed : seeds) {
    target.run(seed);
    for (int i = 0; i < damages; ++i) target.run(damaged(seed, random));
  }
}

TEST(Replay, Project) {
  replay("project", 200, 5);
}
TEST(Replay, Whole) {
  replay("whole", 50, 2);
}
TEST(Replay, Quantity) {
  replay("quantity", 1, 2000);
}
TEST(Replay, MeshStl) {
  replay("mesh-stl", 1, 2000);
}
TEST(Replay, MeshObj) {
  replay("mesh-obj", 1, 2000);
}
TEST(Replay, MeshGlb) {
  replay("mesh-glb", 1, 2000);
}
TEST(Replay, Readings) {
  replay("readings", 3, 200);
}

}  // namespace
}  // namespace linewright::fuzz
