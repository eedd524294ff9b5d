#pragma once
// How many of a long list of like cases a test goes through.

#include <cstddef>
#include <cstdlib>

namespace linewright::test {

/// Every case, unless LINEWRIGHT_ONE_CASE_IN says of how many one is enough: under sanitizers,
/// where all take four times as long and like cases run the same code.
inline std::size_t one_case_in() {
  const char* told = std::getenv("LINEWRIGHT_ONE_CASE_IN");
  return told == nullptr ? 1 : std::strtoul(told, nullptr, 10);
}

/// The cases of `list` that a test goes through, the first among them.
template <class List>
List some_of(const List& list) {
  List some;
  std::size_t index = 0;
  for (const auto& each : list)
    if (index++ % one_case_in() == 0) some.push_back(each);
  return some;
}

}  // namespace linewright::test
