#pragma once

#include <string>
#include <vector>

namespace linewright {

/// Empty where `written` is one of `known`; else "no rule is called 'chaff'; did you mean 'chafe'?"
/// for the kind of thing "rule".
std::string unknown_name(const std::string& kind, const std::string& written,
                         const std::vector<std::string>& known);

/// Names of all rules, in the registry's order.
std::vector<std::string> rule_names();

/// `message`, with "; did you mean 'chafe'?" where a known name is near to what was written.
std::string with_suggestion(const std::string& message, const std::string& written,
                            const std::vector<std::string>& known);

}  // namespace linewright
