#pragma once
// The system's own header, and what its errors are called elsewhere.

#include <windows.h>

namespace linewright {

/// The number that errno has for an error of the system; EIO for what has none.
int error_number(DWORD error);

}  // namespace linewright
