#pragma once
// The fewest of some places along a line between which nothing is wrong.

#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "model/judgement.hpp"
#include "planning/support_way.hpp"

namespace linewright {

/// Something that a rule finds wrong on the line with some supports.
struct SupportFault {
  Judgement judgement;
  double distance_in = 0;   ///< along the line
  bool clamp_lost = false;  ///< it is so only once one of the clamps has let go
  bool beyond_end = false;  ///< it is of a free length that another route has most of
  bool placed = true;       ///< the distance is known: not where another line reaches this one
};

/// Places of supports as they follow from distances along the line, or rounded as they are written
/// down. Rounded ones that are near to each other would make a straight line crooked.
enum class Places { exact, as_written };

/// What is wrong with supports at those of the places, by their indices in order; the ends and what
/// stays need not be among them.
using JudgePlaces =
    std::function<std::vector<SupportFault>(const std::vector<int>& chosen, Places places)>;

/// No line is judged more often than this.
inline constexpr int most_judged = 3000;

/// Looks for the fewest places. A span is from one place to the next that is chosen or stays.
///
/// Spans are learnt to be wrong only where a judgement of the whole line says so. What breaks a
/// span breaks all spans around it: its free length is longer, it reaches farther everywhere, and
/// no support is nearer to any place of it. Only what swings in time with the propeller does not
/// follow that, and is learnt span by span. So of all that are not known to be wrong the fewest
/// supports are tried, until nothing is wrong with them: no fewer can do.
class SupportSearch {
 public:
  SupportSearch(const std::vector<SupportPlace>& places, JudgePlaces judge);

  /// Indices of the places, in order; nothing where there are none that do.
  std::optional<std::vector<int>> fewest();

  /// Where `fewest` found nothing: what stops it first along the line. Nothing where it gave up.
  const std::optional<SupportFault>& stopped_by() const { return stopped_by_; }
  bool gave_up() const { return judged_ > most_judged; }

 private:
  using Span = std::pair<int, int>;  ///< indices of the places at its two ends
  using Wrong = std::map<Span, SupportFault>;

  std::vector<SupportFault> judged(const std::vector<int>& chosen, Places places);
  /// The places that are chosen, those that stay and the two ends, in order.
  std::vector<int> with_ends(const std::vector<int>& chosen) const;
  Span span_of(const std::vector<int>& all, const SupportFault& fault) const;
  /// Supports everywhere but inside some spans.
  std::vector<int> all_but(const std::vector<Span>& open) const;

  void learn(const std::vector<int>& chosen, const std::vector<SupportFault>& faults);
  void learn_unplaced(const std::vector<int>& all, const SupportFault& fault);
  void learn_spacing(Span span, const SupportFault& fault);
  void learn_lost_clamp(const std::vector<int>& all, Span span, const SupportFault& fault);
  /// The shortest part of each span, from its start or to its end, that is still wrong.
  Wrong shortest_wrong(const Wrong& wrong, bool from_start);
  void mark(Span span, const SupportFault& fault);

  bool is_wrong(Span span) const;
  bool is_wrong_window(int first, int middle, int last) const;
  /// The fewest supports of which nothing is known to be wrong.
  std::optional<std::vector<int>> next_try();
  void find_what_stops(int farthest);

  const std::vector<SupportPlace>& places_;
  JudgePlaces judge_;
  std::map<int, std::pair<int, SupportFault>> wrong_from_;  ///< to where a span from there is wrong
  std::vector<int> wrong_to_;        ///< of each place: the nearest of these of it and all after it
  std::set<Span> wrong_alone_;       ///< wrong, whatever those around them are
  std::vector<Span> wrong_windows_;  ///< two spans as one, the clamp between them lost
  std::optional<SupportFault> last_alone_;
  std::optional<SupportFault> stopped_by_;
  int judged_ = 0;
};

}  // namespace linewright
