#include "input/text_file.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "input/yaml_document.hpp"
#include "system/open_file.hpp"

namespace linewright {

Expected<std::string, Diagnostic> read_text_file(const std::filesystem::path& path,
                                                 const std::string& shown_name) {
  const auto failure = [&](std::string message) {
    return Diagnostic{{shown_name, 0, 0}, std::move(message), "", ""};
  };
  const auto file = open_file(path, largest_file_bytes);
  if (!file) return failure(file.error());

  // The size is only a hint: the file may grow meanwhile, and some report none.
  std::string bytes(file->size() + 1, '\0');
  std::size_t filled = 0;
  while (true) {
    if (filled == bytes.size()) bytes.resize(bytes.size() * 2 + 4096);
    const auto got = file->read(filled, bytes.data() + filled, bytes.size() - filled);
    if (!got) return failure(got.error());
    filled += *got;
    if (filled > largest_file_bytes)
      return failure(fmt::format("the file is too large: more than {} MiB are not read",
                                 largest_file_bytes >> 20));
    if (filled < bytes.size()) break;
  }
  bytes.resize(filled);
  return bytes;
}

}  // namespace linewright
