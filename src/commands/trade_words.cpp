#include "commands/trade_words.hpp"

#include <array>

namespace linewright {

namespace {

constexpr std::array words{
    TradeWord{"abrasion", "a line that can move until it rubs", "chafe"},
    TradeWord{"aileron cable", "a route of `system: cable` with `control: aileron`", "control"},
    TradeWord{"anti-chafe tape", "is no guard here: a sleeve or edge trim is", "sleeves"},
    TradeWord{"bellcrank", "a moving part, swept through its range, under `movers`", "movers"},
    TradeWord{"BL",
              "buttock line: how far a place is from the middle of the aeroplane, positive to the "
              "right as the pilot sits, in inches unless `units` says mm; the second number of "
              "every place, `[FS, BL, WL]`",
              "buttock_line"},
    TradeWord{"bracket", "what stands off from a part; a support may be up to 2 in from it",
              "support-mount"},
    TradeWord{"bulkhead union", "a node of `kind: bulkhead`, or a `fitting` bulkhead-SIZE",
              "bulkhead"},
    TradeWord{"butt line", "BL, the second number of every place, positive to the right",
              "buttock_line"},
    TradeWord{"caterpillar grommet", "an `edge: edge-trim` of a hole", "edge-trim"},
    TradeWord{"control cable", "a route of `system: cable`", "cable"},
    TradeWord{"cushion clamp",
              "`hold: clamp`: a band with a cushion about the line; 0.09 in of cushion is taken "
              "where a place `on` a part says nothing else",
              "hold"},
    TradeWord{"datum",
              "where FS, BL and WL are 0: a plane ahead of the nose, the middle of the aeroplane, "
              "and a level plane under its belly, or those of your drawings; no key states it",
              "station"},
    TradeWord{"deck", "a panel, as a skin is", "panels"},
    TradeWord{"doubler", "a panel of its own, on the part that it strengthens", "panels"},
    TradeWord{"drip loop", "what a bundle hangs below its connector", "wiring"},
    TradeWord{"drum", "a `sector` of a horn or pedal, which the cable lies on", "sector"},
    TradeWord{"envelope",
              "how far a line can move sideways between two supports, from its surplus length and "
              "its sag, in inches: the `reach` that gaps are held against; it is worked out, and "
              "written nowhere",
              "chafe"},
    TradeWord{"fail",
              "a verdict: a limit that a regulation, a standard or a handbook states is broken, or "
              "geometry forbids it; the exit code is 1",
              ""},
    TradeWord{"flange", "an edge turned away: `edge: flanged`", "flanged"},
    TradeWord{"former", "a frame at a station", "frames"},
    TradeWord{"FS",
              "fuselage station: how far a place is along the aeroplane from the datum, positive "
              "aft, in inches unless `units` says mm; the first number of every place, "
              "`[FS, BL, WL]`",
              "station"},
    TradeWord{"kink", "a bend tighter than the line stands", "bend-radius"},
    TradeWord{"lightening hole", "a hole of a frame, mostly with `edge: flanged`", "flanged"},
    TradeWord{"longeron", "a channel along its path", "channels"},
    TradeWord{"nylon",
              "a plastic tube; `line: tube-nylon-1/4` of a route is one with an outside diameter "
              "of 1/4 in",
              "tube-nylon"},
    TradeWord{"OD", "outside diameter, in inches unless `units` says mm", "outside"},
    TradeWord{"p-clamp", "`hold: clamp`: a band with a cushion about the line", "hold"},
    TradeWord{"pass",
              "a verdict: no limit is broken, by the drawing; exactly at a limit passes; `check "
              "--verbose` shows what passed, with its margins",
              ""},
    TradeWord{"pitot line", "a route of `system: pitot`", "system"},
    TradeWord{"pushrod", "a route of `system: rod` between two arms", "rod-travel"},
    TradeWord{"quadrant", "a `sector` of a horn or pedal, which the cable lies on", "sector"},
    TradeWord{"rib", "a frame along the aeroplane, by its `buttock_line`", "buttock_line"},
    TradeWord{"rod end", "what turns at the pin of a pushrod", "rod_end_angle"},
    TradeWord{"rub", "a line that can move until it touches", "chafe"},
    TradeWord{"sag", "how far a line hangs between its supports", "chafe"},
    TradeWord{"skin", "a panel, as a deck is; or a mesh", "panels"},
    TradeWord{"snap bushing", "a hole with `edge: bushing` and its `bore`", "bushing"},
    TradeWord{"spar", "a frame across the aeroplane, or a channel", "frames"},
    TradeWord{"spiral wrap", "a sleeve on the line", "sleeves"},
    TradeWord{"static line", "a route of `system: static`", "system"},
    TradeWord{"stringer", "a channel along its path", "channels"},
    TradeWord{"swage", "`kind: swaged` of a cable's end", "swaged"},
    TradeWord{"t-fitting", "a node of `kind: tee`, or a `fitting` tee-SIZE", "tee"},
    TradeWord{"tee",
              "where three air lines meet: a node of `kind: tee`, at a place `at: [FS, BL, WL]`, "
              "which three routes name as `from` or `to`; with a `fitting` tee-SIZE it has a size",
              "tee"},
    TradeWord{"terminal", "what is on a cable's end, or `attached` to it", "attached"},
    TradeWord{"tie wrap", "`ties` of a bundle; no support", "ties"},
    TradeWord{"turnbuckle", "an `attached` thing of a cable, of `kind: turnbuckle`", "attached"},
    TradeWord{"unknown",
              "a verdict: what is needed to judge is not stated in the project's files; never a "
              "pass, and the exit code is 1; its `mend` names what to state",
              ""},
    TradeWord{"waived",
              "a verdict: what was found is accepted by you in `waivers`, with a reason, and still "
              "shown",
              "waivers"},
    TradeWord{"warn",
              "a verdict: a limit of common practice is broken, which no regulation or standard "
              "states; the exit code stays 0, with `--strict` it is 1",
              ""},
    TradeWord{"water trap", "a `drain` at the lowest place of a line", "drainage"},
    TradeWord{"WL",
              "waterline: how high a place is above the level plane of the datum, positive up, in "
              "inches unless `units` says mm; the third number of every place, `[FS, BL, WL]`",
              "waterline"},
    TradeWord{"zip tie", "`ties` of a bundle; no support", "ties"},
};

}  // namespace

std::span<const TradeWord> trade_words() {
  return words;
}

}  // namespace linewright
