#pragma once
// The pieces that every JSON form shares. Units are in the keys and always inches, whatever unit
// the text is asked for.

#include <nlohmann/json.hpp>
#include <optional>

#include "model/source.hpp"
#include "model/vector.hpp"
#include "render/report.hpp"

namespace linewright {

using Json = nlohmann::ordered_json;

/// A finite number to a billionth, at most thirteen digits of it, minus zero made plain zero.
/// Throws std::logic_error for NaN and infinities, which JSON cannot hold and no result may
/// contain.
Json json_number(double value);
/// The same, or null where there is none.
Json json_number(const std::optional<double>& value);
/// The text, or null where it is empty.
Json text_or_null(const std::string& text);
/// Where something is along a line, or along an axis, to a millionth.
Json json_distance(double inches);
/// The same, or null where there is none.
Json json_distance(const std::optional<double>& inches);
/// A length at a place, to a tenth of that: the place is known to a millionth, and what is measured
/// there hardly better. Null where there is none.
Json json_length(const std::optional<double>& inches);
/// {"fs", "bl", "wl"}, each to a millionth.
Json json_place(Vec3 at);
/// {"version", "format"}.
Json json_header();
/// "routes" and "systems" of a report.
Json json_routes(const Report& report);
Json json_systems(const Report& report);
/// One of "checks".
Json json_judgement(const Judgement& judgement);
/// "set": what stands for this run in place of what the files say.
Json json_set(const Report& report);
/// "summary": how many judgements came out which way.
Json json_summary(const Report& report);

/// The text of a JSON form on one line, else as `json_text`.
std::string json_line(const Json& json);
/// The text of a JSON form, indented, with a line feed at the end. Bytes that are not UTF-8 (file
/// names may hold them) become U+FFFD.
std::string json_text(const Json& json);

}  // namespace linewright
