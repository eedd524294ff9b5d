#include "system/large_pages.hpp"

namespace linewright {

// Windows gives them to those alone whom an administrator lets have them.
void prefer_large_pages(void*, std::size_t) {}

}  // namespace linewright
