#pragma once
// Runs the program within the test, with its output caught and folders that vanish afterwards.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "commands/command_line.hpp"

namespace linewright::test {

namespace fs = std::filesystem;

struct CommandRun {
  int code = -1;
  std::string out;
  std::string err;
};

inline CommandRun run(const std::vector<std::string>& words) {
  std::vector<const char*> argv = {"linewright"};
  for (const std::string& word : words) argv.push_back(word.c_str());
  std::ostringstream out;
  std::ostringstream err;
  CommandRun result;
  result.code = run_command_line(static_cast<int>(argv.size()), argv.data(), out, err);
  result.out = out.str();
  result.err = err.str();
  return result;
}

inline std::string read(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

inline void write(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

class TempFolder {
 public:
  TempFolder() {
    std::string name = (fs::temp_directory_path() / "linewright-test-XXXXXX").string();
    if (!::mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  ~TempFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }

  const fs::path& path() const { return path_; }
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }

 private:
  fs::path path_;
};

/// The project that `init` writes, to be changed by a test.
class StarterCopy {
 public:
  StarterCopy() {
    if (run({"init", root()}).code != 0) throw std::runtime_error("init failed");
  }

  std::string root() const { return folder_ / "plane"; }
  std::string file(const std::string& name) const { return root() + "/" + name; }

  /// Replaces the only occurrence of `before` in a file.
  void edit(const std::string& name, const std::string& before, const std::string& after) const {
    std::string text = read(file(name));
    const std::size_t place = text.find(before);
    if (place == std::string::npos || text.find(before, place + 1) != std::string::npos)
      throw std::runtime_error("not exactly once in " + name + ": " + before);
    write(file(name), text.replace(place, before.size(), after));
  }

  /// Bends one corner to half of what the line stands.
  void bend_too_tightly() const {
    edit("static.yaml", "[142, 0, 18], bend: 1 1/4", "[142, 0, 18], bend: 0.5");
  }

 private:
  TempFolder folder_;
};

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

inline bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace linewright::test
