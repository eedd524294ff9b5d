#pragma once
// How far joints and fittings are to be suspected of a leak, against each other, and how much
// trouble it is to open them. None of it is measured [common practice, no source]: it decides only
// in which order they are looked at, and every joint comes up in the end.

#include "model/line.hpp"
#include "model/network.hpp"

namespace linewright {

/// Of the joint of a line with a node; a metal tube on a tee counts 1.
double joint_doubt(LineKind line, NodeKind node);

/// Of what is at the node beside its joints: a drain's seat, an instrument's case.
double node_doubt(NodeKind node);

/// Of a line between its joints.
double line_doubt(LineKind line);

/// What it takes to open the joint and make it again: 1 for a hose that pulls off.
int trouble_to_open(LineKind line, NodeKind node);

}  // namespace linewright
