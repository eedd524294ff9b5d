#include "input/text_file.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "input/yaml_document.hpp"
#include "system/open_file.hpp"

namespace linewright {
namespace {

/// How often a file that is being saved is read again.
constexpr int most_readings = 3;

/// Returns what went wrong, empty for nothing.
std::string read_to_the_end(const OpenFile& file, std::string& bytes) {
  // The size is only a hint: the file may grow meanwhile, and some report none.
  bytes.assign(file.size() + 1, '\0');
  std::size_t filled = 0;
  while (true) {
    if (filled == bytes.size()) bytes.resize(bytes.size() * 2 + 4096);
    const auto got = file.read(filled, bytes.data() + filled, bytes.size() - filled);
    if (!got) return got.error();
    filled += *got;
    if (filled > largest_file_bytes)
      return fmt::format("the file is too large: more than {} MiB are not read",
                         largest_file_bytes >> 20);
    if (filled < bytes.size()) break;
  }
  bytes.resize(filled);
  return {};
}

}  // namespace

Expected<std::string, Diagnostic> read_text_file(const std::filesystem::path& path,
                                                 const std::string& shown_name) {
  const auto failure = [&](std::string message) {
    return Diagnostic{{shown_name, 0, 0}, std::move(message), "", ""};
  };
  for (int reading = 0; reading < most_readings; ++reading) {
    const auto file = open_file(path, largest_file_bytes);
    if (!file) return failure(file.error());
    std::string bytes;
    std::string wrong = read_to_the_end(*file, bytes);
    if (file->changed()) continue;
    if (!wrong.empty()) return failure(std::move(wrong));
    return bytes;
  }
  return failure(std::string(changed_words));
}

}  // namespace linewright
