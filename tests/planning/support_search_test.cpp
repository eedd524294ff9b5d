// The fewest places along a line, held against every choice there is.

#include "planning/support_search.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <random>
#include <vector>

namespace linewright {
namespace {

constexpr int most_places = 12;

/// An invented line: spans must not be longer than they may be where they lie, some lengths swing,
/// and with one clamp lost two spans together must not be too long over one spot.
struct InventedLine {
  std::vector<SupportPlace> places;
  std::vector<double> longest_in;      ///< of a span that covers the inch from each whole inch
  std::optional<double> swings_at_in;  ///< a span so long, to 0.6 in, swings
  double spot_in = 0;
  double longest_over_spot_in = 1e9;  ///< of two spans whose clamp is lost

  SupportFault fault(const char* rule, double along, bool lost = false) const {
    SupportFault found;
    found.judgement.rule = rule;
    found.judgement.verdict = Verdict::fail;
    found.distance_in = along;
    found.clamp_lost = lost;
    return found;
  }

  std::vector<SupportFault> faults(const std::vector<int>& chosen) const {
    std::vector<const SupportPlace*> all;
    for (int i = 0; i < static_cast<int>(places.size()); ++i) {
      const SupportPlace& place = places[static_cast<std::size_t>(i)];
      const bool is_end = i == 0 || i + 1 == static_cast<int>(places.size());
      if (is_end || place.stays || std::find(chosen.begin(), chosen.end(), i) != chosen.end())
        all.push_back(&place);
    }
    std::vector<SupportFault> found;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
      const double start = all[i]->distance_in;
      const double end = all[i + 1]->distance_in;
      for (std::size_t inch = 0; inch < longest_in.size(); ++inch) {
        const double middle = static_cast<double>(inch) + 0.5;
        if (middle > start && middle < end && end - start > longest_in[inch] + 1e-9)
          found.push_back(fault("chafe", middle));
      }
      if (swings_at_in && std::abs(end - start - *swings_at_in) < 0.6)
        found.push_back(fault("resonance", (start + end) / 2));
      if (i + 2 >= all.size() || all[i + 1]->stays) continue;
      const double last = all[i + 2]->distance_in;
      if (start < spot_in && spot_in < last && last - start > longest_over_spot_in)
        found.push_back(fault("chafe", spot_in, true));
    }
    return found;
  }
};

InventedLine random_line(std::mt19937& dice) {
  std::uniform_real_distribution<double> share(0, 1);
  InventedLine line;
  const int between = 4 + static_cast<int>(share(dice) * (most_places - 4));
  const double length = 20 + 20 * share(dice);
  line.places.push_back({0});
  for (int i = 1; i <= between; ++i) {
    SupportPlace place{length * (i + 0.6 * (share(dice) - 0.5)) / (between + 1)};
    place.stays = share(dice) < 0.1;
    place.drawn = share(dice) < 0.3;
    line.places.push_back(place);
  }
  line.places.push_back({length});
  line.places.front().stays = share(dice) < 0.5;
  line.places.back().stays = share(dice) < 0.5;
  for (int inch = 0; inch < length; ++inch) line.longest_in.push_back(5 + 15 * share(dice));
  if (share(dice) < 0.5) line.swings_at_in = 4 + 8 * share(dice);
  if (share(dice) < 0.4) {
    line.spot_in = length * share(dice);
    line.longest_over_spot_in = 6 + 8 * share(dice);
  }
  return line;
}

std::optional<std::size_t> fewest_of_all(const InventedLine& line) {
  std::vector<int> free;
  for (int i = 1; i + 1 < static_cast<int>(line.places.size()); ++i)
    if (!line.places[static_cast<std::size_t>(i)].stays) free.push_back(i);
  std::optional<std::size_t> least;
  for (unsigned mask = 0; mask < 1u << free.size(); ++mask) {
    std::vector<int> chosen;
    for (std::size_t i = 0; i < free.size(); ++i)
      if (mask >> i & 1u) chosen.push_back(free[i]);
    if ((!least || chosen.size() < *least) && line.faults(chosen).empty()) least = chosen.size();
  }
  return least;
}

std::vector<int> everywhere(const InventedLine& line) {
  std::vector<int> chosen;
  for (int i = 1; i + 1 < static_cast<int>(line.places.size()); ++i) chosen.push_back(i);
  return chosen;
}

/// The search is asked only where nothing but what swings is wrong with all supports.
bool is_sound_with_all(const InventedLine& line) {
  const auto faults = line.faults(everywhere(line));
  return std::all_of(faults.begin(), faults.end(),
                     [](const SupportFault& each) { return each.judgement.rule == "resonance"; });
}

TEST(SupportSearch, FindsAsFewAsTryingAll) {
  std::mt19937 dice(20);
  int solved = 0;
  int unsolved = 0;
  for (int round = 0; round < 400; ++round) {
    const InventedLine line = random_line(dice);
    if (!is_sound_with_all(line)) continue;
    SupportSearch search(
        line.places, [&](const std::vector<int>& chosen, Places) { return line.faults(chosen); });
    const auto found = search.fewest();
    const auto least = fewest_of_all(line);
    ASSERT_EQ(found.has_value(), least.has_value()) << round;
    ASSERT_FALSE(search.gave_up()) << round;
    ++(found ? solved : unsolved);
    if (!found) {
      EXPECT_TRUE(search.stopped_by()) << round;
      continue;
    }
    EXPECT_TRUE(line.faults(*found).empty()) << round;
    EXPECT_EQ(found->size(), *least) << round;
  }
  EXPECT_GT(solved, 100);
  EXPECT_GT(unsolved, 3);
}

// 36 in between two ends, spans of up to 12 in, places at each inch: 2 supports, and of all pairs
// only 12 and 24 do.
TEST(SupportSearch, PutsThemWhereTheyJustReach) {
  InventedLine line;
  for (int inch = 0; inch <= 36; ++inch) line.places.push_back({static_cast<double>(inch)});
  line.longest_in.assign(36, 12);
  SupportSearch search(line.places,
                       [&](const std::vector<int>& chosen, Places) { return line.faults(chosen); });
  EXPECT_EQ(search.fewest(), (std::vector<int>{12, 24}));
}

// Either of 10 and 14 alone would do on 24 in; the clamp at 14 is there already.
TEST(SupportSearch, KeepsOfAsFewThoseThatAreDrawn) {
  InventedLine line;
  for (const double along : {0.0, 10.0, 12.0, 14.0, 24.0}) line.places.push_back({along});
  line.places[3].drawn = true;
  line.longest_in.assign(24, 14);
  SupportSearch search(line.places,
                       [&](const std::vector<int>& chosen, Places) { return line.faults(chosen); });
  EXPECT_EQ(search.fewest(), std::vector<int>{3});
}

// Rounding makes the span from 12 to 24 in too long by a thousandth: the next place does.
TEST(SupportSearch, TakesAnotherPlaceWhereTheRoundedOneDoesNot) {
  InventedLine line;
  for (int inch = 0; inch <= 30; ++inch) line.places.push_back({static_cast<double>(inch)});
  line.longest_in.assign(30, 15);
  SupportSearch search(line.places, [&](const std::vector<int>& chosen, Places places) {
    auto faults = line.faults(chosen);
    if (places == Places::as_written && chosen == std::vector<int>{15})
      faults.push_back(line.fault("chafe", 7));
    return faults;
  });
  const auto found = search.fewest();
  ASSERT_TRUE(found);
  EXPECT_EQ(found->size(), 2u);
}

// A line that reaches this one says nothing of where on this one that is: 0 stands for all places.
TEST(SupportSearch, FindsOutWhichSpanIsMeantWhereTheFaultDoesNotSay) {
  InventedLine line;
  for (int inch = 0; inch <= 30; ++inch) line.places.push_back({static_cast<double>(inch)});
  line.longest_in.assign(30, 30);
  for (std::size_t inch = 20; inch < 24; ++inch) line.longest_in[inch] = 6;
  SupportSearch search(line.places, [&](const std::vector<int>& chosen, Places) {
    auto faults = line.faults(chosen);
    for (SupportFault& each : faults) {
      each.placed = false;
      each.distance_in = 0;
    }
    return faults;
  });
  const auto found = search.fewest();
  ASSERT_TRUE(found);
  EXPECT_EQ(found->size(), 2u);
  EXPECT_TRUE(line.faults(*found).empty());
}

}  // namespace
}  // namespace linewright
