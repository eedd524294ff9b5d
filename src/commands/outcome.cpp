#include "commands/outcome.hpp"

#include "system/file_words.hpp"

namespace linewright {

Outcome refusal(const std::string& message) {
  return {ExitCode::bad_input, "", "linewright: error: " + message + "\n"};
}

std::string write_output_file(const NewFile& file, bool force) {
  const std::string wrong = write_whole_file(file, force);
  return wrong == already_there_words(file.path) ? wrong + "; --force replaces it" : wrong;
}

}  // namespace linewright
