#pragma once
// Runs the program as a builder would, and keeps what it says.

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <string>

#include "built_program.hpp"

namespace linewright {

struct ProgramRun {
  int exit_status = -1;
  std::string output;  ///< standard output and standard error together
};

/// The program with `arguments`, a shell's words. Paths in them count from the source folder.
inline ProgramRun run_program(const std::string& arguments) {
  const std::string command = "cd '" LINEWRIGHT_SOURCE_DIR "' && NO_COLOR=1 '" +
                              test::built_program() + "' " + arguments + " 2>&1 </dev/null";
  std::FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) throw std::runtime_error("cannot run " + command);
  ProgramRun run;
  std::array<char, 4096> block{};
  while (const std::size_t count = std::fread(block.data(), 1, block.size(), pipe))
    run.output.append(block.data(), count);
  const int status = pclose(pipe);
  if (WIFEXITED(status)) run.exit_status = WEXITSTATUS(status);
  return run;
}

/// `check` of a project as JSON.
inline nlohmann::json check_as_json(const std::string& project) {
  return nlohmann::json::parse(run_program("check --format json '" + project + "'").output);
}

}  // namespace linewright
