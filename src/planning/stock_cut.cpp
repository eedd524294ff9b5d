#include "planning/stock_cut.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace linewright {

namespace {

constexpr double rounding_in = 1e-9;

class Search {
 public:
  Search(const std::vector<double>& pieces_in, std::vector<std::size_t> order,
         std::vector<double> sold_in, int most_places)
      : pieces_in_(pieces_in),
        order_(std::move(order)),
        sold_in_(std::move(sold_in)),
        places_left_(most_places) {
    for (const std::size_t piece : order_) uncut_in_ += pieces_in_[piece];
  }

  StockCut run() {
    first_fit();
    const std::size_t least = lengths_for(uncut_in_);
    place(0);
    StockCut cut;
    cut.lengths = best_;
    cut.is_fewest = places_left_ > 0 || best_.size() == least;
    return cut;
  }

 private:
  double longest_in() const { return sold_in_.back(); }

  std::size_t lengths_for(double inches) const {
    return static_cast<std::size_t>(std::ceil(std::max(0.0, inches - rounding_in) / longest_in()));
  }

  bool fits(const StockLength& length, double piece_in) const {
    return length.used_in + piece_in <= longest_in() + rounding_in;
  }

  double shortest_for(double used_in) const {
    const auto enough = std::find_if(sold_in_.begin(), sold_in_.end(),
                                     [&](double sold) { return sold + rounding_in >= used_in; });
    return enough == sold_in_.end() ? longest_in() : *enough;
  }

  double bought_in(const std::vector<StockLength>& lengths) const {
    return std::accumulate(
        lengths.begin(), lengths.end(), 0.0,
        [&](double sum, const StockLength& each) { return sum + shortest_for(each.used_in); });
  }

  void keep_if_better() {
    const bool better =
        best_.empty() || open_.size() < best_.size() ||
        (open_.size() == best_.size() && bought_in(open_) < bought_in(best_) - rounding_in);
    if (!better) return;
    best_ = open_;
    for (StockLength& each : best_) each.length_in = shortest_for(each.used_in);
  }

  void first_fit() {
    for (const std::size_t piece : order_) {
      const auto found = std::find_if(open_.begin(), open_.end(), [&](const StockLength& each) {
        return fits(each, pieces_in_[piece]);
      });
      StockLength& length = found == open_.end() ? open_.emplace_back() : *found;
      length.used_in += pieces_in_[piece];
      length.pieces.push_back(piece);
    }
    keep_if_better();
    open_.clear();
  }

  /// Never more lengths than any cut of the pieces from `next` on needs besides the open ones.
  std::size_t least_from_here() const {
    double free_in = 0;
    for (const StockLength& each : open_) free_in += longest_in() - each.used_in;
    return open_.size() + lengths_for(uncut_in_ - free_in);
  }

  void place(std::size_t next) {
    if (--places_left_ <= 0 || least_from_here() > best_.size()) return;
    if (next == order_.size()) {
      keep_if_better();
      return;
    }
    const std::size_t piece = order_[next];
    const double piece_in = pieces_in_[piece];
    std::vector<double> tried_in;
    for (std::size_t i = 0; i <= open_.size(); ++i) {
      if (i == open_.size() && i >= best_.size()) break;
      const double used_in = i < open_.size() ? open_[i].used_in : 0;
      const bool seen = std::find(tried_in.begin(), tried_in.end(), used_in) != tried_in.end();
      if (i < open_.size() && (seen || !fits(open_[i], piece_in))) continue;
      tried_in.push_back(used_in);
      const bool is_new = i == open_.size();
      if (is_new) open_.emplace_back();
      open_[i].used_in += piece_in;
      open_[i].pieces.push_back(piece);
      uncut_in_ -= piece_in;
      place(next + 1);
      uncut_in_ += piece_in;
      open_[i].pieces.pop_back();
      open_[i].used_in = used_in;
      if (is_new) {
        open_.pop_back();
        break;
      }
    }
  }

  const std::vector<double>& pieces_in_;
  std::vector<std::size_t> order_;  ///< longest first
  std::vector<double> sold_in_;     ///< shortest first
  int places_left_;
  double uncut_in_ = 0;
  std::vector<StockLength> open_;
  std::vector<StockLength> best_;
};

}  // namespace

double StockCut::left_over_in() const {
  double sum = 0;
  for (const StockLength& each : lengths) sum += each.length_in - each.used_in;
  return sum;
}

StockCut cut_stock(const std::vector<double>& pieces_in, const std::vector<double>& sold_in,
                   int most_places) {
  std::vector<double> sold = sold_in;
  std::sort(sold.begin(), sold.end());
  std::vector<std::size_t> order;
  std::vector<std::size_t> too_long;
  for (std::size_t i = 0; i < pieces_in.size(); ++i)
    (pieces_in[i] <= sold.back() + rounding_in ? order : too_long).push_back(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return pieces_in[a] > pieces_in[b]; });
  StockCut cut = Search(pieces_in, std::move(order), std::move(sold), most_places).run();
  cut.too_long = std::move(too_long);
  return cut;
}

}  // namespace linewright
