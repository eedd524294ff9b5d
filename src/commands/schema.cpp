#include "commands/commands.hpp"
#include "render/project_schema.hpp"

namespace linewright {

Outcome schema() {
  return {ExitCode::nothing_failed, project_schema(), ""};
}

}  // namespace linewright
