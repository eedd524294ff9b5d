#pragma once
// A sheet of paper to draw on, as SVG. Places on it are in points, 1/72 in, from its upper left;
// what is drawn in a frame of the aeroplane's inches goes through a `PaperScale`.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "planning/scene.hpp"
#include "render/report.hpp"

namespace linewright {

inline constexpr double points_per_inch = 72;

/// What every view is drawn from.
struct Drawing {
  const Report& report;
  const Scene& scene;
  Phrasing phrasing;
};

/// A part of the sheet.
struct PaperBox {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;

  bool overlaps(const PaperBox& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

/// Inches of the aeroplane on paper: the first coordinate to the right, the second upwards, at one
/// of the usual ratios.
struct PaperScale {
  int one_to = 1;
  double left_in = 0;  ///< first coordinate at `origin_x`
  double top_in = 0;   ///< second coordinate at `origin_y`
  double origin_x = 0;
  double origin_y = 0;

  double points(double inches) const { return inches * points_per_inch / one_to; }
  double x(double u_in) const { return origin_x + points(u_in - left_in); }
  double y(double v_in) const { return origin_y + points(top_in - v_in); }
};

/// The largest usual ratio at which `least` to `most` fits into `room`, in its middle.
PaperScale fitted(Vec2 least, Vec2 most, const PaperBox& room);
/// The first usual ratio at which so many inches fit into so many points.
int usual_ratio(double inches, double points);

/// A step of 1, 2 or 5 times a power of ten that is no less than `least`.
double tick_step(double least);

class Sheet {
 public:
  explicit Sheet(double width_pt) : width_pt_(width_pt) {}

  /// Markup that is safe already.
  void add(std::string_view markup) { body_ += markup; }
  /// `d` of a path; `title` is what a pointer over it shows, empty for none.
  void path(std::string_view css_class, std::string_view d, std::string_view title = {});
  /// `anchor`: "start", "middle" or "end". At most `most_characters` of it, made safe.
  void text(double x, double y, std::string_view css_class, std::string_view anchor,
            std::string_view words, std::size_t most_characters = 80);
  /// The verdict's shape, which shows `title`.
  void mark(Verdict verdict, double x, double y, std::string_view title);
  /// Keeps labels off a part of the sheet.
  void keep_off(const PaperBox& box) { taken_.push_back(box); }
  /// Writes a word near a place and within `room`, where nothing is written yet, with a leader
  /// where that is farther off. False where there is no room left.
  bool label(double x, double y, const PaperBox& room, std::string_view css_class,
             std::string_view words);

  /// The document, `height_pt` high.
  std::string finished(double height_pt, std::string_view name) const;

  double width_pt() const { return width_pt_; }
  /// What is drawn so far, without the document about it.
  const std::string& body() const { return body_; }

 private:
  double width_pt_;
  std::string body_;
  std::vector<PaperBox> taken_;
};

/// How wide words of this many points are at the most, roughly, once made safe.
double words_width(std::string_view words, double size_pt);

/// The scale: a bar of a round length of the aeroplane, and one of 1 in of paper to check a print.
void draw_scale_bars(Sheet& sheet, double x, double y, int one_to, const Phrasing& phrasing);
/// Project, view, scale, unit and how the check came out.
void draw_title_block(Sheet& sheet, double y, const Drawing& drawing, std::string_view view,
                      int one_to);
/// Verdicts by shape and word, and lines by dash and word: of these kinds.
void draw_legend(Sheet& sheet, double x, double y, const std::vector<SystemKind>& kinds);
std::vector<SystemKind> kinds_of(const Scene& scene);
/// Class of a line's stroke: "static", "pitot", "alpha", "vent", "cable", "wire", "rod",
/// "push-pull".
std::string_view line_class(SystemKind kind);

/// Judgements that are no pass, the gravest first.
std::vector<const Judgement*> marked_findings(const Report& report, std::string_view only_route);
/// A numbered list of them from `y` on, with shape, word, rule, route and place. Returns where it
/// ends. Distances along the route where `along`, else places.
double list_findings(Sheet& sheet, double x, double y, const Drawing& drawing,
                     const std::vector<const Judgement*>& findings, bool along);
/// Some of them without a heading, numbered from `number` on.
double list_more_findings(Sheet& sheet, double x, double y, const Drawing& drawing,
                          std::span<const Judgement* const> findings, bool along, int number);
/// How much of the sheet a finding with its place takes in such a list.
inline constexpr double finding_height_pt = 23;

}  // namespace linewright
