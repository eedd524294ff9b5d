#pragma once
// Values of a project as they would be: "routes.static-left.line=tube-aluminium-1/4", put into the
// trees of its files before anything is worked out from them. The files stay as they are.

#include <string>
#include <string_view>
#include <vector>

#include "input/parsed_file.hpp"
#include "input/project_draft.hpp"
#include "model/set_value.hpp"

namespace linewright {

/// What errors name in place of a file; their line is the number of the value, counted from one.
inline constexpr std::string_view set_option = "--set";

struct ValuesSet {
  std::vector<SetValue> values;  ///< in the order given
  ParsedFile shown;              ///< the texts as lines of a file called `--set`, for errors
};

/// Puts each "PATH=VALUE" into the trees. A path has keys and,
/// in lists, names or numbers counted from one, with dots between them; the value is a number, a
/// word or a list as a file would have it, bare lengths in the units of the file that it goes to.
/// A key that may stand there but does not is added. Whatever does not fit is an error of the
/// draft, with the nearest name.
ValuesSet set_values(std::vector<ParsedFile>& files, const std::vector<std::string>& texts,
                     ProjectDraft& draft);

}  // namespace linewright
