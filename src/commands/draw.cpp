#include <algorithm>
#include <utility>

#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "input/quantity.hpp"
#include "lines/prepare.hpp"
#include "render/draw/front.hpp"
#include "render/draw/projection.hpp"
#include "render/draw/strip.hpp"
#include "render/draw/true_frame.hpp"
#include "render/draw/true_strip.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

const std::vector<std::string> views{"side", "plan", "front", "strip"};

/// What is wrong with the options by themselves; empty for nothing.
std::string wrong_options(const DrawWords& words) {
  if (!words.view) return "draw needs --view side, plan, front or strip";
  const std::string& view = *words.view;
  if (std::find(views.begin(), views.end(), view) == views.end())
    return with_suggestion("--view takes side, plan, front, strip, not '" + one_line(view) + "'",
                           view, views);
  if (view == "front" && words.station.has_value() == words.frame.has_value())
    return "--view front needs --station or --frame, one of them, to say where";
  if (view != "front" && (words.station || words.frame))
    return "--station and --frame go with --view front, not with --view " + view;
  if (view == "strip" && !words.route) return "--view strip needs --route, the line to unroll";
  if (view != "strip" && words.route)
    return "--route goes with --view strip, not with --view " + view;
  if (!words.true_scale)
    return words.paper ? "--paper goes with --true-scale, which is drawn on pages" : std::string();
  if (view != "strip" && !words.frame)
    return "--true-scale goes with --view front --frame NAME, or with --view strip";
  if (words.paper && !paper_called(*words.paper))
    return with_suggestion("--paper takes letter or a4, not '" + one_line(*words.paper) + "'",
                           *words.paper, paper_words());
  return {};
}

Paper chosen_paper(const DrawWords& words, const Phrasing& phrasing) {
  const bool metric = phrasing.unit == LengthUnit::millimetre;
  return *paper_called(words.paper.value_or(metric ? "a4" : "letter"));
}

struct CutPlace {
  double station_in = 0;
  const Frame* frame = nullptr;
};

/// At full size a frame is drawn in its own plane, wherever that stands.
Expected<CutPlace, std::string> frame_place(const std::string& name, const Project& project,
                                            const Phrasing& phrasing, bool at_full_size) {
  std::vector<std::string> names;
  for (const Frame& frame : project.structure.frames) {
    names.push_back(frame.name);
    if (frame.name != name) continue;
    if (at_full_size || stands_at_station(frame)) return CutPlace{frame.plane.origin.x, &frame};
    return "frame '" + one_line(name) + "' stands at " + phrasing.stand(frame.plane) +
           " and not square at a station; --true-scale draws it by itself, --station cuts where "
           "you say";
  }
  return unknown_name("frame", name, names,
                      "linewright schedule --by frame lists those with holes");
}

Expected<CutPlace, std::string> cut_place(const DrawWords& words, const Project& project,
                                          const Phrasing& phrasing) {
  if (words.frame) return frame_place(*words.frame, project, phrasing, words.true_scale);
  const auto station = read_quantity(*words.station, Dimension::length, BareLength::inch);
  if (!station) return "--station: " + station.error();
  return CutPlace{*station, nullptr};
}

std::string wrong_route(const DrawWords& words, const Project& project) {
  if (!words.route) return {};
  std::vector<std::string> names;
  for (const Route& route : project.routes) names.push_back(route.name);
  return unknown_name("route", *words.route, names, "linewright cutlist lists them");
}

std::string strip_of(const DrawWords& words, const Drawing& drawing,
                     const PreparedProject& prepared) {
  for (const SceneRoute& route : drawing.scene.routes) {
    if (route.name != *words.route) continue;
    const std::vector<StripMark> marks = strip_marks(*prepared.find_route(route.name));
    return words.true_scale
               ? true_strip(drawing, route, marks, chosen_paper(words, drawing.phrasing))
               : strip_view(drawing, route, marks);
  }
  return {};
}

}  // namespace

Outcome draw(const CheckOptions& options, const DrawWords& words) {
  const std::string wrong = wrong_options(words);
  if (!wrong.empty()) return refusal(wrong);
  const OpenedProject opened = open_with_files(options.project, options.set);
  if (!opened.project) return opened.project.error();
  const Project& project = *opened.project;
  const Phrasing phrasing = options.form.phrasing();
  if (const std::string unknown = wrong_route(words, project); !unknown.empty())
    return refusal(unknown);
  Expected<CutPlace, std::string> place = CutPlace{};
  if (*words.view == "front") place = cut_place(words, project, phrasing);
  if (!place) return refusal(place.error());

  MeshStore meshes;
  const auto report = checked_report(opened, options, meshes);
  if (!report) return report.error();
  const auto fields = meshes.fields_of(project, options.project);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(project, *fields);
  const LineMotion motion = motion_of(prepared);
  const Scene scene = scene_of(prepared, motion);
  const Drawing drawing{*report, scene, phrasing};
  const ExitCode code = exit_code(*report, false);
  if (*words.view == "side") return {code, side_view(drawing), ""};
  if (*words.view == "plan") return {code, plan_view(drawing), ""};
  if (*words.view == "strip") return {code, strip_of(words, drawing, prepared), ""};
  if (words.true_scale)
    return {code, true_frame(drawing, *place->frame, chosen_paper(words, phrasing)), ""};
  return {
      code,
      front_view(drawing, station_cut(prepared, motion, scene, place->station_in, place->frame)),
      ""};
}

}  // namespace linewright
