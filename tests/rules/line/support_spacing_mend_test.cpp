// What support-spacing tells the builder to do really mends: a support anywhere that it names.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "lines/motion/free_spans.hpp"
#include "lines/prepare.hpp"
#include "oracles/random_path.hpp"

namespace linewright {
namespace {

using oracles::Random;

/// The places that a mend names, first and last.
std::optional<std::pair<double, double>> mend_interval(const std::string& mend) {
  double first = 0;
  double last = 0;
  if (std::sscanf(mend.c_str(), "add a support between %lf and %lf in", &first, &last) == 2)
    return std::pair{first, last};
  if (std::sscanf(mend.c_str(), "add a support %lf in", &first) == 1)
    return std::pair{first, first};
  return std::nullopt;
}

/// A clamp `along` the straight route of that name, put in order among its points.
void add_clamp(SmallProject& project, const std::string& name, double along_in) {
  for (Route& route : project.project.routes) {
    if (route.name != name) continue;
    const Vec3 from = project.project.find_node(route.from)->at;
    const Vec3 direction = unit(project.project.find_node(route.to)->at - from);
    const auto after =
        std::find_if(route.points.begin(), route.points.end(),
                     [&](const RoutePoint& point) { return distance(from, point.at) > along_in; });
    route.points.insert(after, clamped(from + direction * along_in));
  }
}

double length_of(const SmallProject& project, const std::string& name) {
  const PreparedProject prepared = prepare(project.project);
  return prepared.find_route(name)->length_in();
}

/// Ends, middle and a random place of the interval, kept off the route's own ends.
std::vector<double> places_in(std::pair<double, double> interval, double length_in,
                              Random& random) {
  std::vector<double> places{interval.first, interval.second,
                             (interval.first + interval.second) / 2,
                             random.between(interval.first, interval.second)};
  std::erase_if(places, [&](double at) { return at < 0.001 || at > length_in - 0.001; });
  return places;
}

const std::vector<std::string>& lines_to_try() {
  static const std::vector<std::string> lines{"tube-steel-1/4",   "tube-steel-3/16",
                                              "tube-nylon-1/4",   "tube-aluminium-1/8",
                                              "hose-rubber-3/16", "tube-aluminium-1/4"};
  return lines;
}

const std::string& any_line(Random& random) {
  return lines_to_try()[static_cast<std::size_t>(random.whole(0, 5))];
}

TEST(SupportSpacingMend, SupportAnywhereInTheMendsIntervalMendsASpan) {
  Random random(20);
  int mended = 0;
  for (int i = 0; i < 300; ++i) {
    const std::string& line = any_line(random);
    const double length_in = random.between(5, 40);
    const SmallProject project = one_span(line, length_in);
    const Judgement judgement = sole(project.judged_by("support-spacing"));
    const auto interval = mend_interval(judgement.mend);
    if (!interval) continue;
    ++mended;
    for (const double at_in : places_in(*interval, length_in, random)) {
      SmallProject changed = project;
      add_clamp(changed, "main", at_in);
      EXPECT_TRUE(not_passed(changed.judged_by("support-spacing")).empty())
          << line << " " << length_in << ": " << judgement.mend << ", put at " << at_in;
    }
  }
  EXPECT_GT(mended, 100);
}

TEST(SupportSpacingMend, SupportAnywhereInTheMendsIntervalMendsATail) {
  Random random(21);
  int mended = 0;
  for (int i = 0; i < 300; ++i) {
    const std::string& line = any_line(random);
    const double length_in = random.between(2, 30);
    SmallProject project;
    project.node("port", NodeKind::static_port, {0, 0, 0})
        .node("loose", NodeKind::end, {length_in, 0, 0});
    // The route may run either way.
    const bool outward = random.whole(0, 1) == 1;
    project.route("main", line, outward ? "port" : "loose", outward ? "loose" : "port");
    const Judgement judgement = sole(project.judged_by("support-spacing"));
    const auto interval = mend_interval(judgement.mend);
    if (!interval) continue;
    ++mended;
    for (const double at_in : places_in(*interval, length_in, random)) {
      SmallProject changed = project;
      add_clamp(changed, "main", at_in);
      EXPECT_TRUE(not_passed(changed.judged_by("support-spacing")).empty())
          << line << " " << length_in << ": " << judgement.mend << ", put at " << at_in;
    }
  }
  EXPECT_GT(mended, 100);
}

TEST(SupportSpacingMend, SupportAnywhereInTheMendsIntervalMendsAJoinedRun) {
  Random random(22);
  int mended = 0;
  for (int i = 0; i < 600; ++i) {
    const std::string& first = any_line(random);
    const std::string& second = any_line(random);
    const SmallProject project = joined_lines(NodeKind::union_fitting, std::nullopt, first,
                                              random.between(1, 20), second, random.between(1, 20));
    const Judgement judgement = sole(project.judged_by("support-spacing"));
    const auto interval = mend_interval(judgement.mend);
    if (!interval) continue;
    ++mended;
    for (const double at_in : places_in(*interval, length_of(project, judgement.route), random)) {
      SmallProject changed = project;
      add_clamp(changed, judgement.route, at_in);
      EXPECT_TRUE(not_passed(changed.judged_by("support-spacing")).empty())
          << first << " " << second << ": " << judgement.message << ": " << judgement.mend
          << ", put at " << at_in;
    }
  }
  EXPECT_GT(mended, 200);
}

TEST(SupportSpacingMend, DoingWhatEachMendSaysMendsAHangingTee) {
  Random random(23);
  int mended = 0;
  for (int i = 0; i < 200; ++i) {
    SmallProject project =
        star(random.between(1, 12), random.between(1, 12), random.between(1, 12));
    // Three runs: three supports at most.
    for (int supports = 0; supports < 3; ++supports) {
      const auto broken = not_passed(project.judged_by("support-spacing"));
      if (broken.empty()) break;
      const auto interval = mend_interval(broken[0].mend);
      ASSERT_TRUE(interval) << broken[0].mend;
      const auto places = places_in(*interval, length_of(project, broken[0].route), random);
      ASSERT_FALSE(places.empty());
      add_clamp(project, broken[0].route, places.back());
      ++mended;
    }
    EXPECT_TRUE(not_passed(project.judged_by("support-spacing")).empty());
  }
  EXPECT_GT(mended, 100);
}

}  // namespace
}  // namespace linewright
