#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace linewright {

/// Empty where `written` is one of `known`; else "no rule is called 'chaff'; did you mean 'chafe'?
/// (linewright rules lists them)" for the kind of thing "rule"; the nearest few where no name is
/// near. `see_all` says what lists them.
std::string unknown_name(const std::string& kind, const std::string& written,
                         const std::vector<std::string>& known, std::string_view see_all = {});

inline constexpr std::string_view see_all_rules = "linewright rules lists them";

/// Names of all rules, in the registry's order.
std::vector<std::string> rule_names();

/// `message`, with "; did you mean 'chafe'?" where a known name is near to what was written.
std::string with_suggestion(const std::string& message, const std::string& written,
                            const std::vector<std::string>& known);

}  // namespace linewright
