// An order for thousands of graphs by chance, and the circles that are planted in them.

#include "lines/access/closing_order.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <random>

namespace linewright {
namespace {

using Names = std::vector<std::string>;

struct Graph {
  Names names;
  std::vector<Before> before;
};

/// Every edge leads from an earlier to a later of a hidden order: there is one.
Graph sound_graph(std::mt19937& random) {
  Graph graph;
  const auto count = std::uniform_int_distribution<std::size_t>(2, 14)(random);
  for (std::size_t i = 0; i < count; ++i) graph.names.push_back("n" + std::to_string(i));
  Names hidden = graph.names;
  std::shuffle(hidden.begin(), hidden.end(), random);
  std::bernoulli_distribution drawn(0.25);
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t k = i + 1; k < count; ++k)
      if (drawn(random)) graph.before.push_back({hidden[i], hidden[k], ""});
  std::shuffle(graph.before.begin(), graph.before.end(), random);
  return graph;
}

/// Whether the order has all names, and keeps every edge.
bool is_valid(const Graph& graph, const Names& order) {
  std::map<std::string, std::size_t> place;
  for (std::size_t i = 0; i < order.size(); ++i) place[order[i]] = i;
  if (order.size() != graph.names.size() || place.size() != graph.names.size()) return false;
  return std::ranges::all_of(
      graph.before, [&](const Before& each) { return place.at(each.first) < place.at(each.then); });
}

TEST(ClosingOrder, IsValidForEveryGraphThatHasOne) {
  std::mt19937 random(20261128);
  for (int round = 0; round < 5000; ++round) {
    const Graph graph = sound_graph(random);
    const ClosingOrder found = closing_order(graph.names, graph.before);
    ASSERT_TRUE(found.circles.empty()) << round;
    ASSERT_TRUE(is_valid(graph, found.order)) << round;
  }
}

/// The same names in a ring, whichever is told first.
bool is_same_ring(Names told, const Names& planted) {
  const auto first = std::ranges::find(told, planted.front());
  if (first == told.end()) return false;
  std::rotate(told.begin(), first, told.end());
  return told == planted;
}

TEST(ClosingOrder, NamesAPlantedCircleAndIsFreeOfItWithoutAnyOneOfItsEdges) {
  std::mt19937 random(20261129);
  for (int round = 0; round < 2000; ++round) {
    Graph graph = sound_graph(random);
    // A ring of names of its own, into which the rest of the graph leads and out of which it does.
    Names ring;
    const auto length = std::uniform_int_distribution<std::size_t>(2, 6)(random);
    for (std::size_t i = 0; i < length; ++i) ring.push_back("ring" + std::to_string(i));
    const std::size_t stated = graph.before.size();
    for (std::size_t i = 0; i < length; ++i)
      graph.before.push_back({ring[i], ring[(i + 1) % length], ""});
    graph.before.push_back({graph.names.front(), ring.front(), ""});
    graph.names.insert(graph.names.end(), ring.begin(), ring.end());

    const ClosingOrder found = closing_order(graph.names, graph.before);
    ASSERT_EQ(found.circles.size(), 1u) << round;
    ASSERT_TRUE(is_same_ring(found.circles[0], ring)) << round;
    for (std::size_t i = 0; i < length; ++i) {
      Graph freed = graph;
      freed.before.erase(freed.before.begin() + static_cast<std::ptrdiff_t>(stated + i));
      const ClosingOrder order = closing_order(freed.names, freed.before);
      ASSERT_TRUE(order.circles.empty()) << round << " without edge " << i;
      ASSERT_TRUE(is_valid(freed, order.order)) << round << " without edge " << i;
    }
  }
}

}  // namespace
}  // namespace linewright
