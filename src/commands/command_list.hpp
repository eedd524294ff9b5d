#pragma once
// Every command of the command line.

#include <CLI/CLI.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "commands/watch/watch.hpp"
#include "commands/words.hpp"

namespace linewright {

/// One command of the command line: how its words are declared and what it does.
struct Command {
  std::string_view name;
  std::string_view purpose;
  std::string_view example;
  std::vector<std::string> formats;  ///< empty: the command prints no result in forms
  void (*declare)(CLI::App&, Words&);
  Outcome (*run)(const Words&, const ResultForm&);
  /// Instead of `run` for a command that shows results until it is stopped. It has no --output.
  Outcome (*keep_running)(const Words&, const ResultForm&, const Show&) = nullptr;
  std::string_view note = {};  ///< whole lines under the command's help
  bool has_format = true;      ///< false where an option of its own says the form
};

const std::vector<Command>& all_commands();

/// Declares the program's own options, and every command with its words.
void declare_all(CLI::App& app, Words& words);

}  // namespace linewright
