#include "system/stop_signal.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
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

/// What the program did of these signals before, and where it reads of them now.
struct StopSignal::Handling {
  int read_end = -1;
  struct sigaction before_interrupt {};
  struct sigaction before_terminate {};
};

StopSignal::StopSignal() : handling_(std::make_unique<Handling>()) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0)
    throw std::system_error(errno, std::generic_category(), "cannot wait for signals");
  for (const int end : ends) ::fcntl(end, F_SETFD, FD_CLOEXEC);
  ::fcntl(ends[1], F_SETFL, O_NONBLOCK);
  handling_->read_end = ends[0];
  write_end = ends[1];
  struct sigaction action {};
  action.sa_handler = tell_of_stop;
  action.sa_flags = static_cast<int>(SA_RESTART | SA_RESETHAND);
  ::sigemptyset(&action.sa_mask);
  ::sigaction(SIGINT, &action, &handling_->before_interrupt);
  ::sigaction(SIGTERM, &action, &handling_->before_terminate);
}

Waitable StopSignal::descriptor() const {
  return handling_->read_end;
}

StopSignal::~StopSignal() {
  ::sigaction(SIGINT, &handling_->before_interrupt, nullptr);
  ::sigaction(SIGTERM, &handling_->before_terminate, nullptr);
  ::close(write_end);
  ::close(handling_->read_end);
  write_end = -1;
}

}  // namespace linewright
