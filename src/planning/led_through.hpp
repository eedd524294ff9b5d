#pragma once
// Lines that go through what is put on over them.

#include <string>

#include "lines/prepared.hpp"

namespace linewright {

/// "hole H of deck-skin": what of the closure a point of the line goes through; empty where none
/// does. Parts go on with a closure that they name, or that covers them.
std::string led_through(const PreparedProject& prepared, const PreparedRoute& route,
                        const Closure& closure);

}  // namespace linewright
