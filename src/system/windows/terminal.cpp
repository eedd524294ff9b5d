#include "system/terminal.hpp"

#include <fcntl.h>
#include <io.h>

#include <cstdio>
#include <initializer_list>

#include "system/windows/windows.hpp"

namespace linewright {

namespace {

/// True for a console that takes colours, which it is asked to.
bool is_console(DWORD stream) {
  const HANDLE console = ::GetStdHandle(stream);
  DWORD mode = 0;
  if (!::GetConsoleMode(console, &mode)) return false;
  return ::SetConsoleMode(console, mode | ENABLE_VIRTUAL_TERMINAL_PROCESSING) != 0;
}

}  // namespace

bool output_is_terminal() {
  return is_console(STD_OUTPUT_HANDLE);
}

bool errors_are_terminal() {
  return is_console(STD_ERROR_HANDLE);
}

void prepare_output() {
  for (std::FILE* const stream : {stdout, stderr}) ::_setmode(::_fileno(stream), _O_BINARY);
  if (is_console(STD_OUTPUT_HANDLE) || is_console(STD_ERROR_HANDLE)) ::SetConsoleOutputCP(CP_UTF8);
}

}  // namespace linewright
