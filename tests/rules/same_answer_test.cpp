// The demo, and aeroplanes of random structure and lines, get the same answer from every rule
// however they are described.

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "rules/random_project.hpp"
#include "rules/same_aeroplane.hpp"
#include "rules/same_judgements.hpp"

namespace linewright {
namespace {

constexpr int random_rounds = 4;

struct Aeroplane {
  std::string name;
  Project project;
  Answer answer{project};
};

/// Judged once: each test asks them several times.
const std::vector<Aeroplane>& aeroplanes() {
  static const std::vector<Aeroplane> all = [] {
    std::vector<Aeroplane> each{{"as drawn", loaded_from(demo_folder() / "as-drawn.yaml")},
                                {"mended", loaded_from(demo_folder() / "mended.yaml")}};
    oracles::Random random(81);
    for (int round = 0; round < random_rounds; ++round)
      each.push_back({"random " + std::to_string(round),
                      ProjectText(RandomProject(random).sections({})).project()});
    return each;
  }();
  return all;
}

void expect_no_difference(const std::function<Project(const Project&)>& described,
                          const Placement& back = {}, const Closeness& closeness = {}) {
  for (const Aeroplane& aeroplane : aeroplanes()) {
    SCOPED_TRACE(aeroplane.name);
    expect_the_same(aeroplane.answer, Answer(described(aeroplane.project), back), closeness);
  }
}

TEST(SameAnswer, WhereverTheAeroplaneLies) {
  for (const Vec3 by : {Vec3{0, 2.625, 0}, Vec3{-60.3, 0, 7.1}, Vec3{1000, -300, 200}}) {
    SCOPED_TRACE(fmt::format("{} {} {}", by.x, by.y, by.z));
    expect_no_difference(
        [&](const Project& project) { return PutElsewhere(moved(by)).of(project); }, moved(-by));
  }
}

TEST(SameAnswer, Mirrored) {
  expect_no_difference([](const Project& project) { return PutElsewhere(mirrored()).of(project); },
                       mirrored(), {false});
}

TEST(SameAnswer, TurnedAboutFs) {
  for (const double angle_deg : {90.0, 180.0, -90.0}) {
    SCOPED_TRACE(angle_deg);
    expect_no_difference(
        [&](const Project& project) {
          return PutElsewhere(turned({1, 0, 0}, angle_deg), angle_deg).of(project);
        },
        turned({1, 0, 0}, -angle_deg), {false});
  }
}

/// Without what can only be drawn along the axes.
Project freely_turnable(Project project) {
  std::erase_if(project.structure.solids,
                [](const Solid& solid) { return std::holds_alternative<Box>(solid.shape); });
  std::erase_if(project.structure.channels, [](const Channel& channel) {
    const Vec3 travel = travel_of(channel.path);
    return travel.x <= std::hypot(travel.y, travel.z);
  });
  return project;
}

/// The edges of round holes are chords that are up to 0.0005 in off, and do not turn with it.
TEST(SameAnswer, TurnedAboutFsByAnyAngle) {
  const double angle_deg = 23;
  for (const Aeroplane& aeroplane : aeroplanes()) {
    SCOPED_TRACE(aeroplane.name);
    Project project = freely_turnable(aeroplane.project);
    // A clamp to a part that is left out.
    for (Route& route : project.routes)
      for (RoutePoint& point : route.points) point.to.clear();
    expect_the_same(Answer(project),
                    Answer(PutElsewhere(turned({1, 0, 0}, angle_deg), angle_deg).of(project),
                           turned({1, 0, 0}, -angle_deg)),
                    {false, 5e-4});
  }
}

TEST(SameAnswer, FromWhicheverEndRoutesAreDrawn) {
  expect_no_difference(with_routes_reversed);
}

TEST(SameAnswer, WithPointsAddedOnStraights) {
  for (const double share : {0.5, 0.37}) {
    SCOPED_TRACE(share);
    expect_no_difference(
        [&](const Project& project) { return with_collinear_points(project, share); });
  }
}

TEST(SameAnswer, InWhateverOrderThingsAreListed) {
  oracles::Random random(82);
  for (int round = 0; round < 3; ++round)
    expect_no_difference([&](const Project& project) { return shuffled(project, random); }, {},
                         {true, rounding_in, false});
}

}  // namespace
}  // namespace linewright
