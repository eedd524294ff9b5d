#pragma once
// Words of the trade, and what project files and rules call the same thing.

#include <span>
#include <string_view>

namespace linewright {

struct TradeWord {
  std::string_view word;  ///< small letters and capitals are one
  std::string_view says;  ///< how it is described, in one line
  std::string_view see;   ///< a rule, a key of project files or a value of one; empty for none
};

/// All of them, by the alphabet.
std::span<const TradeWord> trade_words();

}  // namespace linewright
