#include "fuzz/targets.hpp"

#include <stdlib.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>

#include "catalogue/catalogue.hpp"
#include "commands/command_line.hpp"
#include "input/leak_readings.hpp"
#include "input/load_project.hpp"
#include "input/mesh/read_mesh_file.hpp"
#include "input/quantity.hpp"

namespace linewright::fuzz {

namespace {

namespace fs = std::filesystem;

/// Ends the program as a fuzzer understands it.
void insist(bool holds, const std::string& words) {
  if (holds) return;
  std::fprintf(stderr, "does not hold: %s\n", words.c_str());
  std::abort();
}

/// A folder for this process, emptied for each input.
const fs::path& folder() {
  static const struct Folder {
    Folder() {
      std::string name = (fs::temp_directory_path() / "linewright-fuzz-XXXXXX").string();
      insist(::mkdtemp(name.data()) != nullptr, "a temporary folder");
      path = name;
    }
    ~Folder() {
      std::error_code ignored;
      fs::remove_all(path, ignored);
    }
    fs::path path;
  } made;
  return made.path;
}

void empty_folder() {
  for (const auto& entry : fs::directory_iterator(folder())) fs::remove_all(entry.path());
}

void write(const fs::path& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary)
      .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

constexpr std::string_view begins_file = "=== ";

/// Only a plain name can be one: an input must not write elsewhere.
bool is_plain_name(std::string_view name) {
  return !name.empty() && name.size() < 40 && name.front() != '.' &&
         std::ranges::all_of(name, [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.';
         });
}

fs::path written_project(std::string_view bytes) {
  empty_folder();
  std::string name = "project.yaml";
  std::string text;
  const auto flush = [&] { write(folder() / name, text); };
  while (!bytes.empty()) {
    const std::size_t end = std::min(bytes.find('\n'), bytes.size() - 1) + 1;
    const std::string_view line = bytes.substr(0, end);
    bytes.remove_prefix(end);
    std::string_view next = line.substr(0, line.find('\n'));
    if (next.starts_with(begins_file) && is_plain_name(next.substr(begins_file.size()))) {
      flush();
      name = next.substr(begins_file.size());
      text.clear();
    } else {
      text += line;
    }
  }
  flush();
  return folder() / "project.yaml";
}

struct Ran {
  int code = 0;
  std::string out;
};

Ran run(const std::vector<std::string>& words) {
  std::vector<const char*> argv{"linewright"};
  for (const std::string& word : words) argv.push_back(word.c_str());
  std::ostringstream out;
  std::ostringstream err;
  Ran ran;
  ran.code = run_command_line(static_cast<int>(argv.size()), argv.data(), out, err);
  ran.out = out.str();
  insist(ran.code >= 0 && ran.code <= 2, words.front() + " ends with 3: " + err.str());
  insist(ran.code != 2 || ran.out.empty(), words.front() + " refuses and answers");
  insist(ran.code == 0 || !ran.out.empty() || !err.str().empty(), words.front() + " says nothing");
  return ran;
}

void mesh(std::string_view bytes, const std::string& name) {
  empty_folder();
  write(folder() / name, bytes);
  const auto triangles = read_mesh_file(folder() / name, name, 10'000);
  if (!triangles) return insist(!triangles.error().message.empty(), "an error without words");
  insist(!triangles->corners.empty(), "a mesh of nothing");
}

std::string file_text(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// A project's file with those that lie beside it.
std::string with_neighbours(const fs::path& file) {
  std::string text = file_text(file);
  if (!fs::is_regular_file(file.parent_path() / "project.yaml") ||
      file.filename() != "project.yaml")
    return text;
  for (const auto& entry : fs::directory_iterator(file.parent_path())) {
    const std::string name = entry.path().filename().string();
    if (!entry.is_regular_file() || entry.path() == file || !is_plain_name(name)) continue;
    text += (text.ends_with('\n') ? "" : "\n") + std::string(begins_file) + name + "\n" +
            file_text(entry.path());
  }
  return text;
}

}  // namespace

void project(std::string_view bytes) {
  const fs::path path = written_project(bytes);
  const LoadResult loaded = load_project(path, built_in_catalogue());
  insist(loaded.project.has_value() == loaded.errors.empty(), "a project or errors");
  for (const Diagnostic& error : loaded.errors)
    insist(!error.message.empty() && !error.where.file.empty(), "an error without words or place");
  if (!loaded.project) return;
  const auto whole_text = expand_project(path, built_in_catalogue());
  insist(static_cast<bool>(whole_text), "what loads expands");
  empty_folder();
  write(folder() / "whole.yaml", *whole_text);
  const LoadResult again = load_project(folder() / "whole.yaml", built_in_catalogue());
  // A mesh's file stays where it was.
  if (loaded.project->structure.meshes.empty())
    insist(again.project.has_value(),
           "what is expanded loads" + (again.errors.empty() ? "" : ": " + again.errors[0].message));
}

void whole(std::string_view bytes) {
  const std::string path = written_project(bytes).string();
  static const std::regex not_finite("(^|[^A-Za-z0-9_'-])-?(nan|inf)([^A-Za-z0-9_'-]|$)");
  static const std::regex in_input("nan|inf", std::regex::icase);
  const bool names_it = std::regex_search(bytes.begin(), bytes.end(), in_input);
  const std::vector<std::vector<std::string>> all{
      {"check", path, "--verbose"},
      {"check", path, "--format", "json"},
      {"cutlist", path, "--format", "csv"},
      {"rig", path},
      {"schedule", path, "--by", "part"},
      {"parts", path, "--spares", "10%"},
      {"close-up", path},
      {"walk-round", path},
      {"draw", path, "--view", "side"},
      {"leak-test", "plan", path, "--system", "static", "--field-elevation", "800",
       "--altimeter-setting", "29.95", "--temperature", "64"}};
  for (const std::vector<std::string>& words : all) {
    const Ran ran = run(words);
    if (ran.code == 2 && words.front() == "check") return;
    if (!names_it)
      insist(!std::regex_search(ran.out, not_finite),
             words.front() + " says a number that is none");
  }
}

void quantity(std::string_view bytes) {
  for (const Dimension dimension :
       {Dimension::plain, Dimension::length, Dimension::volume, Dimension::force,
        Dimension::temperature, Dimension::angle, Dimension::pressure, Dimension::rotational_speed,
        Dimension::speed_vertical, Dimension::mass_per_length, Dimension::stiffness})
    for (const BareLength bare : {BareLength::inch, BareLength::millimetre}) {
      const auto read = read_quantity(bytes, dimension, bare);
      insist(read ? std::isfinite(*read) : !read.error().empty(), "a finite number or words");
    }
}

void mesh_stl(std::string_view bytes) {
  mesh(bytes, "mesh.stl");
}
void mesh_obj(std::string_view bytes) {
  mesh(bytes, "mesh.obj");
}
void mesh_glb(std::string_view bytes) {
  mesh(bytes, "mesh.glb");
}

void readings(std::string_view bytes) {
  const std::string log(bytes);
  for (const LoggedQuantity quantity : {LoggedQuantity::altitude_ft, LoggedQuantity::airspeed_kt}) {
    const auto read = read_leak_log(log, "log.csv", quantity);
    insist(read ? read->rows.size() > 1 : !read.error().empty(), "two rows or words");
  }
  empty_folder();
  write(folder() / "log.csv", bytes);
  static const std::string project = LINEWRIGHT_SOURCE_DIR "/examples/rules/drainage/passes.yaml";
  run({"leak-test", "judge", project, "--system", "static", "--field-elevation", "1200",
       "--altimeter-setting", "29.92", "--temperature", "64", "--readings",
       (folder() / "log.csv").string()});
}

std::span<const NamedTarget> targets() {
  static constexpr std::array<NamedTarget, 7> all{
      {{"project", project,
        "tests/input/fixtures/every-key tests/input/fixtures/broken examples/rules "
        "examples/tight-bend tests/fuzz/found/project",
        ".yaml"},
       {"whole", whole,
        "examples/rules examples/tight-bend examples/frame-hole tests/fuzz/found/whole", ".yaml"},
       {"quantity", quantity, "tests/fuzz/seeds tests/fuzz/found/quantity", ".txt"},
       {"mesh-stl", mesh_stl, "examples tests/fuzz/seeds tests/fuzz/found/mesh-stl", ".stl"},
       {"mesh-obj", mesh_obj, "examples tests/fuzz/seeds tests/fuzz/found/mesh-obj", ".obj"},
       {"mesh-glb", mesh_glb, "examples tests/fuzz/seeds tests/fuzz/found/mesh-glb", ".glb"},
       {"readings", readings, "routes tests/fuzz/found/readings", ".csv"}}};
  return all;
}

std::vector<std::string> seeds_of(const NamedTarget& target) {
  std::vector<fs::path> files;
  std::istringstream places{std::string(target.seeds)};
  for (std::string place; places >> place;) {
    const fs::path root = fs::path(LINEWRIGHT_SOURCE_DIR) / place;
    if (!fs::is_directory(root)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(root))
      if (entry.is_regular_file() && entry.path().string().ends_with(target.ending))
        files.push_back(entry.path());
  }
  std::ranges::sort(files);
  std::vector<std::string> seeds;
  for (const fs::path& file : files) {
    if (target.ending == ".txt") {
      std::ifstream lines(file);
      for (std::string line; std::getline(lines, line);) seeds.push_back(line);
    } else {
      seeds.push_back(target.ending == ".yaml" ? with_neighbours(file) : file_text(file));
    }
  }
  return seeds;
}

}  // namespace linewright::fuzz
