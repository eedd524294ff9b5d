#pragma once
// The bits of a number as another type, where not every library has std::bit_cast.

#include <cstring>
#include <type_traits>

namespace linewright {

/// The value of type `To` that has the bits of `from`.
template <typename To, typename From>
To same_bits(const From& from) {
  static_assert(sizeof(To) == sizeof(From));
  static_assert(std::is_trivially_copyable_v<To> && std::is_trivially_copyable_v<From>);
  To to;
  std::memcpy(&to, &from, sizeof to);
  return to;
}

}  // namespace linewright
