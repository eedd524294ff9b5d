#pragma once
// A cable of the catalogue that would serve, in words.

#include <functional>
#include <string>

#include "model/line.hpp"

namespace linewright {

/// " such as cable-7x19-1/8-steel": the smallest cable of the same metal that serves, of the same
/// construction where there is one; empty where the catalogue has none.
std::string such_as(const Catalogue& catalogue, const Line& like,
                    const std::function<bool(const Line&)>& serves);

}  // namespace linewright
