#include "planning/line_parts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "planning/cable_cut.hpp"
#include "planning/cutlist.hpp"
#include "planning/stock_cut.hpp"

namespace linewright {

namespace {

struct Piece {
  double length_in = 0;
  std::string route;
};

/// Pieces of one line, and of one closure where rows are by closure.
struct Pieces {
  const Line* line = nullptr;
  std::optional<std::string> needed_before;
  std::vector<Piece> pieces;
};

std::string item_of(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
    case LineKind::plastic_tube:
      return "tube";
    case LineKind::hose:
      return "hose";
    case LineKind::cable:
      return "cable";
    case LineKind::wire:
      return "wire";
    case LineKind::rod:
      return "pushrod";
    case LineKind::conduit:
      return "conduit";
  }
  return {};
}

std::vector<Vec3> places_of(const PreparedRoute& route) {
  std::vector<Vec3> places{route.from->at, route.to->at};
  for (const RoutePoint& point : route.route->points) places.push_back(point.at);
  return places;
}

class LineParts {
 public:
  LineParts(const PreparedProject& prepared, PartsTally& tally, std::vector<std::string>& notes)
      : prepared_(prepared), tally_(tally), notes_(notes), phrasing_(tally.options().phrasing) {}

  void add() {
    const CutList cuts = cut_list(prepared_);
    for (std::size_t i = 0; i < prepared_.routes.size(); ++i)
      gather(prepared_.routes[i], cuts.routes[i].cut_length_in);
    for (const Pieces& each : all_) buy(each);
    for (const PreparedRoute& route : prepared_.routes) add_loose_sleeves(route);
    if (!by_measure_.empty())
      notes_.push_back(
          fmt::format("the lengths sold are not known of {}: what is cut in all is listed; no "
                      "piece may be spliced (state them in the line's stock_lengths)",
                      fmt::join(by_measure_, ", ")));
  }

 private:
  void gather(const PreparedRoute& route, double cut_length_in) {
    const auto before = tally_.closure_over(places_of(route));
    const std::string& name = route.route->name;
    std::vector<double> lengths;
    if (route.line->kind == LineKind::cable) lengths = cable_pieces(route);
    if (lengths.empty()) lengths.push_back(cut_length_in);
    for (const double length : lengths) put(*route.line, before, {length, name});
    for (const Sleeve& sleeve : route.route->sleeves)
      if (const Line* tube = prepared_.project->catalogue.find_line(sleeve.line))
        put(*tube, before, {sleeve.to_in - sleeve.from_in + tube->cut_allowance_in, name});
  }

  /// Empty where what its ends take up is not known.
  std::vector<double> cable_pieces(const PreparedRoute& route) {
    std::vector<double> lengths;
    const CableCut cut = cable_cut(route, 0);
    for (const CablePiece& piece : cut.pieces)
      if (piece.cut_length_in) lengths.push_back(*piece.cut_length_in);
    if (lengths.size() == cut.pieces.size() && !lengths.empty()) return lengths;
    if (!cut.cut_length_in)
      notes_.push_back(
          fmt::format("{}: what its ends take up is not known, so that its developed "
                      "length is counted (linewright rig says what is missing)",
                      route.route->name));
    return {};
  }

  void put(const Line& line, const std::optional<std::string>& before, Piece piece) {
    const auto same = [&](const Pieces& each) {
      return each.line == &line && (!tally_.options().by_closure || each.needed_before == before);
    };
    auto found = std::find_if(all_.begin(), all_.end(), same);
    if (found == all_.end()) found = all_.insert(all_.end(), {&line, before, {}});
    found->pieces.push_back(std::move(piece));
  }

  std::optional<std::string> before_of(const Pieces& pieces, const std::string& route) const {
    if (tally_.options().by_closure) return pieces.needed_before;
    return tally_.closure_over(places_of(*prepared_.find_route(route)));
  }

  void buy(const Pieces& pieces) {
    const Line& line = *pieces.line;
    std::vector<double> sold_in;
    for (const SourcedValue& each : line.stock_lengths_in) sold_in.push_back(each.value);
    Purchase kind{item_of(line.kind), line.name, {}, sold_in.empty() ? "in" : "length"};
    for (const Piece& each : pieces.pieces)
      tally_.add(kind, sold_in.empty() ? each.length_in : 0, each.route,
                 before_of(pieces, each.route));
    if (sold_in.empty()) {
      if (std::find(by_measure_.begin(), by_measure_.end(), line.name) == by_measure_.end())
        by_measure_.push_back(line.name);
      return;
    }
    std::vector<double> lengths_in;
    for (const Piece& each : pieces.pieces) lengths_in.push_back(each.length_in);
    const StockCut cut = cut_stock(lengths_in, sold_in);
    const std::string& first = pieces.pieces.front().route;
    tally_.add(kind, static_cast<double>(cut.lengths.size()), first, before_of(pieces, first));
    tell(pieces, cut);
  }

  void tell(const Pieces& pieces, const StockCut& cut) {
    for (const std::size_t each : cut.too_long)
      notes_.push_back(fmt::format(
          "{}: {} needs {} in one piece, and no length sold is so long: it is not counted",
          pieces.line->name, pieces.pieces[each].route,
          phrasing_.length(pieces.pieces[each].length_in)));
    if (cut.lengths.empty()) return;
    std::string cuts;
    for (const StockLength& length : cut.lengths) {
      std::vector<std::string> parts;
      for (const std::size_t each : length.pieces)
        parts.push_back(pieces.pieces[each].route + " " +
                        phrasing_.length(pieces.pieces[each].length_in));
      cuts += fmt::format("{}{}: {}", cuts.empty() ? "" : "; ", phrasing_.length(length.length_in),
                          fmt::join(parts, ", "));
    }
    notes_.push_back(fmt::format(
        "{}: {}; {} left over, {}", pieces.line->name, cuts, phrasing_.length(cut.left_over_in()),
        cut.is_fewest ? "the fewest lengths"
                      : "first fit by size, and fewer lengths may be enough"));
  }

  void add_loose_sleeves(const PreparedRoute& route) {
    for (const Sleeve& sleeve : route.route->sleeves) {
      if (!sleeve.line.empty()) continue;
      const auto size = [&](const std::optional<double>& inches) {
        return inches ? phrasing_.length(*inches) : std::string("?");
      };
      tally_.add({"sleeve",
                  size(sleeve.bore_in) + " bore, " + size(sleeve.outside_in) + " outside",
                  {},
                  "in"},
                 sleeve.to_in - sleeve.from_in, route.route->name,
                 tally_.closure_over(
                     {route.centreline.at(sleeve.from_in), route.centreline.at(sleeve.to_in)}));
    }
  }

  const PreparedProject& prepared_;
  PartsTally& tally_;
  std::vector<std::string>& notes_;
  Phrasing phrasing_;
  std::vector<Pieces> all_;
  std::vector<std::string> by_measure_;
};

}  // namespace

void add_line_parts(const PreparedProject& prepared, PartsTally& tally,
                    std::vector<std::string>& notes) {
  LineParts(prepared, tally, notes).add();
}

}  // namespace linewright
