#include "system/freed_memory.hpp"

namespace linewright {

void give_back_freed_memory() {}

}  // namespace linewright
