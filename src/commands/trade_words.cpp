#include "commands/trade_words.hpp"

#include <array>

namespace linewright {

namespace {

constexpr std::array words{
    TradeWord{"abrasion", "a line that can move until it rubs", "chafe"},
    TradeWord{"aileron cable", "a route of `system: cable` with `control: aileron`", "control"},
    TradeWord{"anti-chafe tape", "is no guard here: a sleeve or edge trim is", "sleeves"},
    TradeWord{"bellcrank", "a moving part, swept through its range, under `movers`", "movers"},
    TradeWord{"bracket", "what stands off from a part; a support may be up to 2 in from it",
              "support-mount"},
    TradeWord{"bulkhead union", "a node of `kind: bulkhead`, or a `fitting` bulkhead-SIZE",
              "bulkhead"},
    TradeWord{"caterpillar grommet", "an `edge: edge-trim` of a hole", "edge-trim"},
    TradeWord{"control cable", "a route of `system: cable`", "cable"},
    TradeWord{"cushion clamp",
              "`hold: clamp`: a band with a cushion about the line; 0.09 in of cushion is taken "
              "where a place `on` a part says nothing else",
              "hold"},
    TradeWord{"deck", "a panel, as a skin is", "panels"},
    TradeWord{"doubler", "a panel of its own, on the part that it strengthens", "panels"},
    TradeWord{"drip loop", "what a bundle hangs below its connector", "wiring"},
    TradeWord{"drum", "a `sector` of a horn or pedal, which the cable lies on", "sector"},
    TradeWord{"flange", "an edge turned away: `edge: flanged`", "flanged"},
    TradeWord{"former", "a frame at a station", "frames"},
    TradeWord{"kink", "a bend tighter than the line stands", "bend-radius"},
    TradeWord{"lightening hole", "a hole of a frame, mostly with `edge: flanged`", "flanged"},
    TradeWord{"longeron", "a channel along its path", "channels"},
    TradeWord{"p-clamp", "`hold: clamp`: a band with a cushion about the line", "hold"},
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
    TradeWord{"terminal", "what is on a cable's end, or `attached` to it", "attached"},
    TradeWord{"tie wrap", "`ties` of a bundle; no support", "ties"},
    TradeWord{"turnbuckle", "an `attached` thing of a cable, of `kind: turnbuckle`", "attached"},
    TradeWord{"water trap", "a `drain` at the lowest place of a line", "drainage"},
    TradeWord{"zip tie", "`ties` of a bundle; no support", "ties"},
};

}  // namespace

std::span<const TradeWord> trade_words() {
  return words;
}

}  // namespace linewright
