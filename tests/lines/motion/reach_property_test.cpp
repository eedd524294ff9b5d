// What more support, more slack and a mend do to a line's reach, on random lines.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <map>
#include <string>
#include <vector>

#include "lines/motion/line_motion.hpp"
#include "lines/prepare.hpp"
#include "rules/random_project.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;

std::vector<SpanReach> reaches_of(const ProjectText& project, const std::string& route) {
  return project.reaches(route);
}

double width_at(const std::vector<SpanReach>& reaches, Reach reach, double along_in) {
  for (const SpanReach& each : reaches)
    if (along_in >= each.stretch.start_in && along_in <= each.stretch.end_in)
      return each.stretch.envelope.width_in(reach, along_in);
  ADD_FAILURE() << "no span at " << along_in;
  return 0;
}

/// The gravest chafe verdict of the route against each part.
std::map<std::string, Verdict> gravest(const ProjectText& project, const std::string& route) {
  std::map<std::string, Verdict> worst;
  for (const Judgement& judgement : project.judged("chafe"))
    if (judgement.route == route) {
      Verdict& known = worst.emplace(*judgement.with, Verdict::pass).first->second;
      known = std::max(known, judgement.verdict);
    }
  return worst;
}

/// Puts one more point on a straight of the drawn route, at a fraction of a leg where no arc is.
void add_point(oracles::Random& random, DrawnRoute& route, const std::string& hold,
               double bore_in) {
  const auto leg =
      static_cast<std::size_t>(random.whole(0, static_cast<int>(route.points.size()) - 2));
  const Vec3 at = between(route.points[leg].at, route.points[leg + 1].at, random.between(0.4, 0.6));
  route.points.insert(route.points.begin() + static_cast<std::ptrdiff_t>(leg) + 1,
                      DrawnPoint{at, 0, hold, bore_in});
}

TEST(MoreSupport, NowhereWidensALinesReach) {
  oracles::Random random(81);
  for (int round = 0; round < 20; ++round) {
    const RandomProject first(random);
    const ProjectText before(first.sections({}));
    for (std::size_t i = 0; i < first.routes.size(); ++i) {
      RandomProject drawn = first;
      DrawnRoute& route = drawn.routes[i];
      // A guide as tight as the line has no play of its own.
      const double bore = before.route(route.name).line->outside_diameter_in;
      add_point(random, route, "hold: grommet", bore);
      const ProjectText after(drawn.sections({}));
      const auto old_reaches = reaches_of(before, route.name);
      const auto new_reaches = reaches_of(after, route.name);
      ASSERT_EQ(new_reaches.size(), old_reaches.size() + 1);
      const double length = before.route(route.name).length_in();
      ASSERT_NEAR(after.route(route.name).length_in(), length, 1e-9);
      for (int sample = 0; sample < 50; ++sample) {
        const double along = random.between(0, length);
        for (const Reach reach : {Reach::likely, Reach::bound})
          EXPECT_LE(width_at(new_reaches, reach, along),
                    width_at(old_reaches, reach, along) + rounding_in)
              << route.name << " in round " << round << " at " << along;
      }
    }
  }
}

TEST(MoreSupport, WidensALinesReachByNoMoreThanItsPlay) {
  oracles::Random random(82);
  for (int round = 0; round < 20; ++round) {
    RandomProject drawn(random);
    const ProjectText before(drawn.sections({}));
    add_point(random, drawn.routes[0], "hold: clamp", 0);
    const ProjectText after(drawn.sections({}));
    const auto old_reaches = reaches_of(before, "nylon");
    const auto new_reaches = reaches_of(after, "nylon");
    for (int i = 0; i < 50; ++i) {
      const double along = random.between(0, before.route("nylon").length_in());
      EXPECT_LE(width_at(new_reaches, Reach::bound, along),
                width_at(old_reaches, Reach::bound, along) + clamp_play_in);
    }
  }
}

