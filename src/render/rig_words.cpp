#include "render/rig_words.hpp"

#include <fmt/format.h>

#include "render/amount.hpp"

namespace linewright {

std::string take_up_words(const CableCut& cut, const Phrasing& phrasing) {
  if (!cut.each_way_in) return {};
  const Phrasing margins = phrasing.decimals();
  std::string text = bench_length(*cut.each_way_in, margins) + " left each way at mid-adjustment";
  const std::string tolerance =
      bench_length(cut.tolerance_in, margins) + " of build tolerance at both ends";
  if (!*cut.takes_up_tolerance())
    return text + ", too little for " + tolerance + ": a longer turnbuckle is needed";
  if (!cut.bedding_in_in) return text + ", enough for " + tolerance;
  const std::string bedding_in =
      bench_length(*cut.bedding_in_in, margins) +
      fmt::format(
          " ({:g} % of the cable) that a new one beds in by at the most [verified in a "
          "restatement]",
          100 * constructional_stretch_share);
  if (*cut.takes_up_all()) return text + ", enough for " + tolerance + " and for " + bedding_in;
  return text + ", enough for " + tolerance + ", but not for " + bedding_in +
         " as well: prestretch the cable, or use a longer turnbuckle";
}

}  // namespace linewright
