#pragma once
// A project's file as a tree, before it is read.

#include <filesystem>
#include <string>
#include <vector>

#include "input/quantity.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

struct ParsedFile {
  std::string name;                ///< relative to the project's folder
  std::vector<std::string> lines;  ///< for the errors that show one
  std::filesystem::path folder;    ///< that it stands in, canonical
  YamlNode root;                   ///< without keys where the file could not be parsed
  bool included = false;           ///< false for the project file
  bool readable = false;           ///< it was parsed without an error
};

}  // namespace linewright