TEST(MoreSupport, MakesNoVerdictGraver) {
  oracles::Random random(83);
  int lighter = 0;
  for (int round = 0; round < 10; ++round) {
    RandomProject drawn(random);
    const ProjectText before(drawn.sections({}));
    add_point(random, drawn.routes[0], "hold: grommet", 0.25);
    const ProjectText after(drawn.sections({}));
    auto old_verdicts = gravest(before, "nylon");
    for (const auto& [part, verdict] : gravest(after, "nylon")) {
      EXPECT_LE(verdict, old_verdicts[part]) << part << " in round " << round;
      lighter += verdict < old_verdicts[part] ? 1 : 0;
    }
  }
  EXPECT_GT(lighter, 2);
}

std::string with_slack(double slack) {
  return "lines:\n  - {name: own, kind: plastic-tube, outside: 0.25, inside: 0.17, source: "
         "measured, "
         "minimum_bend_radius: 1, weight: 0.001 lb/in, youngs_modulus: 60000 psi, expansion: "
         "5.5e-5, "
         "slack: " +
         std::to_string(slack) + "}\n";
}

TEST(MoreSlack, NeverNarrowsALinesReachNorLightensAVerdict) {
  oracles::Random random(84);
  int graver_ones = 0;
  for (int round = 0; round < 10; ++round) {
    RandomProject drawn(random);
    drawn.routes.resize(1);
    drawn.routes[0].line = "own";
    ProjectSections sections = drawn.sections({});
    const double slack = random.between(0, 0.01);
    sections.rest = with_slack(slack);
    const ProjectText taut(sections);
    sections.rest = with_slack(slack + random.between(0.001, 0.02));
    const ProjectText loose(sections);
    const auto loose_reaches = reaches_of(loose, "nylon");
    const auto taut_reaches = reaches_of(taut, "nylon");
    for (int i = 0; i < 50; ++i) {
      const double along = random.between(0, taut.route("nylon").length_in());
      for (const Reach reach : {Reach::likely, Reach::bound})
        EXPECT_GE(width_at(loose_reaches, reach, along),
                  width_at(taut_reaches, reach, along) - rounding_in);
    }
    auto loose_verdicts = gravest(loose, "nylon");
    for (const auto& [part, verdict] : gravest(taut, "nylon")) {
      ASSERT_TRUE(loose_verdicts.contains(part)) << part;
      EXPECT_GE(loose_verdicts[part], verdict) << part << " in round " << round;
      graver_ones += loose_verdicts[part] > verdict ? 1 : 0;
    }
  }
  EXPECT_GT(graver_ones, 2);
}

/// A straight line past one random part, with the chafe finding's mend.
struct Mending {
  DrawnRoute route;
  std::pair<Vec3, Vec3> channel;
  double tolerance_in = 0;

  ProjectSections sections() const {
    ProjectSections all;
    all.build_tolerance = fmt::format("{:.6f}", tolerance_in);
    all.structure = fmt::format(
        "  channels:\n    - {{name: part, path: [[{}, {}, {}], [{}, {}, {}]], section: [[0, 0], "
        "[0, "
        "0.7], [0.5, 0.7]], thickness: 0.025, edge: bare}}\n",
        channel.first.x, channel.first.y, channel.first.z, channel.second.x, channel.second.y,
        channel.second.z);
    const auto place = [](Vec3 at) { return fmt::format("{}, {}, {}", at.x, at.y, at.z); };
    all.nodes = held_node("forward", place(route.points.front().at)) +
                held_node("aft", place(route.points.back().at));
    all.routes = "  - {name: route, system: " + route.system + ", line: " + route.line +
                 ", from: forward, to: aft";
    if (route.tension_lbf)
      all.routes += fmt::format(", tension: {{rigged: {} lbf}}", *route.tension_lbf);
    all.routes += ", points: [";
    for (std::size_t i = 1; i + 1 < route.points.size(); ++i)
      all.routes += "{at: [" + place(route.points[i].at) + "], " + route.points[i].hold + "}";
    all.routes += "]}\n";
    return all;
  }

