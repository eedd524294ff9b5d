#include "commands/watch/stop_signal.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>

namespace linewright {

namespace {

// A signal handler is given nothing but the signal's number.
volatile std::sig_atomic_t write_end = -1;

extern "C" void tell_of_stop(int) {
  const int error = errno;
  const char byte = 0;
  // A full pipe is readable already, which is all that is wanted.
  [[maybe_unused]] const ssize_t written = ::write(write_end, &byte, 1);
  errno = error;
}

}  // namespace

StopSignal::StopSignal() {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0)
    throw std::system_error(errno, std::generic_category(), "cannot wait for signals");
  for (const int end : ends) ::fcntl(end, F_SETFD, FD_CLOEXEC);
  ::fcntl(ends[1], F_SETFL, O_NONBLOCK);
  read_end_ = ends[0];
  write_end = ends[1];
  struct sigaction action {};
  action.sa_handler = tell_of_stop;
  action.sa_flags = static_cast<int>(SA_RESTART | SA_RESETHAND);
  ::sigemptyset(&action.sa_mask);
  ::sigaction(SIGINT, &action, &before_interrupt_);
  ::sigaction(SIGTERM, &action, &before_terminate_);
}

StopSignal::~StopSignal() {
  ::sigaction(SIGINT, &before_interrupt_, nullptr);
  ::sigaction(SIGTERM, &before_terminate_, nullptr);
  ::close(write_end);
  ::close(read_end_);
  write_end = -1;
}

}  // namespace linewright
