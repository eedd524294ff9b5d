#pragma once
// The leak test's part of the command line.

#include <string>
#include <vector>

#include "commands/leak_test.hpp"
#include "commands/words.hpp"
#include "model/expected.hpp"

namespace CLI {
class App;
}

namespace linewright {

/// Declares the command's words.
void declare_leak_test(CLI::App& app, Words& words);

/// What is wrong where the command's arguments say neither to plan nor to judge; else empty.
std::string missing_action(const std::vector<std::string>& arguments);

/// What the words ask for, or what is wrong with them. `today` (YYYY-MM-DD) dates a record where
/// --date does not.
Expected<LeakTestOptions, std::string> read_leak_test(const Words& words, const ResultForm& form,
                                                      const std::string& today);

/// Reads the words and runs the command.
Outcome run_leak_test(const Words& words, const ResultForm& form);

}  // namespace linewright
