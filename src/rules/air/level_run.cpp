#include "rules/air/level_run.hpp"

#include <algorithm>
#include <cmath>

#include "lines/air_network.hpp"
#include "model/angle.hpp"
#include "model/place_order.hpp"

namespace linewright {

namespace {

/// A level part no longer than this is as good as the fitting beside it [common practice, no
/// source].
constexpr double shortest_run_in = 1;
/// Level parts that a finding names; the rest are counted.
constexpr std::size_t runs_named = 3;

/// Straights that follow one another, each with too little slope in every attitude.
struct LevelRun {
  double from_in = 0;
  double to_in = 0;
  double slope_deg = 0;  ///< the least of its straights
  double length_in() const { return to_in - from_in; }
  double middle_in() const { return (from_in + to_in) / 2; }
};

/// Of a straight, in the attitude that tilts it most.
double slope_deg(const PathPiece& piece, const std::vector<Attitude>& attitudes) {
  double most = 0;
  for (const Attitude& attitude : attitudes) {
    const Vec3 up = up_in_attitude(attitude.pitch_deg, attitude.roll_deg);
    const double rise = std::clamp(std::abs(dot(piece.direction, up)), 0.0, 1.0);
    most = std::max(most, std::asin(rise) * degrees_per_radian);
  }
  return most;
}

/// The bend between two level straights is level with them.
std::vector<LevelRun> level_runs(const Centreline& centreline,
                                 const std::vector<Attitude>& attitudes) {
  std::vector<LevelRun> runs;
  bool goes_on = false;
  for (const PathPiece& piece : centreline.pieces()) {
    if (piece.is_arc) continue;
    const double slope = slope_deg(piece, attitudes);
    const bool level = slope < least_slope.value - limit_rounding;
    const double end = piece.start_in + piece.length_in;
    if (level && goes_on) {
      runs.back().to_in = end;
      runs.back().slope_deg = std::min(runs.back().slope_deg, slope);
    } else if (level) {
      runs.push_back({piece.start_in, end, slope});
    }
    goes_on = level;
  }
  std::erase_if(runs, [](const LevelRun& run) { return run.length_in() <= shortest_run_in; });
  return runs;
}

/// Of several as flat the one that lies before the others.
const LevelRun& flattest_run(const std::vector<LevelRun>& runs, const Centreline& line) {
  const LevelRun* flattest = &runs.front();
  for (const LevelRun& run : runs) {
    const double flatter = flattest->slope_deg - run.slope_deg;
    if (flatter > limit_rounding ||
        (flatter > -limit_rounding &&
         lies_before(line.at(run.middle_in()), line.at(flattest->middle_in()))))
      flattest = &run;
  }
  return *flattest;
}

std::string run_list(const std::vector<LevelRun>& runs, const Phrasing& phrasing) {
  std::string list;
  for (std::size_t i = 0; i < std::min(runs.size(), runs_named); ++i)
    list += (i == 0 ? "" : ", ") + phrasing.length_number(runs[i].from_in) + " to " +
            phrasing.length(runs[i].to_in);
  if (runs.size() > runs_named)
    list += " and " + std::to_string(runs.size() - runs_named) + " more";
  return list;
}

}  // namespace

std::optional<Judgement> judge_level_runs(const RuleContext& context, const PreparedRoute& route,
                                          const std::vector<Attitude>& attitudes) {
  const std::vector<LevelRun> runs = level_runs(route.centreline, attitudes);
  if (runs.empty()) return std::nullopt;
  const LevelRun& flattest = flattest_run(runs, route.centreline);
  Judgement judgement = context.at(route, flattest.middle_in());
  holds(judgement, flattest.slope_deg, {least_slope});
  const std::string attitude =
      attitudes.size() == 1 ? " in " + attitudes.front().name : std::string(" in every attitude");
  judgement.message = "the line lies level" + attitude + " from " +
                      run_list(runs, context.phrasing) + " from " + route.from->name +
                      ": as built, water may stand there";
  judgement.mend = "let it fall toward a port, probe or drain by " +
                   context.phrasing.length_up(std::tan(radians_of(least_slope.value)) * 12) +
                   " or more in each " + context.phrasing.length(12);
  return judgement;
}

}  // namespace linewright
