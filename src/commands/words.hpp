#pragma once
// The command line's words before and after they are understood.

#include <optional>
#include <string>
#include <vector>

#include "commands/commands.hpp"
#include "commands/leak_test_words.hpp"
#include "model/expected.hpp"

namespace linewright {

/// Option values as written.
struct Words {
  std::string project;
  std::vector<std::string> projects;  ///< of `check`, which takes several
  std::optional<std::string> second_project;
  std::string rule;
  std::string directory;
  std::optional<std::string> name;
  std::optional<std::string> only_rule;
  std::optional<std::string> only_route;
  std::optional<std::string> catalogue_project;
  std::optional<std::string> output;
  std::optional<std::string> report;
  std::optional<std::string> schema_of;
  std::vector<std::string> set;
  std::string format;  ///< empty: the first of the command's forms
  std::string color = "auto";
  std::string units = "in";
  std::string by = "gravity";
  std::string schedule_by = "route";
  bool force = false;
  bool quiet = false;
  bool strict = false;
  bool verbose = false;
  bool serve = false;
  bool write = false;
  LeakTestWords leak_test;
  PartsWords parts;
  DrawWords draw;
  ExportWords exported;
};

/// What the terminal and the environment say about colour.
struct ColourSurroundings {
  bool terminal = false;
  bool refused = false;  ///< NO_COLOR is set and not empty, or TERM is "dumb"
};

/// The form of the result, or what is wrong with the words. `formats` are those of the command.
Expected<ResultForm, std::string> read_form(const Words& words,
                                            const std::vector<std::string>& formats,
                                            const ColourSurroundings& surroundings);

/// The first of `arguments` that looks like an option and is none of `options` ("--format"), in
/// words with a suggestion; empty where all are known. CLI11 by itself would take the word after a
/// misspelt option for a file and blame that.
std::string unknown_option(const std::vector<std::string>& arguments,
                           const std::vector<std::string>& options);

}  // namespace linewright
