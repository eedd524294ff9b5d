#include <algorithm>

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "render/output_schemas.hpp"
#include "render/project_schema.hpp"

namespace linewright {

namespace {

constexpr std::string_view schema_ending = ".json";

std::string command_of(const EmbeddedSchema& schema) {
  return std::string(schema.name.substr(0, schema.name.size() - schema_ending.size()));
}

}  // namespace

Outcome schema(const std::optional<std::string>& of) {
  if (!of) return {ExitCode::nothing_failed, project_schema(), ""};
  std::vector<std::string> commands;
  for (const EmbeddedSchema& each : embedded_schemas()) {
    if (command_of(each) == *of) return {ExitCode::nothing_failed, std::string(each.text), ""};
    commands.push_back(command_of(each));
  }
  std::string known;
  for (const std::string& command : commands) known += (known.empty() ? "" : ", ") + command;
  return refusal(unknown_name("JSON of a command", *of, commands, "there are " + known));
}

}  // namespace linewright
