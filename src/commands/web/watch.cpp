#include "commands/watch/watch.hpp"

namespace linewright {

Outcome watch(const WatchOptions&, const Show&) {
  return refusal("watch is not in the page, which checks again as you type");
}

}  // namespace linewright
