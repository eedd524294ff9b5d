#include "system/arguments.hpp"

#include <windows.h>
// After windows.h, which it needs.
#include <shellapi.h>

#include <cstddef>
#include <utility>

namespace linewright {

// The words as they are given to main have lost what the system's code page does not hold.
std::vector<std::string> program_arguments(int argc, const char* const* argv) {
  int count = 0;
  wchar_t** const wide = ::CommandLineToArgvW(::GetCommandLineW(), &count);
  if (wide == nullptr) return {argv, argv + argc};
  std::vector<std::string> words;
  for (int i = 0; i < count; ++i) {
    const int size = ::WideCharToMultiByte(CP_UTF8, 0, wide[i], -1, nullptr, 0, nullptr, nullptr);
    std::string word(static_cast<std::size_t>(size), '\0');
    ::WideCharToMultiByte(CP_UTF8, 0, wide[i], -1, word.data(), size, nullptr, nullptr);
    // The NUL at the end is counted.
    word.resize(word.empty() ? 0 : word.size() - 1);
    words.push_back(std::move(word));
  }
  ::LocalFree(wide);
  return words;
}

}  // namespace linewright
