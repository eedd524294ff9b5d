#pragma once
// A project written by a test into a folder of its own, and a small catalogue to load it with.

#include <stdlib.h>

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <system_error>

#include "input/load_project.hpp"

namespace linewright {

/// A folder that is gone when the test is over.
class ProjectFolder {
 public:
  ProjectFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "linewright-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make " + name);
    path_ = std::filesystem::canonical(name);
  }
  ProjectFolder(const ProjectFolder&) = delete;
  ProjectFolder& operator=(const ProjectFolder&) = delete;
  ~ProjectFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }

  const std::filesystem::path& path() const { return path_; }

  void write(const std::string& name, const std::string& text) const {
    const std::filesystem::path file = path_ / name;
    std::filesystem::create_directories(file.parent_path());
    std::ofstream(file, std::ios::binary) << text;
  }

 private:
  std::filesystem::path path_;
};

inline Line catalogue_line(std::string name, LineKind kind) {
  Line line;
  line.name = std::move(name);
  line.kind = kind;
  line.outside_diameter_in = 0.25;
  return line;
}

/// One line of each kind, by names that the real catalogue has too.
inline Catalogue small_catalogue() {
  Catalogue catalogue;
  catalogue.lines = {catalogue_line("tube-aluminium-1/4", LineKind::rigid_tube),
                     catalogue_line("tube-nylon-1/4", LineKind::plastic_tube),
                     catalogue_line("hose-rubber-1/4", LineKind::hose),
                     catalogue_line("cable-7x19-1/8-steel", LineKind::cable),
                     catalogue_line("wire-1/4", LineKind::wire),
                     catalogue_line("rod-aluminium-1/2", LineKind::rod),
                     catalogue_line("conduit-1/4", LineKind::conduit)};
  return catalogue;
}

/// Every error as "file:line:column: message", its suggestion after " | ", one a line.
inline std::string shown(const std::vector<Diagnostic>& errors) {
  std::string all;
  for (const Diagnostic& error : errors) {
    all += error.where.file + ":" + std::to_string(error.where.line) + ":" +
           std::to_string(error.where.column) + ": " + error.message;
    if (!error.suggestion.empty()) all += " | " + error.suggestion;
    all += "\n";
  }
  return all;
}

}  // namespace linewright
