// The door for libFuzzer: built once for each target, with its name.

#include <cstddef>
#include <cstdint>
#include <fstream>
#include <iostream>

#include "fuzz/targets.hpp"

namespace {

const linewright::fuzz::NamedTarget& chosen() {
  for (const linewright::fuzz::NamedTarget& target : linewright::fuzz::targets())
    if (target.name == LINEWRIGHT_FUZZ_TARGET) return target;
  std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const linewright::fuzz::NamedTarget& target = chosen();
  target.run({reinterpret_cast<const char*>(bytes), size});
  return 0;
}

/// With LINEWRIGHT_SEEDS set to a folder, writes the target's seeds there before anything else.
extern "C" int LLVMFuzzerInitialize(int*, char***) {
  const char* folder = std::getenv("LINEWRIGHT_SEEDS");
  if (folder == nullptr) return 0;
  int number = 0;
  for (const std::string& seed : linewright::fuzz::seeds_of(chosen()))
    std::ofstream(std::string(folder) + "/seed-" + std::to_string(++number), std::ios::binary)
        << seed;
  return 0;
}
