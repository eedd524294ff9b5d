#pragma once

#include <cstddef>

namespace linewright {

/// Asks for large pages where memory of `bytes` from `begin` on is handed out for the first time.
/// Where the system has none nothing happens.
void prefer_large_pages(void* begin, std::size_t bytes);

}  // namespace linewright
