#pragma once
// One finding in words, and the sum of all of them: what a check says, and what is said of a
// change.

#include <string>
#include <string_view>
#include <vector>

#include "render/report.hpp"

namespace linewright {

/// A labelled line of a finding: "by how much", "value 0.18 in, limit …". Empty text for none.
struct FindingLine {
  std::string_view label;
  std::string text;

  friend bool operator==(const FindingLine&, const FindingLine&) = default;
};

/// Label of the line that gives value, limit and margin.
inline constexpr std::string_view measure_label = "by how much";

/// "static.yaml:14:9: " for the place in the builder's files; empty where there is none.
std::string location_prefix(const SourceLocation& location);

/// "static.yaml:14:9: fail: chafe: can reach channel S3L" with these words at its end, the verdict
/// coloured where asked for, folded to the terminal and ended by a line feed.
std::string finding_head(const Judgement& judgement, std::string_view words, const TextStyle& style,
                         bool with_location = true);

/// Where, by how much, why, how to mend, and why it is waived, in this order. `route` is the one
/// judged, or nullptr.
std::vector<FindingLine> finding_lines(const Judgement& judgement, const RouteReport* route,
                                       const Phrasing& phrasing);

/// The line wrapped and ended by a line feed; nothing for an empty text.
std::string labelled(const FindingLine& line, std::size_t indent = 2);

/// "1 warning", "2 warnings".
std::string counted(int count, std::string_view one, std::string_view many);

/// "2 routes: 14 passed, 0 warnings, …", and a warning where nothing was judged.
std::string summary_lines(const Report& report);

/// What was set in place of what the files say, under the heading, and an empty line; nothing
/// where nothing was.
std::string set_lines(const Report& report,
                      std::string_view heading = "Judged as if the files said:");

/// What the tool took for what the project leaves out, after an empty line; nothing where it took
/// nothing.
std::string assumption_lines(const Report& report);
/// How many there are, and where they are listed, for a sheet that leaves them out; empty for none.
std::string assumption_count(const std::vector<std::string>& assumptions, std::string_view where);
/// What was found on the way; nothing where there is nothing.
std::string note_lines(const Report& report);
/// How much of each route of which anything was measured is as built; nothing where nothing was.
std::string built_lines(const Report& report, const Phrasing& phrasing);
/// What was left out of the judgement of gaps near fittings, and why; nothing where nothing was.
std::string passed_over_lines(const Report& report, const Phrasing& phrasing);

}  // namespace linewright
