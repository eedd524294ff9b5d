#include "render/leak_words.hpp"

namespace linewright {

Verdict verdict_of(LeakAnswer answer) {
  switch (answer) {
    case LeakAnswer::pass:
      return Verdict::pass;
    case LeakAnswer::fail:
      return Verdict::fail;
    case LeakAnswer::unknown:
      break;
  }
  return Verdict::unknown;
}

std::string sealed_words(const SplitStep& step) {
  return step.node_side ? step.node + ", where " + step.route + " was"
                        : "the end of " + step.route + " that was at " + step.node;
}

}  // namespace linewright
