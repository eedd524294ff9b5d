// Cables through fairleads that are to leave them free. Offsets are worked from 3-4-5 triangles.

#include "lines/free_passage.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

FreeFairlead ring(Vec3 at, const std::string& hole = "", int leg = 0) {
  FreeFairlead free;
  free.fairlead.at = at;
  free.fairlead.through = hole;
  free.leg = leg;
  return free;
}

TEST(FreePassage, IsOffTheMiddleByItsDistanceFromTheCable) {
  const Centreline line({{{0, 0, 10}, 0}, {{100, 0, 10}, 0}});
  const FreeFairlead free = ring({40, 0.3, 10.4});
  const FreePassage passage = free_passage(line, free, nullptr);
  EXPECT_NEAR(passage.offset_in, 0.5, 1e-12);
  EXPECT_NEAR(passage.distance_in, 40, 1e-12);
  EXPECT_EQ(passage.slant_cosine, 1);
  EXPECT_EQ(&passage.fairlead(), &free.fairlead);
}

TEST(FreePassage, OfAHoleIsWhereTheCablePassesItsStation) {
  // A run of 80 aft and 60 to the right: 0.8 of its way is aft.
  const Centreline line({{{0, 0, 10}, 0}, {{80, 60, 10}, 0}});
  const FreeFairlead free = ring({40, 30.1, 10}, "F1-a");
  const DrawnPlane frame = at_station(40);
  const FreePassage passage = free_passage(line, free, &frame);
  EXPECT_NEAR(passage.offset_in, 0.1, 1e-12);
  EXPECT_NEAR(passage.distance_in, 50, 1e-9);
  EXPECT_NEAR(passage.slant_cosine, 0.8, 1e-12);
  // Square to the cable it is only 0.8 of that.
  EXPECT_NEAR(free_passage(line, ring({40, 30.1, 10}), nullptr).offset_in, 0.08, 1e-12);
}

TEST(FreePassage, OfAHoleInARibIsWhereTheCablePassesItsButtockLine) {
  const Centreline line({{{0, 0, 10}, 0}, {{80, 60, 10}, 0}});
  const FreeFairlead free = ring({40.1, 30, 10}, "R1-a");
  const DrawnPlane rib = at_buttock_line(30);
  const FreePassage passage = free_passage(line, free, &rib);
  EXPECT_NEAR(passage.offset_in, 0.1, 1e-12);
  EXPECT_NEAR(passage.distance_in, 50, 1e-9);
  EXPECT_NEAR(passage.slant_cosine, 0.6, 1e-12);
}

TEST(FreePassage, IsOnTheLegThatItIsWrittenIn) {
  // There and back side by side, 2 in apart: the nearer leg is not the one meant.
  const Centreline line({{{0, 0, 0}, 0}, {{50, 0, 0}, 0}, {{50, 2, 0}, 0}, {{0, 2, 0}, 0}});
  const FreePassage passage = free_passage(line, ring({20, 0.5, 0}, "", 2), nullptr);
  EXPECT_NEAR(passage.offset_in, 1.5, 1e-12);
  EXPECT_NEAR(passage.distance_in, 50 + 2 + 30, 1e-9);
}

TEST(FreePassage, ThatTheLegDoesNotComeToIsAsFarOffAsTheLegsEnd) {
  const Centreline line({{{0, 0, 0}, 0}, {{50, 0, 0}, 0}});
  const DrawnPlane frame = at_station(54);
  for (const DrawnPlane* sheet : {static_cast<const DrawnPlane*>(nullptr), &frame}) {
    const FreePassage passage = free_passage(line, ring({54, 3, 0}), sheet);
    EXPECT_NEAR(passage.offset_in, 5, 1e-12);
    EXPECT_NEAR(passage.distance_in, 50, 1e-12);
  }
}

}  // namespace
}  // namespace linewright
