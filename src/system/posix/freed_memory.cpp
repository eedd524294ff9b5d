#include "system/freed_memory.hpp"

#include <cstdlib>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace linewright {

void give_back_freed_memory() {
#ifdef __GLIBC__
  ::malloc_trim(0);
#endif
}

}  // namespace linewright
