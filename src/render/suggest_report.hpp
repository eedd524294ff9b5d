#pragma once
// What `suggest` found, for all its forms.

#include <string>
#include <vector>

#include "model/judgement.hpp"
#include "planning/suggest_supports.hpp"

namespace linewright {

struct SuggestReport {
  std::string project_name;
  std::vector<SupportSuggestion> routes;
  /// What rules, asked again with all that is suggested, say that they do not say as drawn.
  std::vector<Judgement> new_faults;
  std::vector<std::string> assumptions;
  /// Of the routes, those of which something was measured: what is printed holds those places, and
  /// no longer has the supports and distances that `built` names.
  std::vector<std::string> measured_routes;

  /// True where every route has supports that do, and nothing fails or is unknown because of them.
  bool is_sound() const;
};

}  // namespace linewright
