#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/export/frame_dxf.hpp"
#include "render/export/scene_gltf.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

const std::vector<std::string> export_kinds{"gltf", "dxf"};

/// What is wrong with the options by themselves; empty for nothing.
std::string wrong_export(const ExportWords& words) {
  if (!words.to) return "export needs --to gltf or dxf";
  const std::string& kind = *words.to;
  if (std::find(export_kinds.begin(), export_kinds.end(), kind) == export_kinds.end())
    return with_suggestion("--to takes gltf, dxf, not '" + one_line(kind) + "'", kind,
                           export_kinds);
  if (kind == "dxf" && !words.frame) return "--to dxf needs --frame, the one to draw";
  if (kind != "dxf" && words.frame) return "--frame goes with --to dxf, not with --to " + kind;
  return {};
}

Outcome exported_frame(const Project& project, const std::string& name, const Phrasing& phrasing) {
  std::vector<std::string> names;
  for (const Frame& frame : project.structure.frames) {
    if (frame.name == name) return {ExitCode::nothing_failed, frame_dxf(frame, phrasing), ""};
    names.push_back(frame.name);
  }
  return refusal(
      unknown_name("frame", name, names, "linewright schedule --by frame lists those with holes"));
}

}  // namespace

Outcome export_project(const CheckOptions& options, const ExportWords& words) {
  const std::string wrong = wrong_export(words);
  if (!wrong.empty()) return refusal(wrong);
  const OpenedProject opened = open_with_files(options.project, options.set);
  if (!opened.project) return opened.project.error();
  const Project& project = *opened.project;
  if (words.frame) return exported_frame(project, *words.frame, options.form.phrasing());
  MeshStore meshes;
  const auto report = checked_report(opened, options, meshes);
  if (!report) return report.error();
  const auto fields = meshes.fields_of(project, options.project);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(project, *fields);
  return {exit_code(*report, false), scene_glb(scene_of(prepared, motion_of(prepared)), *report),
          "", std::nullopt, true};
}

}  // namespace linewright
