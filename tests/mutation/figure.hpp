#pragma once
// A number of the sources that can be changed while the tests run: LINEWRIGHT_CHANGED="17:1.02"
// makes figure 17 so many times what is written. What the compiler works out beforehand stays as
// written.

#include <fmt/format.h>

#include <cstdlib>
#include <type_traits>

namespace linewright {

struct ChangedFigure {
  int id = 0;
  double factor = 1;
};

inline const ChangedFigure& changed_figure() {
  static const ChangedFigure changed = [] {
    ChangedFigure read;
    const char* words = std::getenv("LINEWRIGHT_CHANGED");
    if (!words) return read;
    char* rest = nullptr;
    read.id = static_cast<int>(std::strtol(words, &rest, 10));
    read.factor = std::strtod(rest + 1, nullptr);
    return read;
  }();
  return changed;
}

class Figure {
 public:
  constexpr Figure() = default;
  constexpr explicit Figure(double value, int id = 0) : value_(value), id_(id) {}

  constexpr operator double() const {
    if (std::is_constant_evaluated() || id_ == 0) return value_;
    const ChangedFigure& changed = changed_figure();
    if (changed.id != id_) return value_;
    // A nought gives way to a hundredth.
    return value_ == 0 ? (changed.factor - 1) / 2 : value_ * changed.factor;
  }

 private:
  double value_ = 0;
  int id_ = 0;
};

}  // namespace linewright

template <>
struct fmt::formatter<linewright::Figure> : fmt::formatter<double> {
  template <typename Context>
  auto format(const linewright::Figure& figure, Context& context) const {
    return fmt::formatter<double>::format(static_cast<double>(figure), context);
  }
};
