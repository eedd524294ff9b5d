#include "system/stop_signal.hpp"

#include <atomic>
#include <system_error>

#include "system/windows/windows.hpp"

namespace linewright {

namespace {

// A handler is given nothing but what was pressed, and runs in a thread of its own.
std::atomic<HANDLE> told = nullptr;

/// The first of these is told of; all others end the program, as without a handler.
BOOL WINAPI tell_of_stop(DWORD event) {
  if (event != CTRL_C_EVENT && event != CTRL_BREAK_EVENT) return FALSE;
  const HANDLE stop = told.exchange(nullptr);
  return stop != nullptr && ::SetEvent(stop);
}

}  // namespace

struct StopSignal::Handling {
  HANDLE stop = nullptr;
};

StopSignal::StopSignal() : handling_(std::make_unique<Handling>()) {
  handling_->stop = ::CreateEventW(nullptr, TRUE, FALSE, nullptr);
  if (handling_->stop == nullptr)
    throw std::system_error(error_number(::GetLastError()), std::generic_category(),
                            "cannot wait for signals");
  told = handling_->stop;
  ::SetConsoleCtrlHandler(tell_of_stop, TRUE);
}

Waitable StopSignal::descriptor() const {
  return reinterpret_cast<Waitable>(handling_->stop);
}

StopSignal::~StopSignal() {
  ::SetConsoleCtrlHandler(tell_of_stop, FALSE);
  told = nullptr;
  ::CloseHandle(handling_->stop);
}

}  // namespace linewright
