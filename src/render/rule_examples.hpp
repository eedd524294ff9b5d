#pragma once
// For each rule a small project that does not pass, one nearby that does, and what `check` says of
// both.

#include <string>
#include <string_view>

namespace linewright {

struct RuleExample {
  std::string_view differs;   ///< one sentence: what is drawn here and not in the other
  std::string_view messages;  ///< the rule's judgements, parted by empty lines, each ends its line
};

struct RuleExamples {
  RuleExample fails;
  RuleExample passes;
};

/// The examples of a rule; all texts are empty where it has none.
RuleExamples examples_of(std::string_view rule);

/// Of what passes, the judgements of the line and column that the other fails at: those are the
/// same thing mended. All that passes where none is there.
std::string passes_in_place(const RuleExamples& examples);

}  // namespace linewright