  /// The same with one more support at `along_in`.
  Mending supported(double along_in) const {
    Mending mended = *this;
    const Vec3 from = route.points.front().at;
    const Vec3 to = route.points.back().at;
    const std::string hold = route.system == "cable" ? "hold: fairlead" : "hold: clamp";
    mended.route.points.insert(mended.route.points.begin() + 1,
                               {from + unit(to - from) * along_in, 0, hold, 0});
    return mended;
  }
};

Mending random_mending(oracles::Random& random) {
  Mending mending;
  const int kind = random.whole(0, 3);
  const double length = random.between(6, kind == 3 ? 80 : 30);
  mending.route.system = kind == 3 ? "cable" : kind == 2 ? "wire" : "static";
  mending.route.line =
      std::vector<std::string>{"tube-nylon-1/4", "tube-aluminium-1/4", "wire-1/4",
                               "cable-7x19-1/8-steel"}[static_cast<std::size_t>(kind)];
  if (kind == 3) mending.route.tension_lbf = random.between(0.5, 20);
  mending.route.points = {{{100, 0, 10}, 0, "", 0},
                          {{100 + length, random.between(-1, 1), random.between(9, 11)}, 0, "", 0}};
  const double off = random.between(0.8, 1.6);
  const Vec3 a{100 + length * random.between(0.05, 0.45), random.between(-0.5, 0.5), 10 - off};
  const Vec3 b{100 + length * random.between(0.55, 0.95), random.between(-0.5, 0.5),
               10 - off + random.between(-0.3, 0.3)};
  mending.channel = {a, b};
  mending.tolerance_in = random.whole(0, 1) == 0 ? 0 : 0.06;
  return mending;
}

TEST(TheMendThatAddsASupport, MendsAnywhereInTheRangeItSays) {
  oracles::Random random(85);
  int mended = 0;
  for (int round = 0; round < 150; ++round) {
    const Mending mending = random_mending(random);
    for (const Judgement& judgement : judged(mending.sections(), "chafe")) {
      if (judgement.verdict == Verdict::pass) continue;
      double first = 0;
      double last = 0;
      if (std::sscanf(judgement.mend.c_str(), "add a support between %lf and %lf in from forward",
                      &first, &last) != 2)
        continue;
      ++mended;
      for (const double at : {first, (first + last) / 2, last})
        for (const Judgement& again : judged(mending.supported(at).sections(), "chafe"))
          EXPECT_EQ(again.verdict, Verdict::pass)
              << "round " << round << ", " << mending.route.line << ": " << judgement.mend
              << "; at " << at << ": " << again.message;
    }
  }
  EXPECT_GT(mended, 25);
}

TEST(TheMendThatMovesALine, LeavesItAtTheLimitOrBeyond) {
  // Moved by what the mend says, straight away from the part, a line no longer breaks that limit.
  oracles::Random random(86);
  int moved = 0;
  for (int round = 0; round < 100; ++round) {
    Mending mending = random_mending(random);
    const double level = mending.channel.first.z;
    mending.channel.second = {mending.channel.second.x, mending.channel.first.y, level};
    mending.route.points.back().at = {mending.route.points.back().at.x, 0, 10};
    mending.channel.first.y = mending.channel.second.y = 0;
    for (const Judgement& judgement : judged(mending.sections(), "chafe")) {
      const std::size_t words = judgement.mend.find("move the line ");
      double by = 0;
      if (judgement.verdict == Verdict::pass || words == std::string::npos ||
          std::sscanf(judgement.mend.c_str() + words, "move the line %lf in away", &by) != 1)
        continue;
      ++moved;
      Mending higher = mending;
      for (DrawnPoint& point : higher.route.points) point.at.z += by;
      for (const Judgement& again : judged(higher.sections(), "chafe"))
        EXPECT_LT(again.verdict, judgement.verdict) << judgement.mend << ": " << again.message;
    }
  }
  EXPECT_GT(moved, 20);
}

}  // namespace
}  // namespace linewright
