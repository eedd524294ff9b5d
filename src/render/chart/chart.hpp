#pragma once
// Two axes on a sheet and what is drawn between them.

#include <string_view>
#include <utility>
#include <vector>

#include "render/draw/sheet.hpp"

namespace linewright {

/// A range of an axis; made wider where it has no width.
struct AxisRange {
  double from = 0;
  double to = 1;

  /// The range that holds all values, with a little room beyond. Precondition: there are some.
  static AxisRange about(const std::vector<double>& values);
};

class Chart {
 public:
  /// Draws the axes along the left and the foot of `room`, with round ticks; titles and numbers lie
  /// outside of it.
  Chart(Sheet& sheet, const PaperBox& room, AxisRange across, AxisRange up,
        std::string_view across_title, std::string_view up_title);

  double x(double across) const;
  double y(double up) const;
  const PaperBox& room() const { return room_; }

  using Points = std::vector<std::pair<double, double>>;
  /// Straight lines from point to point.
  void curve(std::string_view css_class, const Points& points);
  /// The same closed, to fill.
  void area(std::string_view css_class, const Points& points);
  void dot(std::string_view css_class, double across, double up, std::string_view title);

 private:
  std::string path_of(const Points& points) const;

  Sheet& sheet_;
  PaperBox room_;
  AxisRange across_;
  AxisRange up_;
};

}  // namespace linewright
